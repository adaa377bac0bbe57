package sledwright.oracle;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToLongBiFunction;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.Enclosure;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Lot;
import sledwright.domain.Objective;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Stock;
import sledwright.domain.Supply;

/**
 * Every valid order of a small case, by trying everything: every platform, kit, number of processors, processor, supply and
 * population, every choice of part numbers for alike modules, and every way of dealing them over the machines.
 */
final class BruteForce {

    private final Catalog catalog;
    private final Request request;
    private final Set<String> ignored;
    private final Set<String> held;
    private final Map<String, long[]> prices = new HashMap<>();
    private final Map<Candidate, Candidate> found = new LinkedHashMap<>();

    private boolean everySet;

    private BruteForce(RandomCase that, Set<String> ignored, Set<String> held) {
        catalog = that.catalog();
        request = that.request();
        this.ignored = ignored;
        this.held = held;
    }

    /** Every valid order, one of each price and figures. */
    static List<Candidate> all(RandomCase that) {
        return allWithout(that, Set.of());
    }

    /** The same, were some rules not in the book. */
    static List<Candidate> allWithout(RandomCase that, Set<String> ignoredRules) {
        return new BruteForce(that, ignoredRules, Set.of()).list();
    }

    /** Every valid order of which one machine at least holds a part. */
    static List<Candidate> allHolding(String sku, RandomCase that) {
        return new BruteForce(that, Set.of(), Set.of(sku)).list();
    }

    /** The same with every set of drives, cards and extras, not the cheapest of each build alone. */
    static List<Candidate> allOfEverySet(RandomCase that) {
        BruteForce every = new BruteForce(that, Set.of(), Set.of());
        every.everySet = true;
        return every.list();
    }

    private List<Candidate> list() {
        run();
        return List.copyOf(found.values());
    }

    private void run() {
        for (Platform platform : catalog.platforms()) {
            boolean asked = request.platforms().isEmpty() || request.platforms().contains(platform.sku());
            if (asked && !forbidden(platform.sku()) && stands(Reading.mode(platform.memory(), request.require().mode()))) {
                for (CoolingKit kit : platform.cooling()) {
                    for (int fitted : platform.processors().counts()) {
                        if (!forbidden(kit.sku())) {
                            machines(platform, kit, fitted);
                        }
                    }
                }
            }
        }
    }

    private void machines(Platform platform, CoolingKit kit, int fitted) {
        List<Population> populations = null;
        List<EveryFitout.Fit> fits = EveryFitout.of(platform, fitted, catalog, request, held, ignored, this::price);
        List<Supply> supplies = platform.power().supplies().isEmpty() ? Collections.singletonList(null) : platform.power().supplies();
        for (Processor processor : catalog.processors()) {
            if (stands(Reading.processor(platform, processor, fitted)) && stands(Reading.cooling(kit, processor))
                    && !forbidden(processor.sku())) {
                for (Supply supply : supplies) {
                    long price = fixedPrice(platform, kit, fitted, processor, supply);
                    if (price < ExhaustiveDraw.NONE && !fits.isEmpty()) {
                        if (populations == null) {
                            populations = Populations.of(platform, kit, fitted, catalog, request, ignored, held, this::price);
                        }
                        for (Population population : populations) {
                            judge(platform, kit, fitted, processor, supply, price, population, fits);
                        }
                    }
                }
            }
        }
    }

    private long fixedPrice(Platform platform, CoolingKit kit, int fitted, Processor processor, Supply supply) {
        int machines = request.machines();
        if (supply != null && forbidden(supply.sku())) {
            return ExhaustiveDraw.NONE;
        }
        long[] parts = {price(platform.sku(), machines), price(kit.sku(), fitted * machines), price(processor.sku(), fitted * machines),
                supply == null ? 0 : price(supply.sku(), supply.count() * machines)};
        long total = 0;
        for (long part : parts) {
            if (part >= ExhaustiveDraw.NONE) {
                return ExhaustiveDraw.NONE;
            }
            total += part;
        }
        return total;
    }

    /** Whether all wanted parts that are no modules are there; the modules are seen to where they are dealt. */
    private boolean wished(Set<String> fixed, Set<String> besides) {
        Set<String> wanted = new HashSet<>(request.use());
        wanted.addAll(held);
        wanted.removeIf(sku -> catalog.module(sku).isPresent());
        wanted.removeAll(besides);
        wanted.removeAll(fixed);
        return wanted.isEmpty() || ignored.contains("required-part");
    }

    private void judge(Platform platform, CoolingKit kit, int fitted, Processor processor, Supply supply, long fixed, Population population,
                       List<EveryFitout.Fit> fits) {
        if (!stands(Reading.addressed(processor, population.socketGb()))
                || !stands(Reading.inlet(platform.thermal(), processor, population.type(), request.limit()))) {
            return;
        }
        int mts = Math.min(processor.memoryMts(), population.mts());
        double bandwidth = 0;
        double throughput = 0;
        double load = platform.power().baseW() + population.heaviestW();
        for (int socket = 0; socket < fitted; socket++) {
            bandwidth += NaiveFigures.bandwidthGbs(mts, population.channelsGb());
            throughput += NaiveFigures.throughput(processor, catalog.throughputFactors());
            load += processor.tdpW();
        }
        int cores = fitted * processor.cores();
        long machine = catalog.labour().perMachine() + catalog.labour().perModule() * population.modules()
                + request.licence().perCore() * cores + request.licence().perProcessor() * fitted;
        for (List<EveryFitout.Fit> sets : everySet ? fits.stream().map(List::of).toList() : List.of(fits)) {
            Set<String> others = new HashSet<>(Set.of(platform.sku(), kit.sku(), processor.sku()));
            if (supply != null) {
                others.add(supply.sku());
            }
            Whole whole = whole(platform, supply, others, load, sets, fixed + population.price() + machine * request.machines());
            if (whole != null) {
                NaiveFigures figures = new NaiveFigures(fitted, cores, processor.baseGhz(), processor.allCoreGhz(),
                        NaiveFigures.rounded(population.usableGb()), mts, NaiveFigures.rounded(bandwidth), NaiveFigures.rounded(throughput),
                        whole.loadW, population.spareSlots(),
                        NaiveFigures.rounded(NaiveFigures.work(request.require().work().workload(), throughput, cores, bandwidth)));
                String words = "%s %s %dx%s %s %s".formatted(platform.sku(), kit.sku(), fitted, processor.sku(),
                        supply == null ? "-" : supply.count() + "x" + supply.sku(), population.what() + " " + whole.what);
                add(fixed + population.price() + machine * request.machines() + whole.price, supply, figures, words);
            }
        }
    }

    private void add(long price, Supply supply, NaiveFigures figures, String words) {
        boolean tooDear = request.limit().price().isPresent() && price > request.limit().price().getAsLong() && !ignored.contains("budget");
        if (!tooDear && stands(Reading.targets(request.require(), figures))) {
            long energy = NaiveFigures.energyCost(request, figures.loadW(), supply);
            found.computeIfAbsent(Candidate.of(price, energy, figures, ""), key -> Candidate.of(price, energy, figures, words));
        }
    }

    /**
     * What completes machines of a platform whose other parts load so much; null where nothing does.
     *
     * @param fixed the skus of those other parts
     */
    static Whole completing(RandomCase that, Platform platform, Supply supply, Set<String> fixed, double othersW, List<EveryFitout.Fit> fits) {
        return new BruteForce(that, Set.of(), Set.of()).whole(platform, supply, fixed, othersW, fits, 0);
    }

    /** What is besides processors and memory, and the load with it. */
    record Whole(long price, long energy, double loadW, String what) {
    }

    /**
     * Of all sets with which the machines are valid, that of the least price, or price and energy, then the least load; null where there is none.
     *
     * @param rest what all else costs
     */
    private Whole whole(Platform platform, Supply supply, Set<String> fixed, double othersW, List<EveryFitout.Fit> fits, long rest) {
        Whole best = null;
        boolean sled = request.equipment().enclosure() == EnclosureFrom.NEW
                && catalog.enclosures().stream().anyMatch(enclosure -> enclosure.takes().contains(platform.sku()));
        for (EveryFitout.Fit fit : fits) {
            double loadW = NaiveFigures.rounded(othersW + fit.watts());
            if (!stands(Reading.power(platform, supply, request.limit(), loadW))) {
                continue;
            }
            if (!sled) {
                best = better(best, wished(fixed, fit.skus()) ? within(rest, fit.price(), supply, loadW, fit.what()) : null);
                continue;
            }
            for (Enclosure enclosure : catalog.enclosures()) {
                for (Supply feed : enclosure.supplies()) {
                    long price = enclosures(platform, enclosure, feed, loadW);
                    Set<String> besides = new HashSet<>(fit.skus());
                    besides.addAll(Set.of(enclosure.sku(), feed.sku()));
                    if (price < ExhaustiveDraw.NONE && wished(fixed, besides)) {
                        best = better(best, within(rest, fit.price() + price, supply, loadW, fit.what() + " in " + enclosure.sku()));
                    }
                }
            }
        }
        return best;
    }

    /** Where not the price decides, what is too dear is no choice. */
    private Whole within(long rest, long price, Supply supply, double loadW, String what) {
        boolean total = request.objective() == Objective.LEAST_TOTAL;
        boolean tooDear = request.limit().price().isPresent() && rest + price > request.limit().price().getAsLong() && !ignored.contains("budget");
        return total && tooDear ? null : new Whole(price, total ? NaiveFigures.energyCost(request, loadW, supply) : 0, loadW, what);
    }

    private static Whole better(Whole one, Whole other) {
        if (one == null || other == null) {
            return one == null ? other : one;
        }
        if (one.price + one.energy != other.price + other.energy) {
            return other.price + other.energy < one.price + one.energy ? other : one;
        }
        return other.price < one.price || other.price == one.price && other.loadW < one.loadW ? other : one;
    }

    /** What as few enclosures as take all machines cost. */
    private long enclosures(Platform platform, Enclosure enclosure, Supply feed, double loadW) {
        boolean low = request.limit().mainsV().isPresent() && request.limit().mainsV().getAsDouble() < 180;
        double rated = low ? feed.lowLineWatts() : feed.watts();
        double deliverable = (feed.count() - feed.redundant()) * rated;
        double most = (enclosure.budgetW() > 0 ? Math.min(deliverable, enclosure.budgetW()) : deliverable) - enclosure.baseW();
        int sleds = 0;
        while (sleds < enclosure.bays() && (sleds + 1) * loadW <= most + 1e-7 && rated > 0) {
            sleds++;
        }
        if (sleds == 0 || !enclosure.takes().contains(platform.sku()) || forbidden(enclosure.sku()) || forbidden(feed.sku())) {
            return ExhaustiveDraw.NONE;
        }
        int count = (int) Math.ceil((double) request.machines() / sleds);
        long own = price(enclosure.sku(), count);
        long fed = price(feed.sku(), count * feed.count());
        return own >= ExhaustiveDraw.NONE || fed >= ExhaustiveDraw.NONE ? ExhaustiveDraw.NONE : own + fed;
    }

    private boolean stands(Set<String> broken) {
        return ignored.containsAll(broken);
    }

    private boolean forbidden(String sku) {
        return request.forbid().contains(sku) && !ignored.contains("forbidden-part");
    }

    /** The same for a case, for whoever lists sets alone. */
    static ToLongBiFunction<String, Integer> prices(RandomCase that) {
        return new BruteForce(that, Set.of(), Set.of())::price;
    }

    /** The least price of a given number of units of a part from the lots that the request accepts. */
    private long price(String sku, int units) {
        long[] known = prices.computeIfAbsent(sku, key -> {
            List<Lot> lots = new ArrayList<>(Stock.of(catalog, request).lots(sku));
            lots.removeIf(lot -> !stands(Reading.lot(lot, request.limit())));
            return ExhaustiveDraw.prices(lots);
        });
        return units < known.length ? known[units] : ExhaustiveDraw.NONE;
    }
}
