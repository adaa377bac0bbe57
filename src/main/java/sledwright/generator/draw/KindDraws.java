package sledwright.generator.draw;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.LongConsumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.generator.shape.GroupKind;
import sledwright.generator.time.Deadline;
import sledwright.generator.time.OutOfTimeException;
import sledwright.metrics.CheapestDraw;

/**
 * The worthwhile ways to draw modules of one kind, or of a group of kinds, for each number of modules in a shape: no other
 * way is both as cheap and as light.
 *
 * <p>Alike modules may differ in watts, and then machines may too. Small orders keep every way that some deal could make
 * the lightest. Large ones keep, for each weight of the heaviest machine, the cheapest way, and say how far the weight could
 * be off ({@link Draw.Load#range()}).
 */
public final class KindDraws {

    private static final Comparator<Draw> CHEAP_THEN_LIGHT = Comparator.comparingLong(Draw::price)
            .thenComparingLong(draw -> draw.load().lightest()).thenComparingLong(draw -> draw.load().total());

    private final Shelf shelf;
    private final Map<String, Integer> leastUnits;
    private final int machines;
    private final int unitsPerModule;
    private final int mostModules;
    private final boolean dealtExactly;
    private final boolean everyWeight;

    /**
     * @param leastUnits  sku -> units that all machines together must take; as many as there are machines: one each
     * @param everyWeight whether heavier ways are kept beside lighter ones that cost no more
     */
    public KindDraws(Shelf shelf, Map<String, Integer> leastUnits, UnitCounts counts, boolean everyWeight) {
        this.shelf = shelf;
        this.leastUnits = leastUnits;
        machines = counts.machines();
        unitsPerModule = counts.perModule();
        mostModules = counts.mostModules();
        this.everyWeight = everyWeight;
        dealtExactly = machines > 1 && Deal.isExact(mostModules * unitsPerModule);
    }

    /**
     * The draws of a group: its kinds may share the number of modules in any way.
     *
     * @throws OutOfTimeException when the deadline comes first
     */
    public CountedDraws ofGroup(GroupKind same, List<MemoryModule> modules, Deadline deadline) {
        Map<String, List<MemoryModule>> kinds = modules.stream()
                .collect(Collectors.groupingBy(module -> module.kind().toString(), TreeMap::new, Collectors.toList()));
        CountedDraws group = null;
        for (List<MemoryModule> alike : kinds.values()) {
            deadline.check();
            CountedDraws kind = new OfKind(sources(new Draw.Alike(same, alike.get(0).kind()), alike), deadline);
            group = group == null ? kind : new Together(group, kind);
        }
        return group;
    }

    /** The draws of two sets of kinds. */
    private final class Together extends CountedDraws {

        private final CountedDraws one;
        private final CountedDraws other;

        Together(CountedDraws one, CountedDraws other) {
            super(one, other);
            this.one = one;
            this.other = other;
        }

        @Override
        List<Draw> work(int modules, Deadline deadline, LongConsumer grown) {
            List<Draw> draws = new ArrayList<>();
            for (int first = 0; first <= modules; first++) {
                List<Draw> rest = other.of(modules - first, deadline, grown);
                for (Draw a : one.of(first, deadline, grown)) {
                    rest.forEach(b -> draws.add(a.plus(b)));
                }
            }
            return worthwhile(draws);
        }

        @Override
        long bytes() {
            return super.bytes() + one.bytes() + other.bytes();
        }
    }

    /** The draws of one kind. */
    private final class OfKind extends CountedDraws {

        private final List<Source> sources;
        private List<boolean[][]> pairs;
        private List<List<Draw>> inRounds;

        OfKind(List<Source> sources, Deadline deadline) {
            super(cheapest(sources, deadline), lightest(sources));
            this.sources = sources;
        }

        @Override
        List<Draw> work(int modules, Deadline deadline, LongConsumer grown) {
            deadline.check();
            int units = modules * unitsPerModule;
            if (sources.size() == 1) {
                int[] taken = {units};
                return sources.get(0).prices[units] < CheapestDraw.IMPOSSIBLE ? List.of(draw(sources, taken)) : List.of();
            }
            return dealtExactly ? split(units) : inRounds(deadline).get(modules);
        }

        private List<Draw> split(int units) {
            List<boolean[][]> worth = pairs;
            if (worth == null) {
                worth = IntStream.range(1, sources.size()).mapToObj(i -> worthwhilePairs(sources.get(i - 1), sources.get(i))).toList();
                pairs = worth;
            }
            List<Draw> draws = new ArrayList<>();
            KindDraws.split(sources, worth, 0, units, new int[sources.size()], taken -> draws.add(draw(sources, taken)));
            return worthwhile(draws);
        }

        /** All at once: those of fewer units are worked out on the way. */
        private List<List<Draw>> inRounds(Deadline deadline) {
            List<List<Draw>> rounds = inRounds;
            if (rounds == null) {
                rounds = new RoundDraws(sources, machines, everyWeight, deadline).upTo(mostModules, unitsPerModule).stream()
                        .map(ways -> ways.stream().map(taken -> draw(sources, taken)).toList()).toList();
                inRounds = rounds;
            }
            return rounds;
        }
    }

    private long[] cheapest(List<Source> sources, Deadline deadline) {
        long[] least = sources.get(0).prices;
        for (Source source : sources.subList(1, Math.max(1, sources.size() - 1))) {
            least = CountedDraws.leastSums(least, source.prices, deadline);
        }
        long[] last = sources.size() == 1 ? new long[] {0} : sources.get(sources.size() - 1).prices;
        int most = CheapestDraw.most(least);
        int mostOfLast = CheapestDraw.most(last);
        long[] each = new long[mostModules + 1];
        for (int modules = 0; modules < each.length; modules++) {
            each[modules] = CountedDraws.leastSum(least, most, last, mostOfLast, modules * unitsPerModule);
        }
        return each;
    }

    /** Whatever is drawn and however it is dealt, a machine has as many units, and none are lighter than the lightest there are. */
    private long[] lightest(List<Source> sources) {
        long[] each = new long[mostModules + 1];
        for (int modules = 1; modules < each.length; modules++) {
            int hand = modules * unitsPerModule / machines;
            for (int i = sources.size() - 1; i >= 0 && hand > 0; i--) {
                int units = Math.min(hand, sources.get(i).most);
                each[modules] += units * sources.get(i).microwatts;
                hand -= units;
            }
        }
        return each;
    }

    /**
     * Part numbers of one kind whose lots serve as one, since only their prices differ.
     *
     * @param most units that are available of them
     */
    record Source(Draw.Alike alike, List<MemoryModule> modules, long microwatts, boolean everywhere, long[] prices, int most) {
    }

    /** The sources of a kind, the heaviest first. */
    List<Source> sources(Draw.Alike alike, List<MemoryModule> all) {
        record Key(long microwatts, String wantedSku) {
        }
        Map<Key, List<MemoryModule>> bySource = all.stream().collect(Collectors.groupingBy(
                module -> new Key(Watts.micro(module.powerW()), leastUnits.containsKey(module.sku()) ? module.sku() : "")));
        List<Source> sources = new ArrayList<>();
        bySource.forEach((key, modules) -> {
            int least = leastUnits.getOrDefault(key.wantedSku, 0);
            boolean everywhere = least >= machines;
            long[] prices = CheapestDraw.prices(lots(shelf, modules), mostModules * unitsPerModule);
            Arrays.fill(prices, 0, Math.min(least, prices.length), CheapestDraw.IMPOSSIBLE);
            sources.add(new Source(alike, modules, key.microwatts, everywhere, prices, CheapestDraw.most(prices)));
        });
        sources.sort(Comparator.comparingLong(Source::microwatts).reversed().thenComparing(source -> source.modules.get(0).sku()));
        return sources;
    }

    /** The lots of several part numbers, the preferred first. */
    public static List<Lot> lots(Shelf shelf, List<MemoryModule> modules) {
        return modules.stream().map(MemoryModule::sku).distinct().flatMap(sku -> shelf.lots(sku).stream()).toList();
    }

    /**
     * Whether a number of units of one source and of the next is worth taking together: not where fewer of the heavier one and more of
     * the lighter cost no more, whatever else is drawn. A part number that every machine must hold is no substitute for another.
     */
    private boolean[][] worthwhilePairs(Source heavier, Source lighter) {
        boolean[][] worthwhile = new boolean[heavier.most + 1][lighter.most + 1];
        boolean substitutes = !heavier.everywhere && !lighter.everywhere;
        for (int both = 0; both <= heavier.most + lighter.most; both++) {
            long least = CheapestDraw.IMPOSSIBLE;
            for (int units = Math.max(0, both - lighter.most); units <= Math.min(both, heavier.most); units++) {
                long price = heavier.prices[units] + lighter.prices[both - units];
                worthwhile[units][both - units] = !substitutes || everyWeight || price < least;
                least = Math.min(least, price);
            }
        }
        return worthwhile;
    }

    private static void split(List<Source> sources, List<boolean[][]> pairs, int index, int left, int[] taken, Consumer<int[]> found) {
        Source source = sources.get(index);
        boolean last = index == sources.size() - 1;
        int behind = sources.subList(index + 1, sources.size()).stream().mapToInt(Source::most).sum();
        for (int units = Math.max(0, left - behind); units <= Math.min(left, source.most); units++) {
            if (source.prices[units] < CheapestDraw.IMPOSSIBLE && (index == 0 || pairs.get(index - 1)[taken[index - 1]][units])) {
                taken[index] = units;
                if (last) {
                    found.accept(taken);
                } else {
                    split(sources, pairs, index + 1, left - units, taken, found);
                }
            }
        }
    }

    private Draw draw(List<Source> sources, int[] taken) {
        Draw draw = Draw.NOTHING;
        for (int i = 0; i < taken.length; i++) {
            if (taken[i] > 0) {
                Source source = sources.get(i);
                draw = draw.plus(Draw.of(new Draw.Share(source.alike, source.modules, taken[i], source.microwatts, source.everywhere),
                        source.prices[taken[i]]));
            }
        }
        return draw == Draw.NOTHING ? draw : draw.with(load(sources, taken));
    }

    /**
     * How the watts of one kind fall when its free units, heaviest first, are dealt in rounds. The heaviest machine then
     * gets the first of each round; with two distinct watts no deal does better, with more by no more than their range.
     */
    Draw.Load load(List<Source> sources, int[] taken) {
        long total = 0;
        long fixed = 0;
        int hand = Arrays.stream(taken).sum() / machines;
        int distinct = 0;
        long heaviestUnit = 0;
        long lightestUnit = 0;
        long last = -1;
        for (int i = 0; i < taken.length; i++) {
            Source source = sources.get(i);
            total += taken[i] * source.microwatts;
            fixed += source.everywhere ? source.microwatts : 0;
            hand -= source.everywhere ? 1 : 0;
            if (taken[i] > 0 && source.microwatts != last) {
                heaviestUnit = distinct == 0 ? source.microwatts : heaviestUnit;
                lightestUnit = source.microwatts;
                last = source.microwatts;
                distinct++;
            }
        }
        if (distinct < 2 || machines == 1) {
            return new Draw.Load(total, total / machines, total / machines, 0, 0);
        }
        long heaviest = fixed;
        long lightest = fixed;
        int dealt = 0;
        for (int i = 0; i < taken.length; i++) {
            int free = taken[i] - (sources.get(i).everywhere ? machines : 0);
            heaviest += sources.get(i).microwatts * (rounds(dealt + free, machines) - rounds(dealt, machines));
            dealt += free;
        }
        for (int i = taken.length - 1; i >= 0 && hand > 0; i--) {
            int units = Math.min(hand, taken[i] - (sources.get(i).everywhere ? machines : 0));
            lightest += units * sources.get(i).microwatts;
            hand -= units;
        }
        return new Draw.Load(total, lightest, heaviest, heaviestUnit - lightestUnit, distinct == 2 ? 1 : 2);
    }

    /** Rounds that a given number of units begin. */
    public static int rounds(int units, int machines) {
        return (units + machines - 1) / machines;
    }

    /** @param draws the cheapest first */
    private static List<Draw> cheapestOfEachWeight(List<Draw> draws) {
        Set<Draw.Load> seen = new HashSet<>();
        // Machines that differ can be dealt in many ways, so that such draws are all kept.
        return draws.stream().filter(draw -> !draw.even() || seen.add(draw.load())).toList();
    }

    /** Drops every draw that another matches or beats in price and watts whatever stands beside it. */
    List<Draw> worthwhile(List<Draw> draws) {
        draws.sort(CHEAP_THEN_LIGHT);
        if (everyWeight) {
            return cheapestOfEachWeight(draws);
        }
        List<Draw> kept = new ArrayList<>();
        Hands hands = dealtExactly ? new Hands(draws.stream().filter(draw -> !draw.even()).toList()) : null;
        long heaviestOfLightest = Long.MAX_VALUE;
        for (Draw draw : draws) {
            Draw.Load load = draw.load();
            long surely = dealtExactly ? load.lightest() : load.heaviest() - load.range();
            if (surely < heaviestOfLightest && (!dealtExactly || draw.even() || hands.keep(draw))) {
                kept.add(draw);
                heaviestOfLightest = Math.min(heaviestOfLightest, load.heaviest());
            }
        }
        return List.copyOf(kept);
    }
}
