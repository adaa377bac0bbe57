package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import sledwright.restock.Plans.Stocked;

/**
 * Chooses among plans that searches ended at, on courses that none of them has seen, so that no plan is taken for the luck that it was made
 * with.
 */
record FinalChoice(Program program, List<Course> courses) {

    /** A share of what is earned that is no difference. */
    private static final double EQUAL = 1e-9;

    /**
     * What was chosen.
     *
     * @param earns  mean over the courses of the choice
     * @param rivals what the searches ended at by themselves for this budget
     */
    record Chosen(Stocked stocked, double earns, List<Stocked> rivals) {

        /** How far apart the rivals are on some courses: the deviation of what each earns there. */
        double scatter(List<Course> courses) {
            double[] means = rivals.stream().mapToDouble(rival -> rival.mean(courses)).toArray();
            double mean = Counter.mean(means);
            double squares = Arrays.stream(means).map(earned -> (earned - mean) * (earned - mean)).sum();
            return Math.sqrt(squares / Math.max(1, means.length - 1));
        }
    }

    /**
     * The plan that earns the most; of plans that earn as much the cheapest, then the one of fewest units.
     *
     * @param plans  to choose from
     * @param rivals what the searches ended at by themselves; any of them may be chosen, too
     * @param others that are allowed, too
     */
    Chosen of(List<Stocked> plans, List<Stocked> rivals, List<Chosen> others) {
        List<Chosen> allowed = new ArrayList<>(others);
        Stream.concat(plans.stream(), rivals.stream()).forEach(rival -> allowed.add(new Chosen(rival, rival.mean(courses), rivals)));
        double most = allowed.stream().mapToDouble(Chosen::earns).max().orElseThrow();
        Chosen best = allowed.stream().filter(one -> one.earns() >= most - EQUAL * Math.max(1, Math.abs(most)))
                .min(Comparator.comparingLong((Chosen one) -> program.cost(one.stocked().bought()))
                        .thenComparingInt(one -> Arrays.stream(one.stocked().bought()).sum())).orElseThrow();
        return new Chosen(best.stocked(), best.earns(), rivals.isEmpty() ? best.rivals() : rivals);
    }
}
