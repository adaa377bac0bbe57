package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import sledwright.domain.SupplyOffer;
import sledwright.generator.time.Deadline;

/**
 * Whole units from broken ones: least quantities and the budget are kept by every step, and each step must earn more when the orders
 * are served as they come, on the same courses.
 */
final class Rounding {

    /** Steps are judged on at most this many courses; the best plans again on all. */
    private static final int JUDGED_ON = 200;
    /** A step that does clearly worse on this many courses is not tried on the others. */
    private static final int GLANCED_AT = 40;

    private static final int NONE = -1;
    private static final int[] KITS = {1, 4};
    /** How many purchases are each tried as what is given up for a kit. */
    private static final int DONORS = 2;

    private final Program program;
    private final Counter counter;
    private final List<Choice> kits;
    private final OptionalLong budget;
    private final List<Course> courses;
    private final List<Course> few;
    private final Deadline deadline;
    private final Map<String, List<Integer>> offersOf = new HashMap<>();

    /** @param kits builds whose parts are bought or left together */
    Rounding(Program program, Counter counter, List<Choice> kits, OptionalLong budget, List<Course> courses, Deadline deadline) {
        this.program = program;
        this.counter = counter;
        this.kits = kits;
        this.budget = budget;
        this.courses = courses;
        this.deadline = deadline;
        few = courses.subList(0, Math.min(courses.size(), JUDGED_ON));
        for (int o = 0; o < program.purchases().size(); o++) {
            offersOf.computeIfAbsent(offer(o).sku(), sku -> new ArrayList<>()).add(o);
        }
        offersOf.values().forEach(offers -> offers.sort(Comparator.comparingLong(o -> offer(o).unitCost())));
    }

    private SupplyOffer offer(int o) {
        return program.purchases().get(o).offer();
    }

    private boolean isAllowed(int[] plan) {
        for (int o = 0; o < plan.length; o++) {
            if (plan[o] < 0 || plan[o] > offer(o).available() || plan[o] > 0 && plan[o] < offer(o).minQuantity()) {
                return false;
            }
        }
        return budget.isEmpty() || program.cost(plan) <= budget.getAsLong();
    }

    /**
     * A plan near some broken quantities.
     *
     * @param starts other plans to begin with, where they are allowed
     * @param passes how often every step is tried
     */
    int[] round(double[] broken, List<int[]> starts, int passes) {
        Set<List<Integer>> tried = new LinkedHashSet<>();
        List<int[]> plans = new ArrayList<>(starts);
        plans.add(whole(broken, 0.5));
        plans.add(whole(broken, 0.999));
        plans.add(whole(broken, 0.5, 10));
        plans.add(new int[broken.length]);
        int[] best = null;
        double value = Double.NEGATIVE_INFINITY;
        for (int[] plan : plans) {
            if (isAllowed(plan) && tried.add(Arrays.stream(plan).boxed().toList())) {
                double earned = counter.mean(plan, few);
                if (earned > value) {
                    value = earned;
                    best = plan;
                }
            }
        }
        // Few courses may have none of the orders that rarely come; all have.
        List<int[]> finals = new ArrayList<>(plans.stream().filter(this::isAllowed).toList());
        finals.add(improve(best, passes));
        return finals.stream().max(Comparator.comparingDouble(plan -> counter.mean(plan, courses))).orElseThrow();
    }

    /** Rounds up from a fraction on, then gives up some of everything until the budget holds. */
    int[] whole(double[] broken, double up) {
        return whole(broken, up, 2);
    }

    /** @param least what is wanted is bought although the least quantity is up to this many times more */
    private int[] whole(double[] broken, double up, int least) {
        int[] plan = new int[broken.length];
        for (int o = 0; o < plan.length; o++) {
            plan[o] = (int) Math.floor(broken[o] + 1 - up);
            if (plan[o] < offer(o).minQuantity()) {
                plan[o] = broken[o] * least >= offer(o).minQuantity() ? offer(o).minQuantity() : 0;
            }
            plan[o] = Math.min(plan[o], offer(o).available());
        }
        return withinBudget(plan, Set.of());
    }

    private int[] withinBudget(int[] plan, Set<Integer> kept) {
        return withinBudget(plan, kept, NONE);
    }

    /** Gives up units until the budget holds, of a donor first, then of all alike. */
    private int[] withinBudget(int[] plan, Set<Integer> kept, int donor) {
        int[] less = plan.clone();
        while (budget.isPresent() && donor != NONE && !kept.contains(donor) && less[donor] > 0 && program.cost(less) > budget.getAsLong()) {
            less[donor] = less[donor] - 1 < offer(donor).minQuantity() ? 0 : less[donor] - 1;
        }
        while (budget.isPresent() && program.cost(less) > budget.getAsLong()) {
            int dearest = -1;
            for (int o = 0; o < less.length; o++) {
                if (less[o] > 0 && !kept.contains(o) && (dearest < 0 || share(less, plan, o) > share(less, plan, dearest))) {
                    dearest = o;
                }
            }
            if (dearest < 0) {
                return less;
            }
            less[dearest] = less[dearest] - 1 < offer(dearest).minQuantity() ? 0 : less[dearest] - 1;
        }
        return less;
    }

    /** All purchases shrink alike. */
    private static double share(int[] less, int[] plan, int o) {
        return (double) less[o] / plan[o];
    }

    private int[] improve(int[] start, int passes) {
        int[] best = start;
        double[] earned = counter.margins(start, few);
        for (int pass = 0; pass < passes; pass++) {
            double before = Counter.mean(earned);
            for (UnaryOperator<int[]> step : steps()) {
                for (int[] next = step.apply(best); next != null && !deadline.isOver(); next = step.apply(best)) {
                    double[] other = isAllowed(next) && !Arrays.equals(next, best)
                            ? counter.ifBetter(next, few, GLANCED_AT, earned, few.size(), course -> true) : null;
                    if (other == null || Counter.mean(other) <= Counter.mean(earned) + 1e-6 * Math.abs(Counter.mean(earned))) {
                        break;
                    }
                    best = next;
                    earned = other;
                }
            }
            if (Counter.mean(earned) <= before + 1e-4 * Math.abs(before)) {
                break;
            }
        }
        return best;
    }

    /** What makes another plan of one; null where it cannot be taken. */
    private List<UnaryOperator<int[]>> steps() {
        List<UnaryOperator<int[]>> steps = new ArrayList<>();
        for (Map<String, Integer> kit : bought()) {
            for (int count : KITS) {
                steps.add(plan -> withKit(plan, kit, count, NONE));
                for (int rank = 0; rank < DONORS && budget.isPresent(); rank++) {
                    int of = rank;
                    steps.add(plan -> program.cost(plan) * 10 < budget.getAsLong() * 9 ? null
                            : withKit(plan, kit, count, dearest(plan, of)));
                }
            }
            steps.add(plan -> withoutKit(plan, kit));
        }
        for (int o = 0; o < program.purchases().size(); o++) {
            int at = o;
            steps.add(plan -> moved(plan, at, -Math.max(1, plan[at] / 4)));
            steps.add(plan -> moved(plan, at, -1));
            steps.add(plan -> moved(plan, at, 1));
        }
        return steps;
    }

    /** What has to be bought for each kit; kits that differ elsewhere alone count once. */
    private Set<Map<String, Integer>> bought() {
        Set<Map<String, Integer>> bought = new LinkedHashSet<>();
        for (Choice kit : kits) {
            Map<String, Integer> parts = new TreeMap<>(kit.needed());
            parts.keySet().retainAll(offersOf.keySet());
            if (!parts.isEmpty()) {
                bought.add(parts);
            }
        }
        return bought;
    }

    private int[] moved(int[] plan, int o, int by) {
        int[] next = plan.clone();
        next[o] = raised(o, plan[o], by);
        return next[o] == plan[o] ? null : withinBudget(next, Set.of(o));
    }

    /** A number of units more or fewer, as near as the offer allows. */
    private int raised(int o, int units, int by) {
        int next = Math.min(units + by, offer(o).available());
        if (next >= offer(o).minQuantity()) {
            return next;
        }
        return by > 0 ? offer(o).minQuantity() : 0;
    }

    private int[] withKit(int[] plan, Map<String, Integer> needed, int count, int donor) {
        int[] next = plan.clone();
        Set<Integer> kept = new LinkedHashSet<>();
        for (Map.Entry<String, Integer> part : needed.entrySet()) {
            int missing = part.getValue() * count;
            for (int o : offersOf.getOrDefault(part.getKey(), List.of())) {
                int more = Math.min(missing, offer(o).available() - next[o]);
                if (more > 0) {
                    next[o] = raised(o, next[o], more);
                    kept.add(o);
                    missing -= more;
                }
            }
        }
        return kept.isEmpty() ? null : withinBudget(next, kept, donor);
    }

    /** The purchase that is so manieth in what it costs altogether. */
    private int dearest(int[] plan, int rank) {
        return IntStream.range(0, plan.length).filter(o -> plan[o] > 0).boxed()
                .sorted(Comparator.comparingLong(o -> -offer(o).unitCost() * plan[o])).skip(rank).findFirst().orElse(NONE);
    }

    private int[] withoutKit(int[] plan, Map<String, Integer> needed) {
        int[] next = plan.clone();
        boolean changed = false;
        for (Map.Entry<String, Integer> part : needed.entrySet()) {
            int surplus = part.getValue();
            List<Integer> offers = offersOf.getOrDefault(part.getKey(), List.of());
            for (int i = offers.size() - 1; i >= 0 && surplus > 0; i--) {
                int fewer = Math.min(surplus, next[offers.get(i)]);
                if (fewer > 0) {
                    next[offers.get(i)] = raised(offers.get(i), next[offers.get(i)], -fewer);
                    surplus -= fewer;
                    changed = true;
                }
            }
        }
        return changed ? next : null;
    }
}
