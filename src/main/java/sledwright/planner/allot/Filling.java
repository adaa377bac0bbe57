package sledwright.planner.allot;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sledwright.domain.Pick;
import sledwright.rules.Housing;
import sledwright.rules.Machine;
import sledwright.rules.Order;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;

/** A way to keep a promise: its machines, and the units that they take from each lot. */
public final class Filling {

    /** The promise is not kept. */
    static final Filling NONE = new Filling(Optional.empty(), new TreeMap<>(), 0);

    record Take(LotName lot, int units) {
    }

    private final Optional<Order> order;
    private final SortedMap<LotName, Integer> units;
    private final List<Take> takes;
    private final long cost;
    private List<Violation> broken;

    private Filling(Optional<Order> order, SortedMap<LotName, Integer> units, long cost) {
        this.order = order;
        this.units = units;
        this.cost = cost;
        takes = units.entrySet().stream().map(lot -> new Take(lot.getKey(), lot.getValue())).toList();
    }

    /** Machines that were found, drawn as the order has it. */
    static Filling of(Order order) {
        return new Filling(Optional.of(order), units(order.picks()), order.price().total());
    }

    /** Units of machines that have been picked already. */
    static Filling picked(Map<LotName, Integer> units) {
        return new Filling(Optional.empty(), new TreeMap<>(units), 0);
    }

    /** The customer's own parts are nobody else's to promise. */
    private static SortedMap<LotName, Integer> units(List<Pick> picks) {
        return picks.stream().filter(pick -> !pick.lot().onHand())
                .collect(Collectors.toMap(pick -> LotName.of(pick.lot()), Pick::quantity, Integer::sum, TreeMap::new));
    }

    /** The machines with their picks; empty where there are none, or nobody may change them. */
    public Optional<Order> order() {
        return order;
    }

    public SortedMap<LotName, Integer> units() {
        return new TreeMap<>(units);
    }

    List<Take> takes() {
        return takes;
    }

    /** What the machines cost at today's prices, minor units. */
    public long cost() {
        return cost;
    }

    /** Whether the machines hold a part that the customer was not told of, or more of one. */
    boolean changes(Promise promise) {
        return Promise.byPart(units).entrySet().stream()
                .anyMatch(part -> part.getValue() > promise.parts().getOrDefault(part.getKey(), 0));
    }

    /** Units from lots of which the promise does not keep them yet. */
    int moved(Promise promise) {
        return units.entrySet().stream().mapToInt(lot -> Math.max(0, lot.getValue() - promise.kept().getOrDefault(lot.getKey(), 0))).sum();
    }

    /** Every breach of a rule by the machines themselves; what several take together is judged over all. */
    synchronized List<Violation> broken() {
        if (broken == null) {
            broken = order.map(Filling::judged).orElse(List.of());
        }
        return broken;
    }

    private static List<Violation> judged(Order order) {
        List<Violation> all = new ArrayList<>();
        order.kinds().forEach(build ->
                all.addAll(Rulebook.judge(Machine.of(build, order.request(), order.catalog().throughputFactors()))));
        for (Housing housing : order.housings()) {
            all.addAll(Rulebook.judge(housing));
        }
        all.addAll(Rulebook.judge(order));
        return List.copyOf(all);
    }

    /** Of two of one promise the same machines from the same lots are the same. */
    boolean isLike(Filling other) {
        return units.equals(other.units) && order.isPresent() == other.order.isPresent();
    }
}
