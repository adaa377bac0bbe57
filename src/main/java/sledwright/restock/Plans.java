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
    /** So many builds of each class are bought together or left. */
    private static final int KITS_OF_A_CLASS = 8;

    /**
     * Whole purchases and how orders are served from them.
     *
     * @param budget what might be spent, minor units
     * @param earns  mean over the courses that plans are made on
     */
    record Stocked(long budget, int[] bought, Counter counter, double earns) {
    }

    private final Program program;
    private final Hindsight hindsight;
    private final HindsightRelaxation relaxation;
    private final HindsightRelaxation.Answer relaxed;
    private final Counters counters;
    private final List<Course> courses;
    private final Deadline deadline;
    private final List<Counter> known = new ArrayList<>();
    private final TreeMap<Long, Stocked> found = new TreeMap<>();

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
     * @param told hears of each
     * @return the plan for the whole budget
     */
    Stocked find(OptionalLong budget, Consumer<Stocked> told) {
        long whole = budget.orElse(cost(near(budget)));
        TreeMap<Long, HindsightRelaxation.Answer> answers = new TreeMap<>();
        for (double share : LESS) {
            long less = Math.round(share * whole);
            answers.computeIfAbsent(less, some -> relaxation.solve(OptionalLong.of(some), relaxed.bought(), ROUGH, MOST_ROUNDS,
                    line -> { }));
        }
        answers.put(whole, relaxed);
        if (budget.isPresent()) {
            answers.computeIfAbsent(Math.round(MORE * whole),
                    some -> relaxation.solve(OptionalLong.of(some), relaxed.bought(), ROUGH, MOST_ROUNDS, line -> { }));
        }
        answers.values().forEach(answer -> known.addAll(counters.around(answer.prices())));
        answers.forEach((some, answer) -> {
            // Late, what is needed is found and no more.
            if (!deadline.isOver() || some == 0 || some == whole) {
                Stocked stocked = at(some, budget.isEmpty() && some == whole ? OptionalLong.empty() : OptionalLong.of(some), answer);
                found.put(some, stocked);
                told.accept(stocked);
            }
        });
        return found.get(whole);
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

    private Stocked at(long label, OptionalLong budget, HindsightRelaxation.Answer answer) {
        int[] first = rounding(counters.at(answer.prices(), false), budget).whole(answer.bought(), 0.5);
        Counter counter = counters.best(known, first);
        int[] bought = new int[first.length];
        if (label > 0) {
            bought = rounding(counter, budget).round(answer.bought(), found.values().stream().map(Stocked::bought).toList(),
                    answer == relaxed ? PASSES : PASSES_OF_OTHERS);
        }
        List<Counter> more = new ArrayList<>(List.of(counter));
        more.addAll(known);
        List<Counter> own = counters.around(pricesAt(bought));
        more.addAll(own);
        Counter better = counters.mixed(counters.best(more, bought), own, bought);
        if (better != counter && label > 0) {
            bought = rounding(better, budget).round(answer.bought(), List.of(bought), 1);
        }
        known.add(better);
        List<Stocked> allowed = new ArrayList<>(List.of(new Stocked(label, bought, better, mean(better, bought))));
        found.values().forEach(less -> allowed.add(new Stocked(label, less.bought(), less.counter(), less.earns())));
        return allowed.stream().max(Comparator.comparingDouble(Stocked::earns)).orElseThrow();
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
