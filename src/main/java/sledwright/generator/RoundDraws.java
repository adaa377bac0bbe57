package sledwright.generator;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sledwright.metrics.CheapestDraw;

/**
 * The ways to share units of one kind among sources of unequal watts when they are dealt in rounds, heaviest first: for each number
 * of units those that no other matches in price and in the weight of the heaviest machine.
 *
 * <p>What comes after a source depends on the units taken so far alone, so of all ways to have taken so many only the worthwhile
 * ones are carried on.
 */
final class RoundDraws {

    private final List<KindDraws.Source> sources;
    private final int machines;
    private final Deadline deadline;

    /** @param sources the heaviest first */
    RoundDraws(List<KindDraws.Source> sources, int machines, Deadline deadline) {
        this.sources = sources;
        this.machines = machines;
        this.deadline = deadline;
    }

    /** Units of a source behind a way to have taken units of those before it; {@code weight} in microwatts of the heaviest machine. */
    private record Way(long price, long weight, int units, Way before) {
    }

    /** For 0, 1, 2 ... modules the ways to take their units, cheapest first, each as units by source. */
    List<List<int[]>> upTo(int mostModules, int unitsPerModule) {
        int mostUnits = mostModules * unitsPerModule;
        List<List<Way>> ways = List.of(List.of(new Way(0, 0, 0, null)));
        int everywhere = 0;
        for (int i = 0; i < sources.size(); i++) {
            boolean last = i == sources.size() - 1;
            int reached = Math.min(mostUnits, ways.size() - 1 + sources.get(i).most());
            List<List<Way>> longer = new ArrayList<>();
            for (int units = 0; units <= (last ? mostUnits : reached); units++) {
                longer.add(units > reached || last && units % unitsPerModule != 0 ? List.of() : longer(ways, units, sources.get(i), everywhere));
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

    /** The worthwhile ways to have so many units once a source has given some. */
    private List<Way> longer(List<List<Way>> ways, int units, KindDraws.Source source, int everywhere) {
        if (deadline.isOver()) {
            throw new OutOfTimeException();
        }
        List<Way> kept = new ArrayList<>(4);
        int everyMachine = source.everywhere() ? 1 : 0;
        int rounds = KindDraws.rounds(units - machines * (everywhere + everyMachine), machines);
        for (int before = Math.max(0, units - source.most()); before < ways.size() && before <= units; before++) {
            long price = source.prices()[units - before];
            if (price < CheapestDraw.IMPOSSIBLE && !ways.get(before).isEmpty()) {
                long weight = source.microwatts() * (rounds - KindDraws.rounds(before - machines * everywhere, machines) + everyMachine);
                for (Way way : ways.get(before)) {
                    keep(kept, way, way.price + price, way.weight + weight, units - before);
                }
            }
        }
        return kept;
    }

    private static void keep(List<Way> kept, Way before, long price, long weight, int units) {
        for (Way way : kept) {
            if (way.price <= price && way.weight <= weight) {
                return;
            }
        }
        kept.removeIf(way -> way.price >= price && way.weight >= weight);
        kept.add(new Way(price, weight, units, before));
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
