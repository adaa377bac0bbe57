package sledwright.restock;

import java.nio.file.*;
import java.util.*;
import sledwright.catalog.CatalogReader;
import sledwright.domain.*;
import sledwright.generator.*;
import sledwright.request.*;
import sledwright.samples.RequestGenerator;

public class Scratch {
    static Request request(String yaml, Catalog catalog) throws Exception {
        Path file = Files.createTempFile("r", ".yaml");
        Files.writeString(file, yaml);
        Request r = ((Job.Single) RequestReader.open(file, List.of()).resolve(catalog)).request();
        Files.delete(file);
        return r;
    }
    static RestockRequest random(Catalog catalog, int classes, int parts, int samples, long seed, double budgetEuro) throws Exception {
        Random random = new Random(seed);
        RequestGenerator gen = new RequestGenerator("shop", Path.of("catalogs/heronfold-yard"));
        Search search = new Search(catalog);
        List<DemandClass> list = new ArrayList<>();
        for (long s = 0; list.size() < classes; s++) {
            Request r = request(gen.request(seed * 1000 + s), catalog);
            Limits l = r.limit();
            r = r.withMachines(1 + (int) (s % 5 == 0 ? 1 : 0)).withOnHand(Map.of()).withObjective(Objective.CHEAPEST)
                .withLimit(new Limits(OptionalLong.empty(), l.powerW(), l.leadDays(), l.inletC(), l.altitudeM(), l.mainsV(), l.conditions()));
            Findings f = search.run(r.withAlternatives(1, 0.05), Deadline.never());
            if (f.ranked().isEmpty()) continue;
            double rate = 2 + random.nextInt(10);
            OrdersByMonth o = s % 3 == 0 ? new OrdersByMonth.Normal(rate, rate / 3) : s % 3 == 1 ? new OrdersByMonth.Poisson(rate)
                : new OrdersByMonth.Months(List.of((int) rate, (int) rate + 2, (int) rate - 1, (int) rate + 1));
            list.add(new DemandClass("c" + s, r, o, OptionalLong.of((long) (f.best() / r.machines() * (0.1 + 0.2 * random.nextDouble()))), OptionalLong.empty(), 2000));
        }
        List<SupplyOffer> offers = new ArrayList<>();
        List<String> skus = new ArrayList<>(new TreeSet<>(catalog.lots().keySet()));
        Collections.shuffle(skus, random);
        int[] leads = {0, 2, 3, 5, 7, 14, 21};
        int[] mins = {1, 1, 1, 5, 10};
        for (String sku : skus.subList(0, Math.min(parts, skus.size()))) {
            long price = catalog.lots(sku).stream().flatMap(x -> x.breaks().stream()).mapToLong(Lot.PriceBreak::unitPrice).min().orElse(1000);
            int min = mins[random.nextInt(mins.length)];
            offers.add(new SupplyOffer(sku, "Sup" + random.nextInt(4), Condition.USED, Math.max(1, (long) (price * (0.7 + 0.15 * random.nextDouble()))),
                min + 20 + random.nextInt(400), min, leads[random.nextInt(leads.length)]));
        }
        Map<PartKind, Double> dep = new EnumMap<>(PartKind.class);
        for (PartKind k : PartKind.values()) dep.put(k, 0.02 + 0.005 * k.ordinal());
        return new RestockRequest("random", list, 3, OptionalLong.of((long) (budgetEuro * 100)), dep, 0.95, samples, offers);
    }
    static long t0 = System.nanoTime();
    static void log(String s) { System.out.printf("%6.2f %s%n", (System.nanoTime() - t0) / 1e9, s); }
    public static void main(String[] a) throws Exception {
        Catalog catalog = CatalogReader.read(Path.of("catalogs/heronfold-yard"));
        RestockRequest request = random(catalog, Integer.parseInt(a[0]), Integer.parseInt(a[1]), Integer.parseInt(a[2]), 7, Double.parseDouble(a[3]));
        log("request");
        Shelves shelves = new Shelves(catalog, request);
        Choices choices = new Choices(shelves, Deadline.never());
        log("choices " + choices.size());
        Program program = new Program(shelves, choices);
        log("rows " + program.limits(new double[0]).length + " kinds " + program.kinds().size() + " purchases " + program.purchases().size() + " cols " + program.kinds().stream().mapToInt(k -> k.gain().length).sum());
        List<Course> courses = Courses.draw(request, request.samples(), 1);
        log("courses " + courses.stream().mapToInt(Course::orders).average());
        Hindsight h = new Hindsight(program, courses);
        Relaxation rel = new Relaxation(program, h, 0.002, 3, Deadline.never());
        Relaxation.Answer ans = rel.solve(request.budget(), 60, Scratch::log);
        log(ans.bound() + " " + ans.value());
        List<Map<String, Double>> sc = new ArrayList<>();
        for (int k = 0; k < request.classes().size(); k++) sc.add(program.scarcity(k, ans.prices()));
        Counter counter = new Counter(program, shelves, choices, sc);
        int[] none = new int[program.purchases().size()];
        double lost = 0;
        for (Course c : courses) for (int k : c.classes()) lost += request.classes().get(k).loss() * request.classes().get(k).machines();
        lost /= courses.size();
        for (int i = 0; i < 3; i++) log("nothing: " + (counter.serve(program, none, courses).mean() + lost));
        int[] round = Arrays.stream(ans.bought()).mapToInt(q -> (int) Math.round(q)).toArray();
        Counter.Tally t = counter.serve(program, round, courses);
        log("rounded: " + (t.mean() + lost) + " served " + Arrays.toString(t.served()) + " of " + Arrays.toString(t.asked()));
    }
}
