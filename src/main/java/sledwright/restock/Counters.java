package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * Counters that differ in what scarcity counts. Shadow prices with hindsight understate what a part is worth to whom knows nothing; how much,
 * simulation tells.
 */
final class Counters {

    private static final double[] WEIGHTS = {0, 0.5, 1, 1.5, 2, 3, 4, 8};
    /** Counters are compared on so many courses at most. */
    private static final int COMPARED_ON = 300;

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
        return Arrays.stream(WEIGHTS).mapToObj(weight -> at(Arrays.stream(rowPrices).map(price -> weight * price).toArray(), false)).toList();
    }

    /** A counter that serves each class as whichever of several does that earns the most with given purchases; one class after the other. */
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

    /** The counter that earns the most with given purchases; of equals the first. */
    Counter best(List<Counter> counters, int[] bought) {
        Counter best = null;
        double most = Double.NEGATIVE_INFINITY;
        for (Counter counter : counters) {
            double earned = Arrays.stream(counter.margins(program, bought, courses)).average().orElse(0);
            if (earned > most) {
                most = earned;
                best = counter;
            }
        }
        return best;
    }
}
