package sledwright.oracle;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sledwright.domain.Assortment;
import sledwright.domain.BayGroup;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Equipment;
import sledwright.domain.Expansion;
import sledwright.domain.Goal;
import sledwright.domain.Labour;
import sledwright.domain.Licence;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.Objective;
import sledwright.domain.PartChoice;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Shortlist;
import sledwright.domain.Slot;
import sledwright.domain.Stationery;
import sledwright.domain.Supply;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.planner.upgrade.Installed;
import sledwright.samples.Shops;

/**
 * Small machines that stand, and a request for an upgrade of them. The list of every build distinguishes sets of parts by prices that
 * are codes of how many units of each part there are; what each set comes to is then computed part by part.
 *
 * @param tradeIn the share of a price that a pulled part fetches
 * @param buyer   the shop whose prices say what pulled parts fetch
 */
record UpgradeCase(RandomCase that, Build build, double tradeIn, Catalog buyer) implements Listed<UpgradeCase> {

    private static final int MOST_BITS = 56;

    @Override
    public String text() {
        return "trade-in %s of %s%n%s".formatted(tradeIn, build, that.text());
    }

    int machines() {
        return request().machines();
    }

    Installed installed() {
        return Installed.of(build, machines(), tradeIn, request().limit(), buyer);
    }

    @Override
    public UpgradeCase with(Request other) {
        return with(that.with(other));
    }

    @Override
    public UpgradeCase with(RandomCase other) {
        return new UpgradeCase(other, build, tradeIn, buyer);
    }

    @Override
    public UpgradeCase ofFewer() {
        throw new IllegalStateException("The machines stand");
    }

    /** Units of a part in all machines. */
    private int installed(String sku) {
        return build.partCounts().getOrDefault(sku, 0) * machines();
    }

    /** What has to be spent. */
    @Override
    public OptionalLong least() {
        Optional<Map<String, Integer>> shifts = bits();
        return shifts.isEmpty() ? OptionalLong.empty() : OptionalLong.of(least(shifts.get()));
    }

    static Optional<UpgradeCase> random(long seed) {
        return random(RandomCase.of(seed, RandomCase.Size.LISTABLE), Equipment.NONE);
    }

    /** Machines that have drives, cards and extras, or not, and a request that asks for some. */
    static Optional<UpgradeCase> equipped(long seed) {
        RandomCase that = RandomEquipment.of(seed);
        SplittableRandom random = new SplittableRandom(seed * 31 + 7);
        Equipment asked = that.request().equipment().withEnclosure(EnclosureFrom.OWN);
        Set<String> use = that.request().use().stream().filter(sku -> !that.catalog().isOfEnclosuresAlone(sku)).collect(Collectors.toSet());
        Equipment stands = new Equipment(some(asked.volumes(), random).stream().map(wish ->
                wish.with(random.nextBoolean() ? 0 : wish.usableGb())).toList(), some(asked.cards(), random),
                random.nextBoolean() ? asked.extras() : Map.of(), EnclosureFrom.OWN);
        return random(that.with(that.request().withEquipment(asked).withUse(use)), stands);
    }

    private static <T> List<T> some(List<T> all, SplittableRandom random) {
        return all.stream().filter(one -> random.nextDouble() < 0.75).toList();
    }

    private static Optional<UpgradeCase> random(RandomCase that, Equipment stands) {
        SplittableRandom random = new SplittableRandom(that.seed());
        Search search = new Search(that.catalog());
        Request any = Request.named("installed").withMachines(1).withAlternatives(6, 0).withEquipment(stands)
                .withObjective(random.nextBoolean() ? Objective.CHEAPEST : Objective.MOST_MEMORY);
        List<Build> builds = search.run(any, Deadline.never()).ranked().stream().map(order -> order.machines().get(0)).toList();
        if (builds.isEmpty()) {
            return Optional.empty();
        }
        Build build = builds.get(random.nextInt(builds.size()));
        double chance = random.nextDouble();
        if (chance < 0.3) {
            build = disturbed(build, random, chance < 0.1);
        }
        double tradeIn = List.of(0.0, 0.0, 0.3, 0.77, 1.0).get(random.nextInt(5));
        Request request = that.request().withObjective(Objective.CHEAPEST);
        if (random.nextDouble() < 0.5) {
            // Little money: most upgrades cost less than the machines that random limits are for.
            request = request.withLimit(request.limit().withPrice(OptionalLong.of((long) request.machines() * random.nextInt(12) * 1000)));
        }
        return Optional.of(new UpgradeCase(that.with(request), build, tradeIn, that.catalog()));
    }

    /** The same machine with its modules in other slots, or one of them gone. */
    private static Build disturbed(Build build, SplittableRandom random, boolean fewer) {
        List<Slot> slots = new ArrayList<>(build.platform().board().slots());
        Collections.shuffle(slots, new Random(random.nextLong()));
        List<MemoryModule> modules = new ArrayList<>(build.modules().values());
        if (fewer) {
            modules.remove(0);
        }
        TreeMap<Slot, MemoryModule> places = new TreeMap<>();
        for (int i = 0; i < modules.size(); i++) {
            places.put(slots.get(i), modules.get(i));
        }
        return new Build(build.platform(), build.processors(), build.cooling(), build.supply(), places, build.fitout());
    }

    private List<String> skus() {
        Platform platform = build.platform();
        List<String> skus = new ArrayList<>();
        catalog().processors().stream().filter(processor -> processor.socket().equals(platform.processors().socket()))
                .forEach(processor -> skus.add(processor.sku()));
        platform.cooling().forEach(kit -> skus.add(kit.sku()));
        platform.power().supplies().stream().map(Supply::sku).distinct().forEach(skus::add);
        catalog().modules().stream().filter(module -> module.generation().equals(platform.memory().generation()))
                .forEach(module -> skus.add(module.sku()));
        catalog().drives().forEach(drive -> skus.add(drive.sku()));
        catalog().cards().forEach(card -> skus.add(card.sku()));
        catalog().extras().forEach(extra -> skus.add(extra.sku()));
        return skus.stream().distinct().toList();
    }

    /** The units of a part that the machines could take and that there are, from wherever. */
    private int most(String sku) {
        Platform platform = build.platform();
        int sockets = platform.board().sockets();
        int supplies = platform.power().supplies().stream().filter(supply -> supply.sku().equals(sku)).mapToInt(Supply::count).max().orElse(0);
        int takes = catalog().module(sku).isPresent() ? platform.board().slots().size() : Math.max(equipment(sku), Math.max(sockets, supplies));
        int there = installed(sku) + request().onHand().getOrDefault(sku, 0)
                + sold(sku).stream().mapToInt(Lot::available).sum();
        return Math.min(takes * machines(), there);
    }

    /** The units of a drive, card or extra that a machine could take. */
    private int equipment(String sku) {
        Expansion expansion = build.platform().expansion();
        if (catalog().drive(sku).isPresent()) {
            return request().equipment().volumes().isEmpty() ? 0 : expansion.bays().stream().mapToInt(BayGroup::count).sum();
        } else if (catalog().card(sku).isPresent()) {
            return expansion.slots().size();
        }
        return expansion.needs().stream().mapToInt(need -> need.parts().getOrDefault(sku, 0)).sum() * build.platform().processors().sockets()
                + request().equipment().extras().getOrDefault(sku, 0) + 1;
    }

    private List<Lot> sold(String sku) {
        return sold(catalog(), sku);
    }

    private List<Lot> sold(Catalog shop, String sku) {
        return shop.lots(sku).stream().filter(lot -> Reading.lot(lot, request().limit()).isEmpty()).toList();
    }

    /** For each part where its count begins in the code; empty where a code would not hold them all. */
    private Optional<Map<String, Integer>> bits() {
        Map<String, Integer> shifts = new LinkedHashMap<>();
        int bits = 0;
        for (String sku : skus()) {
            shifts.put(sku, bits);
            bits += Integer.SIZE - Integer.numberOfLeadingZeros(most(sku));
        }
        return bits <= MOST_BITS ? Optional.of(shifts) : Optional.empty();
    }

    private long least(Map<String, Integer> shifts) {
        Catalog catalog = catalog();
        Platform platform = build.platform();
        Map<String, List<Lot>> lots = new HashMap<>();
        shifts.forEach((sku, shift) -> {
            if (most(sku) > 0) {
                lots.put(sku, List.of(Lot.own(sku, "code", most(sku), 1L << shift)));
            }
        });
        lots.put(platform.sku(), List.of(Lot.own(platform.sku(), "code", machines(), 0)));
        Catalog coded = Shops.of("coded", catalog.currency(), catalog.pricedOn(), new Labour(0, 0), catalog.throughputFactors(),
                new Assortment(List.of(platform), List.of(), catalog.processors(), catalog.modules(), catalog.drives(), catalog.cards(), catalog.extras()),
                lots, Stationery.PLAIN);
        Request r = request();
        Request plain = new Request(r.name(), r.machines(), r.require(), r.limit().withPrice(OptionalLong.empty()),
                new Goal(Objective.CHEAPEST, r.worth(), Licence.NONE), new Shortlist(1, 0),
                new PartChoice(Set.of(platform.sku()), r.forbid(), r.use(), Map.of(), Equipment.NONE)).withEquipment(r.equipment());
        long most = r.limit().price().orElse(Long.MAX_VALUE - 1);
        Map<String, long[]> prices = new HashMap<>();
        shifts.keySet().forEach(sku -> prices.put(sku, ExhaustiveDraw.prices(sold(sku))));
        long least = BruteForce.allOfEverySet(new RandomCase(that.seed(), coded, plain)).stream().map(Candidate::price).distinct()
                .mapToLong(code -> spend(shifts, prices, code)).filter(spend -> spend <= most).min().orElse(Long.MAX_VALUE);
        long licence = licence(build.cores(), build.processors().size());
        boolean stands = Reading.machine(build, plain, catalog.throughputFactors()).isEmpty()
                && Reading.partNumbers(r.require().populated(), build.modules().values().stream().map(MemoryModule::sku).distinct().count()).isEmpty();
        return stands && licence <= most ? Math.min(least, licence) : least;
    }

    long licence(int cores, int processors) {
        return machines() * (request().licence().perCore() * cores + request().licence().perProcessor() * processors);
    }

    /** What a set of parts comes to when something is changed; too much to count where the shop does not sell it. */
    private long spend(Map<String, Integer> shifts, Map<String, long[]> pricesOf, long code) {
        Catalog catalog = catalog();
        List<String> skus = List.copyOf(shifts.keySet());
        long spend = machines() * catalog.labour().perMachine();
        for (int i = 0; i < skus.size(); i++) {
            String sku = skus.get(i);
            int end = i + 1 < skus.size() ? shifts.get(skus.get(i + 1)) : Long.SIZE - 1;
            int units = (int) (code >>> shifts.get(sku) & (1L << end - shifts.get(sku)) - 1);
            long least = Long.MAX_VALUE;
            long[] prices = pricesOf.get(sku);
            int installed = installed(sku);
            int drawer = request().onHand().getOrDefault(sku, 0);
            for (int kept = 0; kept <= Math.min(units, installed); kept++) {
                // None is taken out to put one of the same part in that was on hand.
                for (int own = 0; own <= (kept < installed ? 0 : Math.min(units - kept, drawer)); own++) {
                    int bought = units - kept - own;
                    if (bought < prices.length && prices[bought] < ExhaustiveDraw.NONE) {
                        long work = work(sku) * (units - kept);
                        least = Math.min(least, prices[bought] + work - (installed - kept) * credit(sku));
                    }
                }
            }
            if (least == Long.MAX_VALUE) {
                return Long.MAX_VALUE;
            }
            spend += least;
            int processors = units;
            if (catalog.processor(sku).isPresent()) {
                spend += request().licence().perCore() * processors * catalog.processor(sku).get().cores()
                        + request().licence().perProcessor() * processors;
            }
        }
        return spend;
    }

    private long work(String sku) {
        Labour labour = catalog().labour();
        return catalog().module(sku).isPresent() ? labour.perModule() : catalog().drive(sku).isPresent() ? labour.perDrive()
                : catalog().card(sku).isPresent() ? labour.perCard() : 0;
    }

    /** A share of the least price that the lots have units for, cut off to whole minor units. */
    long credit(String sku) {
        long least = Long.MAX_VALUE;
        for (Lot lot : sold(buyer, sku)) {
            for (Lot.PriceBreak step : lot.breaks()) {
                least = step.minQuantity() <= lot.available() ? Math.min(least, step.unitPrice()) : least;
            }
        }
        return least == Long.MAX_VALUE ? 0 : least * Math.round(tradeIn * 100) / 100;
    }
}
