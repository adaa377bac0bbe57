package sledwright.generator.draw;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sledwright.generator.time.Deadline;
import sledwright.metrics.CheapestDraw;

/**
 * The ways to share units of one kind among sources of unequal watts when they are dealt in rounds, heaviest first: for each number
 * of units those that no other matches in price and in the weight of the heaviest machine.
 *
 * <p>What comes after a source depends on the units taken so far alone, so of all ways to have taken as many only the worthwhile
 * ones are carried on.
 *
 * @param sources the heaviest first
 */
record RoundDraws(List<KindDraws.Source> sources, int machines, boolean everyWeight, Deadline deadline) {

    /** Units of a source behind a way to have taken units of those before it; {@code weight} in microwatts of the heaviest machine. */
    private record Way(long price, long weight, int units, Way before) {
    }

    /**
     * Ways of equal weight, so that a loop over numbers of units compares their prices and nothing else.
     *
     * @param first  the least number of units of these ways
     * @param prices by number of units from there on; {@link CheapestDraw#IMPOSSIBLE} where there is none
     */
    private record Alike(long weight, int first, long[] prices) {

        static List<Alike> of(List<List<Way>> ways) {
            Map<Long, int[]> ranges = new TreeMap<>();
            for (int units = 0; units < ways.size(); units++) {
                for (Way way : ways.get(units)) {
                    ranges.computeIfAbsent(way.weight, weight -> new int[] {-1, 0});
                    int[] range = ranges.get(way.weight);
                    range[0] = range[0] < 0 ? units : range[0];
                    range[1] = units;
                }
            }
            Map<Long, Alike> alike = new LinkedHashMap<>();
            ranges.forEach((weight, range) -> {
                long[] prices = new long[range[1] - range[0] + 1];
                Arrays.fill(prices, CheapestDraw.IMPOSSIBLE);
                alike.put(weight, new Alike(weight, range[0], prices));
            });
            for (int units = 0; units < ways.size(); units++) {
                for (Way way : ways.get(units)) {
                    Alike same = alike.get(way.weight);
                    same.prices[units - same.first] = way.price;
                }
            }
            return List.copyOf(alike.values());
        }

        int last() {
            return first + prices.length - 1;
        }

        /** The least number of units from which a source takes these ways to a number of units most cheaply; -1 where it cannot. */
        int cheapest(int from, int to, int units, long[] sourcePrices) {
            int best = -1;
            long least = CheapestDraw.IMPOSSIBLE;
            int end = Math.min(to, last());
            for (int before = Math.max(from, first); before <= end; before++) {
                long price = prices[before - first] + sourcePrices[units - before];
                if (price < least) {
                    least = price;
                    best = before;
                }
            }
            return best;
        }
    }

    /** For 0, 1, 2 ... modules the ways to take their units, cheapest first, each as units by source. */
    List<List<int[]>> upTo(int mostModules, int unitsPerModule) {
        int mostUnits = mostModules * unitsPerModule;
        List<List<Way>> ways = List.of(List.of(new Way(0, 0, 0, null)));
        int everywhere = 0;
        for (int i = 0; i < sources.size(); i++) {
            boolean last = i == sources.size() - 1;
            int reached = Math.min(mostUnits, ways.size() - 1 + sources.get(i).most());
            List<Alike> alike = Alike.of(ways);
            List<List<Way>> longer = new ArrayList<>();
            for (int units = 0; units <= (last ? mostUnits : reached); units++) {
                longer.add(units > reached || last && units % unitsPerModule != 0 ? List.of()
                        : longer(ways, alike, units, sources.get(i), everywhere));
            }
            everywhere += sources.get(i).everywhere() ? 1 : 0;
            ways = longer;
        }
        List<List<int[]>> taken = new ArrayList<>();
        for (int units = 0; units <= mostUnits; units += unitsPerModule) {
            taken.add(ways.get(units).stream().sorted(Comparator.comparingLong(Way::price)).map(this::taken).toList());
        }
        return taken;
    }

    /** The worthwhile ways to have a given number of units once a source has given some; of equals the one in which it gives most. */
    private List<Way> longer(List<List<Way>> ways, List<Alike> alike, int units, KindDraws.Source source, int everywhere) {
        deadline.check();
        List<Way> kept = new ArrayList<>(4);
        int everyMachine = source.everywhere() ? 1 : 0;
        int rounds = KindDraws.rounds(units - machines * (everywhere + everyMachine), machines);
        int mostBefore = Math.min(units, ways.size() - 1);
        int to;
        // Numbers of units that begin equally many rounds weigh the same with the source, so of these the cheapest will do.
        for (int from = Math.max(machines * everywhere, units - source.most()); from <= mostBefore; from = to + 1) {
            int roundsBefore = KindDraws.rounds(from - machines * everywhere, machines);
            to = Math.min(mostBefore, machines * (everywhere + roundsBefore));
            long weight = source.microwatts() * (rounds - roundsBefore + everyMachine);
            for (Alike same : alike) {
                int before = same.cheapest(from, to, units, source.prices());
                if (before >= 0) {
                    long price = same.prices[before - same.first] + source.prices()[units - before];
                    keep(kept, price, same.weight + weight, units - before, ways.get(before), same.weight);
                }
            }
        }
        return kept;
    }

    private void keep(List<Way> kept, long price, long weight, int units, List<Way> before, long weightBefore) {
        for (Way way : kept) {
            if (way.price <= price && (everyWeight ? way.weight == weight : way.weight <= weight)) {
                return;
            }
        }
        kept.removeIf(way -> way.price >= price && (everyWeight ? way.weight == weight : way.weight >= weight));
        kept.add(new Way(price, weight, units, before.stream().filter(way -> way.weight == weightBefore).findFirst().orElseThrow()));
    }

    private int[] taken(Way last) {
        int[] taken = new int[sources.size()];
        Way way = last;
        for (int i = taken.length - 1; i >= 0; i--) {
            taken[i] = way.units;
            way = way.before;
        }
        return taken;
    }
}
