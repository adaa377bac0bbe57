package sledwright.planner.order.relax;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.OfferedLot;

/** Finds rounding cuts that a mix violates. */
final class StockCuts {

    private static final double WHOLE = 1e-6;

    /** Of a block that a mix takes too much, less is not worth a row. */
    private static final double LEAST = 0.02;

    /** Cuts that are added at a time. */
    private static final int MOST = 12;

    /** Of so many pools every set is looked at, of more each and all of them. */
    private static final int MOST_POOLS = 4;

    private final Market market;
    private final Restrictions settled;
    private final RestrictedMaster.Mix mix;
    /** By set of pools the lines whose machines are counted. */
    private final Map<Set<Integer>, Set<Integer>> lines = new LinkedHashMap<>();

    StockCuts(Market market, Restrictions settled, RestrictedMaster.Mix mix) {
        this.market = market;
        this.settled = settled;
        this.mix = mix;
        int pools = market.pools().size();
        Stream<Set<Integer>> sets = pools <= MOST_POOLS ? IntStream.range(1, 1 << pools).mapToObj(set -> set(pools, set))
                : IntStream.rangeClosed(0, pools).mapToObj(pool -> pool < pools ? Set.of(pool) : set(pools, -1));
        sets.forEach(set -> lines.put(set, oneByOne(set)));
    }

    /** Machines that come together take a part in too many numbers of units for a search to price each of them. */
    private Set<Integer> oneByOne(Set<Integer> pools) {
        return IntStream.range(0, market.lines().size())
                .filter(line -> !market.line(line).isTogether() && pools.contains(market.poolOf(line))).boxed().collect(Collectors.toSet());
    }

    private static Set<Integer> set(int pools, int bits) {
        Set<Integer> set = new HashSet<>();
        IntStream.range(0, pools).filter(pool -> (bits >> pool & 1) == 1).forEach(set::add);
        return set;
    }

    private record Found(StockCut cut, double violation) {
    }

    /** Those that are violated most, of each part at most one. */
    List<StockCut> violated() {
        Set<Integer> parts = new TreeSet<>();
        mix.columns().keySet().forEach(column -> IntStream.of(column.parts()).filter(part -> !market.isOfEnclosures(part))
                .forEach(parts::add));
        List<Found> found = new ArrayList<>();
        for (int part : parts) {
            Found most = null;
            for (Map.Entry<Set<Integer>, Set<Integer>> set : lines.entrySet()) {
                Found some = violated(part, set.getKey(), set.getValue());
                most = some != null && (most == null || some.violation > most.violation) ? some : most;
            }
            if (most != null) {
                found.add(most);
            }
        }
        return found.stream().sorted(Comparator.comparingDouble(Found::violation).reversed()).limit(MOST).map(Found::cut).toList();
    }

    private Found violated(int part, Set<Integer> pools, Set<Integer> lines) {
        Map<Integer, Double> taken = new TreeMap<>();
        for (Map.Entry<Column, Double> used : mix.columns().entrySet()) {
            int units = used.getKey().unitsOf(part);
            if (units > 0 && lines.contains(used.getKey().line())) {
                taken.merge(units, used.getValue(), Double::sum);
            }
        }
        if (taken.values().stream().allMatch(times -> Math.abs(times - Math.rint(times)) < WHOLE)) {
            return null;
        }
        List<OfferedLot> lots = market.sources(part).stream()
                .filter(lot -> !settled.isClosed(lot) && pools.stream().anyMatch(pool -> lot.pools()[pool])).toList();
        List<OfferedLot> notAll = lots.stream().filter(lot -> drawn(lot) < settled.of(lot).most() - WHOLE).toList();
        List<OfferedLot> unused = lots.stream().filter(lot -> drawn(lot) < WHOLE && settled.of(lot).most() > 0).toList();
        Found most = null;
        for (List<OfferedLot> beyond : notAll.equals(unused) ? List.of(notAll) : List.of(notAll, unused)) {
            long stock = lots.stream().filter(lot -> !beyond.contains(lot)).mapToLong(lot -> settled.of(lot).most()).sum();
            double drawn = beyond.stream().mapToDouble(this::drawn).sum();
            for (int block : taken.keySet()) {
                if (block > 1 && stock < Integer.MAX_VALUE && stock % block > 0) {
                    StockCut cut = new StockCut(part, lines, (int) stock, beyond, block);
                    double counted = taken.entrySet().stream().mapToDouble(some -> some.getValue() * cut.of(some.getKey())).sum();
                    double violation = cut.blocks(counted - cut.most() - drawn);
                    if (violation > LEAST && (most == null || violation > most.violation)) {
                        most = new Found(cut, violation);
                    }
                }
            }
        }
        return most;
    }

    private double drawn(OfferedLot lot) {
        return mix.drawn().getOrDefault(lot, 0.0);
    }
}
