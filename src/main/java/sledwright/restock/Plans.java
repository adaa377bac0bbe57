package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.function.Consumer;
import sledwright.generator.time.Deadline;

/**
 * Plans for several budgets, each with the counter that suits it. One of a smaller budget is allowed in a larger, so more money never earns
 * less on the same courses.
 */
final class Plans {

    /** How often every step is tried: for the whole budget, and for the others. */
    private static final int PASSES = 2;
    private static final int PASSES_OF_OTHERS = 1;
    /** Shares of the budget at which the curve is looked at, beside the whole. */
    private static final double[] LESS = {0, 0.25, 0.5};
    private static final double MORE = 2;
    private static final double ROUGH = 0.01;
    private static final int MOST_ROUNDS = 15;
    /** How many builds of each class are bought together or left. */
    private static final int KITS_OF_A_CLASS = 8;
    /** A share of what is earned that is no difference. */
    private static final double EQUAL = 1e-9;

    /**
     * Whole purchases and how orders are served from them.
     *
     * @param budget what might be spent, minor units
     * @param earns  mean over the courses that plans are made on
     */
    record Stocked(long budget, int[] bought, Counter counter, double earns) {

        Stocked within(long other) {
            return new Stocked(other, bought, counter, earns);
        }
    }

    /** Stands for a budget of any amount. */
    private static final long ANY = Long.MAX_VALUE;

    private final Program program;
    private final Hindsight hindsight;
    private final HindsightRelaxation relaxation;
    private final HindsightRelaxation.Answer relaxed;
    private final Counters counters;
    private final List<Course> courses;
    private final Deadline deadline;
    private final List<Counter> known = new ArrayList<>();
    private final TreeMap<Long, Stocked> found = new TreeMap<>();
    private Stocked nothing;

    /** @param whole what bounds the whole budget */
    Plans(Relaxed whole, Counters counters, List<Course> courses, Deadline deadline) {
        program = whole.program();
        hindsight = whole.hindsight();
        relaxation = whole.relaxation();
        relaxed = whole.answer();
        this.counters = counters;
        this.courses = courses;
        this.deadline = deadline;
    }

    /**
     * Finds the plans.
     *
     * @param told receives each
     * @return the plan for the whole budget
     */
    Stocked find(OptionalLong budget, Consumer<Stocked> told) {
        long whole = budget.orElse(cost(near(budget)));
        TreeMap<Long, HindsightRelaxation.Answer> answers = new TreeMap<>();
        for (double share : LESS) {
            answers.computeIfAbsent(Math.round(share * whole), this::relaxed);
        }
        if (budget.isPresent()) {
            answers.computeIfAbsent(Math.round(MORE * whole), this::relaxed);
        }
        answers.put(budget.orElse(ANY), relaxed);
        answers.values().forEach(answer -> known.addAll(counters.around(answer.prices())));
        nothing = stocked(0, new int[program.purchases().size()], known);
        answers.forEach((some, answer) -> {
            // Late, what is needed is found and no more.
            if (!deadline.isOver() || some == 0 || answer == relaxed) {
                Stocked stocked = at(some == ANY ? OptionalLong.empty() : OptionalLong.of(some), answer);
                found.put(some, stocked);
                told.accept(stocked);
            }
        });
        Stocked again = stocked(0, nothing.bought(), known);
        if (again.earns() > nothing.earns()) {
            nothing = again;
        }
        found.replaceAll((some, stocked) -> best(List.of(stocked, nothing.within(stocked.budget()))));
        return found.get(budget.orElse(ANY));
    }

    private HindsightRelaxation.Answer relaxed(long budget) {
        return relaxation.solve(OptionalLong.of(budget), relaxed.bought(), ROUGH, MOST_ROUNDS, line -> { });
    }

    /** Nothing bought, at the counter that suits that best, whatever the budget that led to it. */
    Stocked nothing() {
        return nothing;
    }

    /** By budget, ascending. */
    List<Stocked> all() {
        return List.copyOf(found.values());
    }

    /** Whole quantities near those of the relaxation. */
    int[] near(OptionalLong budget) {
        return rounding(counters.at(relaxed.prices(), false), budget).whole(relaxed.bought(), 0.5);
    }

    long cost(int[] bought) {
        return program.cost(bought);
    }

    /** @param budget empty: any amount */
    private Stocked at(OptionalLong budget, HindsightRelaxation.Answer answer) {
        List<Stocked> allowed = new ArrayList<>(found.values());
        allowed.add(nothing);
        if (program.purchases().stream().anyMatch(one -> budget.isEmpty() || one.offer().unitCost() <= budget.getAsLong())) {
            int[] first = rounding(counters.at(answer.prices(), false), budget).whole(answer.bought(), 0.5);
            Counter counter = counters.best(known, first);
            int[] bought = rounding(counter, budget).round(answer.bought(), found.values().stream().map(Stocked::bought).toList(),
                    answer == relaxed ? PASSES : PASSES_OF_OTHERS);
            Stocked suited = stocked(0, bought, List.of(counter));
            if (suited.counter() != counter) {
                bought = rounding(suited.counter(), budget).round(answer.bought(), List.of(bought), 1);
            }
            int[] needed = suited.counter().withoutIdle(program, bought, courses);
            allowed.add(new Stocked(0, needed, suited.counter(), mean(suited.counter(), needed)));
        }
        Stocked best = best(allowed);
        return best.within(budget.orElse(cost(best.bought())));
    }

    /** Purchases at the best counter of some, of all that are known and of those that are made for them. */
    private Stocked stocked(long budget, int[] bought, List<Counter> some) {
        List<Counter> more = new ArrayList<>(some);
        more.addAll(known);
        List<Counter> own = counters.around(pricesAt(bought));
        more.addAll(own);
        Counter better = counters.mixed(counters.best(more, bought), own, bought);
        known.add(better);
        return new Stocked(budget, bought, better, mean(better, bought));
    }

    /** The plan that earns the most; of plans that earn as much the cheapest, then the one of fewest units. */
    Stocked best(List<Stocked> plans) {
        double most = plans.stream().mapToDouble(Stocked::earns).max().orElseThrow();
        return plans.stream().filter(plan -> plan.earns() >= most - EQUAL * Math.max(1, Math.abs(most)))
                .min(Comparator.comparingLong((Stocked plan) -> cost(plan.bought()))
                        .thenComparingInt(plan -> Arrays.stream(plan.bought()).sum())).orElseThrow();
    }

    /** What purchases earn where orders are served as they come, at the counter that suits them. */
    double atItsCounter(int[] bought) {
        return mean(counters.best(known, bought), bought);
    }

    private double mean(Counter counter, int[] bought) {
        return Arrays.stream(counter.margins(program, bought, courses)).average().orElse(0);
    }

    /** What a unit of each row's limit is worth beside some purchases, with hindsight. */
    double[] pricesAt(int[] bought) {
        return hindsight.meanPrices(hindsight.best(program.limits(Arrays.stream(bought).asDoubleStream().toArray())));
    }

    private Rounding rounding(Counter counter, OptionalLong budget) {
        List<Choice> kits = new ArrayList<>();
        for (int k = 0; k < program.classes().size(); k++) {
            kits.addAll(counter.foremost(k, KITS_OF_A_CLASS));
        }
        return new Rounding(program, counter, kits, budget, courses, deadline);
    }
}
