package sledwright.oracle;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.Lot;
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
        List<Supply> supplies = platform.power().supplies().isEmpty() ? Collections.singletonList(null) : platform.power().supplies();
        for (Processor processor : catalog.processors()) {
            if (stands(Reading.processor(platform, processor, fitted)) && stands(Reading.cooling(kit, processor))
                    && !forbidden(processor.sku())) {
                for (Supply supply : supplies) {
                    long price = fixedPrice(platform, kit, fitted, processor, supply);
                    if (price < ExhaustiveDraw.NONE && wished(platform, kit, processor, supply)) {
                        if (populations == null) {
                            populations = Populations.of(platform, kit, fitted, catalog, request, ignored, held, this::price);
                        }
                        for (Population population : populations) {
                            judge(platform, kit, fitted, processor, supply, price, population);
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
    private boolean wished(Platform platform, CoolingKit kit, Processor processor, Supply supply) {
        Set<String> wanted = new HashSet<>(request.use());
        wanted.addAll(held);
        wanted.removeIf(sku -> catalog.module(sku).isPresent());
        wanted.removeAll(Set.of(platform.sku(), kit.sku(), processor.sku()));
        if (supply != null) {
            wanted.remove(supply.sku());
        }
        return wanted.isEmpty() || ignored.contains("required-part");
    }

    private void judge(Platform platform, CoolingKit kit, int fitted, Processor processor, Supply supply, long fixed, Population population) {
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
        NaiveFigures figures = new NaiveFigures(fitted, cores, processor.baseGhz(), processor.allCoreGhz(), NaiveFigures.rounded(population.usableGb()),
                mts, NaiveFigures.rounded(bandwidth), NaiveFigures.rounded(throughput), NaiveFigures.rounded(load), population.spareSlots());
        if (!stands(Reading.power(platform, supply, request.limit(), figures.loadW())) || !stands(Reading.targets(request.require(), figures))) {
            return;
        }
        long machine = catalog.labour().perMachine() + catalog.labour().perModule() * population.modules()
                + request.licence().perCore() * cores + request.licence().perProcessor() * fitted;
        long price = fixed + population.price() + machine * request.machines();
        if (request.limit().price().isPresent() && price > request.limit().price().getAsLong() && !ignored.contains("budget")) {
            return;
        }
        Candidate bare = Candidate.of(price, figures, "");
        found.computeIfAbsent(bare, key -> Candidate.of(price, figures, "%s %s %dx%s %s %s".formatted(platform.sku(), kit.sku(), fitted,
                processor.sku(), supply == null ? "-" : supply.count() + "x" + supply.sku(), population.what())));
    }

    private boolean stands(Set<String> broken) {
        return ignored.containsAll(broken);
    }

    private boolean forbidden(String sku) {
        return request.forbid().contains(sku) && !ignored.contains("forbidden-part");
    }

    /** The least price of so many units of a part from the lots that the request accepts. */
    private long price(String sku, int units) {
        long[] known = prices.computeIfAbsent(sku, key -> {
            List<Lot> lots = new ArrayList<>(Stock.of(catalog, request).lots(sku));
            lots.removeIf(lot -> !stands(Reading.lot(lot, request.limit())));
            return ExhaustiveDraw.prices(lots);
        });
        return units < known.length ? known[units] : ExhaustiveDraw.NONE;
    }
}
