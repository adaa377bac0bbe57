package sledwright.planner.order.relax;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import sledwright.planner.order.market.Draws;

/**
 * What the machines of a line take at least when a given number of them have each of a few traits; one machine may have several.
 *
 * @param must how many machines have each trait, at least
 */
record Shares(int machines, int[] must) {

    /** How many traits are looked at together; every set of them is a question to the search. */
    private static final int MOST_TRAITS = 3;

    /** Traits of lines with more machines are looked at one by one. */
    private static final int MOST_MACHINES = 12;

    /** The traits that are looked at together; each group alone says what a line takes at least. */
    static List<List<Trait>> groups(List<Trait> traits, int machines) {
        int size = machines > MOST_MACHINES ? 1 : MOST_TRAITS;
        List<List<Trait>> groups = new ArrayList<>();
        // Those settled last distinguish most, and are distinguished by those before.
        for (int to = traits.size(); to > 0; to -= size) {
            groups.add(traits.subList(Math.max(0, to - size), to));
        }
        return groups;
    }

    /**
     * The least that all machines take; {@link ColumnGeneration#NEVER} where there are no such machines.
     *
     * @param bySet for each set of traits, as bits, what a machine with all of these takes
     */
    long least(long[] bySet) {
        if (must.length == 1) {
            return bySet[1] >= Draws.IMPOSSIBLE ? ColumnGeneration.NEVER : must[0] * bySet[1] + (machines - must[0]) * bySet[0];
        }
        int states = Arrays.stream(must).map(some -> some + 1).reduce(1, (one, other) -> one * other);
        long[] least = new long[states];
        Arrays.fill(least, ColumnGeneration.NEVER);
        least[0] = 0;
        for (int machine = 0; machine < machines; machine++) {
            long[] next = new long[states];
            Arrays.fill(next, ColumnGeneration.NEVER);
            for (int state = 0; state < states; state++) {
                for (int set = 0; set < bySet.length && least[state] < ColumnGeneration.NEVER; set++) {
                    if (bySet[set] < Draws.IMPOSSIBLE) {
                        int then = with(state, set);
                        next[then] = Math.min(next[then], least[state] + bySet[set]);
                    }
                }
            }
            least = next;
        }
        return least[states - 1];
    }

    /** How many machines have each trait, as one number, once another machine has a set of them; more than must be are not counted. */
    private int with(int state, int set) {
        int then = 0;
        int place = 1;
        int rest = state;
        for (int trait = 0; trait < must.length; trait++) {
            int have = rest % (must[trait] + 1);
            rest /= must[trait] + 1;
            then += place * Math.min(must[trait], have + (set >> trait & 1));
            place *= must[trait] + 1;
        }
        return then;
    }
}
