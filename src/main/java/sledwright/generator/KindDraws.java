package sledwright.generator;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.metrics.CheapestDraw;

/**
 * The worthwhile ways to draw modules of one kind, or of a group of kinds, for each number of modules in a shape: no other
 * way is both as cheap and as light.
 */
final class KindDraws {

    private static final Comparator<Draw> CHEAP_THEN_LIGHT = Comparator.comparingLong(Draw::price).thenComparingLong(Draw::least)
            .thenComparingLong(Draw::microwatts);

    private final Shelf shelf;
    private final Set<String> wanted;
    private final int machines;
    private final int unitsPerModule;
    private final int mostModules;

    /**
     * @param wanted         skus that every machine must hold
     * @param unitsPerModule units over all machines that one module of a shape stands for
     */
    KindDraws(Shelf shelf, Set<String> wanted, int machines, int unitsPerModule, int mostModules) {
        this.shelf = shelf;
        this.wanted = wanted;
        this.machines = machines;
        this.unitsPerModule = unitsPerModule;
        this.mostModules = mostModules;
    }

    /** For each number of modules, the draws of a group: its kinds may share the number in any way. */
    List<List<Draw>> ofGroup(List<MemoryModule> modules) {
        Map<String, List<MemoryModule>> kinds = modules.stream()
                .collect(Collectors.groupingBy(module -> module.kind().toString(), TreeMap::new, Collectors.toList()));
        List<List<Draw>> group = null;
        for (List<MemoryModule> alike : kinds.values()) {
            List<List<Draw>> kind = ofKind(alike);
            group = group == null ? kind : together(group, kind);
        }
        return group;
    }

    private List<List<Draw>> together(List<List<Draw>> one, List<List<Draw>> other) {
        List<List<Draw>> sums = new ArrayList<>();
        for (int modules = 0; modules <= mostModules; modules++) {
            List<Draw> draws = new ArrayList<>();
            for (int first = 0; first <= modules; first++) {
                for (Draw a : one.get(first)) {
                    for (Draw b : other.get(modules - first)) {
                        draws.add(a.plus(b));
                    }
                }
            }
            sums.add(worthwhile(draws));
        }
        return sums;
    }

    /** Part numbers of one kind whose lots serve as one, since only their prices differ. */
    private record Source(List<MemoryModule> modules, long microwatts, int least, long[] prices) {
    }

    private List<List<Draw>> ofKind(List<MemoryModule> alike) {
        List<Source> sources = sources(alike);
        return IntStream.rangeClosed(0, mostModules).mapToObj(modules -> ofKind(sources, modules * unitsPerModule)).toList();
    }

    private List<Source> sources(List<MemoryModule> alike) {
        Map<String, List<MemoryModule>> bySource = alike.stream().collect(Collectors.groupingBy(
                module -> "%020d %s".formatted(Watts.micro(module.powerW()), wanted.contains(module.sku()) ? module.sku() : ""),
                TreeMap::new, Collectors.toList()));
        List<Source> sources = new ArrayList<>();
        for (List<MemoryModule> modules : bySource.values()) {
            int least = wanted.contains(modules.get(0).sku()) ? machines : 0;
            long[] prices = CheapestDraw.prices(lots(shelf, modules), mostModules * unitsPerModule);
            Arrays.fill(prices, 0, Math.min(least, prices.length), CheapestDraw.IMPOSSIBLE);
            sources.add(new Source(modules, Watts.micro(modules.get(0).powerW()), least, prices));
        }
        return sources;
    }

    /** The lots of several part numbers, the preferred first. */
    static List<Lot> lots(Shelf shelf, List<MemoryModule> modules) {
        return modules.stream().map(MemoryModule::sku).distinct().flatMap(sku -> shelf.lots(sku).stream()).toList();
    }

    private List<Draw> ofKind(List<Source> sources, int units) {
        if (sources.size() == 1) {
            Draw only = draw(sources.get(0), units);
            return only == null ? List.of() : List.of(only);
        }
        List<Draw> draws = new ArrayList<>();
        split(sources, 0, units, Draw.NOTHING, new int[sources.size()], draws);
        return worthwhile(draws);
    }

    private void split(List<Source> sources, int index, int left, Draw sofar, int[] taken, List<Draw> draws) {
        if (index == sources.size() - 1) {
            Draw last = draw(sources.get(index), left);
            if (last != null) {
                taken[index] = left;
                Draw whole = sofar.plus(last);
                draws.add(machines > 1 && distinctWatts(sources, taken) > 1 ? whole.uneven(lightest(sources, taken)) : whole);
            }
            return;
        }
        for (int units = 0; units <= left; units++) {
            Draw draw = draw(sources.get(index), units);
            if (draw != null) {
                taken[index] = units;
                split(sources, index + 1, left - units, sofar.plus(draw), taken, draws);
            }
        }
    }

    private Draw draw(Source source, int units) {
        if (source.prices[units] >= CheapestDraw.IMPOSSIBLE) {
            return null;
        }
        return units == 0 ? Draw.NOTHING
                : Draw.of(new Draw.Share(source.modules, units, source.microwatts, source.least > 0), source.prices[units]);
    }

    private static long distinctWatts(List<Source> sources, int[] taken) {
        return IntStream.range(0, taken.length).filter(i -> taken[i] > 0).mapToLong(i -> sources.get(i).microwatts).distinct().count();
    }

    /** The watts of all machines if each had the lightest hand that one can get of these units. */
    private long lightest(List<Source> sources, int[] taken) {
        int hand = Arrays.stream(taken).sum() / machines;
        long weight = 0;
        for (int i = 0; i < taken.length; i++) {
            if (sources.get(i).least > 0) {
                weight += sources.get(i).microwatts;
                hand--;
            }
        }
        for (int i = 0; i < taken.length && hand > 0; i++) {
            int units = Math.min(hand, taken[i] - (sources.get(i).least > 0 ? machines : 0));
            weight += units * sources.get(i).microwatts;
            hand -= units;
        }
        return weight * machines;
    }

    /** Drops every draw that another matches or beats in price and watts whatever stands beside it. */
    private List<Draw> worthwhile(List<Draw> draws) {
        draws.sort(CHEAP_THEN_LIGHT);
        List<Draw> kept = new ArrayList<>();
        long lightestEven = Long.MAX_VALUE;
        long lightestUneven = Long.MAX_VALUE;
        for (Draw draw : draws) {
            // Nothing kept can match a draw of fewer watts in all than any of them, so the comparison by hand is spared.
            boolean matched = draw.least() >= lightestEven || !draw.even() && draw.microwatts() >= lightestUneven
                    && kept.stream().anyMatch(cheaper -> !cheaper.even() && Hand.isLighterOrEqual(cheaper, draw));
            if (!matched) {
                kept.add(draw);
                if (draw.even()) {
                    lightestEven = draw.microwatts();
                } else {
                    lightestUneven = Math.min(lightestUneven, draw.microwatts());
                }
            }
        }
        return List.copyOf(kept);
    }
}
