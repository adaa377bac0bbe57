package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/**
 * Counters that differ in what scarcity counts. Shadow prices with hindsight understate what a part is worth to whom knows nothing; how
 * much, simulation decides.
 */
final class Counters {

    private static final double[] WEIGHTS = {0, 0.5, 1, 1.5, 2, 3, 5};
    /** Counters are compared on at most this many courses. */
    private static final int COMPARED_ON = 300;
    private static final int GLANCED_AT = 60;
    private static final int MOST_PROMISING = 3;

    private final Program program;
    private final Shelves shelves;
    private final List<Course> courses;

    Counters(Program program, Shelves shelves, List<Course> courses) {
        this.program = program;
        this.shelves = shelves;
        this.courses = courses.subList(0, Math.min(courses.size(), COMPARED_ON));
    }

    /**
     * @param rowPrices what a unit of each row's limit counts
     * @param holdsBack whether an order is turned away whose parts count more than it earns
     */
    Counter at(double[] rowPrices, boolean holdsBack) {
        List<Map<String, Double>> scarcity = new ArrayList<>();
        for (int k = 0; k < program.classes().size(); k++) {
            scarcity.add(program.scarcity(k, rowPrices));
        }
        return new Counter(program, shelves, scarcity, holdsBack);
    }

    /** Shadow prices that count for less and for more. */
    List<Counter> around(double[] rowPrices) {
        return Arrays.stream(WEIGHTS).mapToObj(weight -> at(Arrays.stream(rowPrices).map(price -> weight * price).toArray(), false))
                .toList();
    }

    /**
     * A counter that serves each class as whichever of several does that earns the most with given purchases; one class after the other.
     */
    Counter mixed(Counter start, List<Counter> others, int[] bought) {
        Counter best = start;
        for (int k = 0; k < program.classes().size(); k++) {
            Counter usual = best;
            int of = k;
            List<Counter> mixed = new ArrayList<>(List.of(usual));
            others.forEach(other -> mixed.add(usual.with(of, other)));
            best = best(mixed, bought);
        }
        return best;
    }

    /**
     * The counter that earns the most with given purchases; of equals the first. Those that look best on a few courses are tried on more.
     */
    Counter best(List<Counter> counters, int[] bought) {
        List<Course> few = courses.subList(0, Math.min(courses.size(), GLANCED_AT));
        Map<Counter, Double> glanced = earned(counters, bought, few);
        List<Counter> promising = counters.stream().distinct()
                .sorted(Comparator.comparingDouble((Counter counter) -> -glanced.get(counter)))
                .limit(MOST_PROMISING).toList();
        Map<Counter, Double> earned = promising.size() > 1 ? earned(promising, bought, courses) : glanced;
        return promising.stream().reduce((one, other) -> earned.get(other) > earned.get(one) ? other : one).orElseThrow();
    }

    private Map<Counter, Double> earned(List<Counter> counters, int[] bought, List<Course> on) {
        Map<Counter, Double> earned = new IdentityHashMap<>();
        counters.forEach(counter -> earned.computeIfAbsent(counter,
                one -> Arrays.stream(one.margins(program, bought, on)).average().orElse(0)));
        return earned;
    }
}
