package sledwright.bench;

import com.sun.management.OperatingSystemMXBean;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Random;
import java.util.TreeSet;
import sledwright.domain.Condition;
import sledwright.domain.DemandClass;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.Objective;
import sledwright.domain.OrdersByMonth;
import sledwright.domain.PartKind;
import sledwright.domain.Request;
import sledwright.domain.RestockRequest;
import sledwright.domain.Shortlist;
import sledwright.domain.SupplyOffer;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.restock.RestockPlan;
import sledwright.restock.Restocker;

/** How long a restocking plan takes, and how far it is from its bound, on seeded random classes and offers. */
final class RestockBenchmark {

    private static final int[] LEAD_DAYS = {0, 2, 3, 5, 7, 14, 21};
    private static final int[] LEAST = {1, 1, 1, 5, 10};

    private final PrintStream out;
    private final long start = System.nanoTime();
    private final Map<String, Spent> marks = new LinkedHashMap<>();

    RestockBenchmark(PrintStream out) {
        this.out = out;
    }

    /** @param budget in units of the currency */
    void run(Shop shop, int classes, int parts, int samples, long budget, long seed) {
        RestockRequest request = request(shop, classes, parts, samples, budget, seed);
        line("%d classes, %d offers, %d samples".formatted(classes, request.offers().size(), samples));
        RestockPlan plan = Restocker.plan(shop.catalog(), request, seed, Deadline.never(), words -> {
            line(words);
            mark(words);
        });
        mark("the end");
        printPhases(shop.catalog().amount(budget * 100).toPlainString());
        line("plan: rounded %.2f %% below the bound, chosen %.2f %%, bound %.2f, plan in hindsight %.2f, as orders come %.2f; gain %.2f +/- %.2f; builds %d, closed %s".formatted(
                100 * plan.bound().roundedGap(), 100 * plan.bound().gap(), plan.bound().most() / 100, plan.bound().hindsight() / 100, plan.bound().inSample() / 100, plan.earned().gain().mean() / 100,
                plan.earned().gain().halfWidth() / 100, plan.effort().builds(), plan.effort().closed()));
        Runtime runtime = Runtime.getRuntime();
        line("memory in use %d MB".formatted((runtime.totalMemory() - runtime.freeMemory()) >> 20));
    }

    /** What was spent so far, seconds: by the clock, of all processors, and of these by compilers. */
    private record Spent(double clock, double processors, double compiling) {

        Spent since(Spent earlier) {
            return new Spent(clock - earlier.clock, processors - earlier.processors, compiling - earlier.compiling);
        }

        @Override
        public String toString() {
            return "%.1f s by the clock, %.1f s of processors, of it %.1f s compiling".formatted(clock, processors, compiling);
        }
    }

    private Spent spent() {
        long processorNanos = ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
        return new Spent((System.nanoTime() - start) / 1e9, processorNanos / 1e9,
                ManagementFactory.getCompilationMXBean().getTotalCompilationTime() / 1e3);
    }

    private void line(String words) {
        Spent now = spent();
        out.printf(Locale.ROOT, "%7.2f s, processors %7.2f s  %s%n", now.clock, now.processors, words);
    }

    private void mark(String words) {
        marks.putIfAbsent(words, spent());
    }

    private Spent at(String part) {
        return marks.entrySet().stream().filter(entry -> entry.getKey().contains(part)).findFirst().orElseThrow().getValue();
    }

    /** The plan that is asked for, and what an answer has beside it. */
    private void printPhases(String budget) {
        Spent begun = at("searching builds");
        Spent known = at("what is earned if nothing");
        Spent bounded = at("trying whole quantities");
        Spent planned = at(" within " + budget);
        Spent worth = at("what each part is worth");
        out.println("builds: " + known.since(begun));
        out.println("bound, and nothing bought: " + bounded.since(known));
        out.println("plans up to the budget: " + planned.since(bounded));
        out.println("the plan alone: " + planned.since(begun));
        out.println("twice the budget: " + worth.since(planned));
        out.println("what each part is worth: " + at("the end").since(worth));
    }

    private static RestockRequest request(Shop shop, int classes, int parts, int samples, long budget, long seed) {
        Random random = new Random(seed);
        Search search = new Search(shop.catalog());
        List<DemandClass> asked = new ArrayList<>();
        for (long next = seed * 1000; asked.size() < classes; next++) {
            Request drawn = shop.request(shop.requests().request(next));
            Limits limit = drawn.limit();
            Request request = drawn.withMachines(1 + (next % 5 == 0 ? 1 : 0)).withOnHand(Map.of()).withObjective(Objective.CHEAPEST)
                    .withLimit(new Limits(OptionalLong.empty(), limit.powerW(), limit.leadDays(), limit.inletC(), limit.altitudeM(), limit.mainsV(),
                            limit.conditions())).withAlternatives(1, Shortlist.PLAIN.step());
            Findings found = search.run(request, Deadline.never());
            if (!found.ranked().isEmpty()) {
                long margin = Math.round(found.best() / request.machines() * (0.1 + 0.2 * random.nextDouble()));
                asked.add(new DemandClass("class " + next, request, orders(next, 2 + random.nextInt(10)), OptionalLong.of(margin),
                        OptionalLong.empty(), 2000));
            }
        }
        Map<PartKind, Double> lost = new EnumMap<>(PartKind.class);
        for (PartKind kind : PartKind.values()) {
            lost.put(kind, 0.02 + 0.005 * kind.ordinal());
        }
        return new RestockRequest("benchmark", asked, 3, new RestockRequest.Purchases(OptionalLong.of(budget * 100), offers(shop, parts, random)), lost, 0.95,
                samples);
    }

    private static OrdersByMonth orders(long number, int rate) {
        return switch ((int) (number % 3)) {
            case 0 -> new OrdersByMonth.Normal(rate, rate / 3.0);
            case 1 -> new OrdersByMonth.Poisson(rate);
            default -> new OrdersByMonth.Months(List.of(rate, rate + 2, rate - 1, rate + 1));
        };
    }

    private static List<SupplyOffer> offers(Shop shop, int parts, Random random) {
        List<String> skus = new ArrayList<>(new TreeSet<>(shop.catalog().lots().keySet()));
        Collections.shuffle(skus, random);
        List<SupplyOffer> offers = new ArrayList<>();
        for (String sku : skus.subList(0, Math.min(parts, skus.size()))) {
            long price = shop.catalog().lots(sku).stream().flatMap(lot -> lot.breaks().stream()).mapToLong(Lot.PriceBreak::unitPrice).min().orElseThrow();
            int least = LEAST[random.nextInt(LEAST.length)];
            offers.add(new SupplyOffer(sku, "supplier " + random.nextInt(4), Condition.USED,
                    Math.max(1, Math.round(price * (0.7 + 0.15 * random.nextDouble()))), least + 20 + random.nextInt(400), least,
                    LEAD_DAYS[random.nextInt(LEAD_DAYS.length)]));
        }
        return offers;
    }
}
