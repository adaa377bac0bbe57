package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import sledwright.generator.time.Deadline;
import sledwright.restock.FinalChoice.Chosen;

/**
 * Plans for several budgets, each with the counter that suits it. One of a smaller budget is allowed in a larger, so more money never earns
 * less on the same courses.
 */
final class Plans {

    /** How often every step is tried: for the whole budget, and for the others. */
    private static final int PASSES = 2;
    private static final int PASSES_OF_OTHERS = 1;
    /** How often counter and quantities are suited to each other. */
    private static final int TURNS = 2;
    private static final int PASSES_OF_NOTHING = 3;
    /** This many counters are improved before the best of them is taken; and while counter and quantities are suited to each other. */
    private static final int STARTS = 3;
    private static final int STARTS_OF_TURN = 2;
    /** Shares of the budget at which the curve is looked at, beside the whole. */
    private static final double[] LESS = {0, 0.25, 0.5};
    private static final double MORE = 2;
    private static final double ROUGH = 0.01;
    private static final int MOST_ROUNDS = 15;
    /** How many builds of each class are bought together or left. */
    private static final int KITS_OF_A_CLASS = 8;

    /** Whole purchases and how orders are served from them. */
    record Stocked(int[] bought, Counter counter) {

        /** What courses earn on average. */
        double mean(List<Course> courses) {
            return counter.mean(bought, courses);
        }
    }

    /** Stands for a budget of any amount. */
    private static final long ANY = Long.MAX_VALUE;

    private final Program program;
    private final Hindsight hindsight;
    private final HindsightRelaxation relaxation;
    private final HindsightRelaxation.Answer unspent;
    private final Counters counters;
    private final List<Course> courses;
    private final Deadline deadline;
    /** What orders are offered by counters that suit something. */
    private final List<Counter> known = new ArrayList<>();
    private final FinalChoice choice;
    private final TreeMap<Long, Chosen> found = new TreeMap<>();
    private final Chosen nothing;

    /**
     * Begins with nothing bought, at the counter that suits that best: whatever the budget of the request, it is the same.
     *
     * @param further courses on which is chosen among what the searches end at
     */
    Plans(Relaxed relaxed, Racks racks, List<Course> courses, List<Course> further, Deadline deadline) {
        program = relaxed.program();
        hindsight = relaxed.hindsight();
        relaxation = relaxed.relaxation();
        counters = new Counters(racks, courses);
        choice = new FinalChoice(program, further);
        this.courses = courses;
        this.deadline = deadline;
        unspent = relaxation.solve(OptionalLong.of(0), relaxed.start(), ROUGH, MOST_ROUNDS, line -> { });
        HindsightRelaxation.Answer all = relaxation.solve(OptionalLong.empty(), relaxed.start(), ROUGH, MOST_ROUNDS, line -> { });
        int[] none = new int[program.purchases().size()];
        known.addAll(counters.around(unspent.prices()));
        known.addAll(counters.around(all.prices()));
        suited(new Rounding(program, known.get(0), List.of(), OptionalLong.empty(), courses, deadline).whole(all.bought(), 0.5), 1, 1);
        nothing = chosen(suited(none, STARTS, PASSES_OF_NOTHING), none, List.of());
    }

    /** Nothing bought, at the counter that suits that best. */
    Chosen nothing() {
        return nothing;
    }

    /**
     * Finds the plans.
     *
     * @param relaxed for the whole budget
     * @param told    receives the budget and the cost of each
     * @return the plan for the whole budget
     */
    Chosen find(OptionalLong budget, HindsightRelaxation.Answer relaxed, BiConsumer<OptionalLong, Long> told) {
        long whole = budget.orElse(cost(near(relaxed, budget)));
        TreeMap<Long, HindsightRelaxation.Answer> answers = new TreeMap<>();
        answers.put(0L, unspent);
        for (double share : LESS) {
            answers.computeIfAbsent(Math.round(share * whole), some -> relaxed(some, relaxed));
        }
        if (budget.isPresent()) {
            answers.computeIfAbsent(Math.round(MORE * whole), some -> relaxed(some, relaxed));
        }
        answers.put(budget.orElse(ANY), relaxed);
        answers.forEach((some, answer) -> {
            // Late, what is needed is found and no more.
            if (!deadline.isOver() || some == 0 || answer == relaxed) {
                OptionalLong within = some == ANY ? OptionalLong.empty() : OptionalLong.of(some);
                List<Chosen> smaller = new ArrayList<>(found.values());
                smaller.add(nothing);
                found.put(some, at(within, answer, answer == relaxed, smaller));
                told.accept(within, cost(found.get(some).stocked().bought()));
            }
        });
        return found.get(budget.orElse(ANY));
    }

    private HindsightRelaxation.Answer relaxed(long budget, HindsightRelaxation.Answer whole) {
        return relaxation.solve(OptionalLong.of(budget), whole.bought(), ROUGH, MOST_ROUNDS, line -> { });
    }

    /** By budget, ascending; what is for any amount has the cost of its own. */
    Map<Long, Chosen> all() {
        Map<Long, Chosen> all = new TreeMap<>();
        found.forEach((some, chosen) -> all.put(some == ANY ? cost(chosen.stocked().bought()) : some, chosen));
        return all;
    }

    /** Whole quantities near those of a relaxation. */
    int[] near(HindsightRelaxation.Answer relaxed, OptionalLong budget) {
        return rounding(nothing.stocked().counter(), budget).whole(relaxed.bought(), 0.5);
    }

    long cost(int[] bought) {
        return program.cost(bought);
    }

    /**
     * What searches for a budget end at.
     *
     * @param budget empty: any amount
     */
    private Chosen at(OptionalLong budget, HindsightRelaxation.Answer answer, boolean whole, List<Chosen> smaller) {
        if (program.purchases().stream().noneMatch(one -> budget.isEmpty() || one.offer().unitCost() <= budget.getAsLong())) {
            return choice.of(List.of(), List.of(), smaller);
        }
        int[] bought = near(answer, budget);
        known.addAll(counters.around(pricesAt(bought)));
        for (int turn = 0; turn < (whole ? TURNS : 1); turn++) {
            Counter counter = suited(bought, whole ? STARTS_OF_TURN : 1, 1).best().get(0);
            List<int[]> starts = new ArrayList<>(found.values().stream().map(less -> less.stocked().bought()).toList());
            starts.add(bought);
            bought = rounding(counter, budget).round(answer.bought(), starts, whole ? PASSES : PASSES_OF_OTHERS);
        }
        return chosen(suited(bought, whole ? STARTS : 1, whole ? PASSES_OF_NOTHING : 1), bought, smaller);
    }

    private Chosen chosen(Counters.Suited suited, int[] bought, List<Chosen> smaller) {
        return choice.of(stocked(suited.best(), bought), stocked(suited.ends(), bought), smaller);
    }

    private List<Stocked> stocked(List<Counter> some, int[] bought) {
        return some.stream().map(counter -> new Stocked(counter.withoutIdle(bought, courses), counter)).toList();
    }

    /** The counters that some which are known are improved to, so that they suit purchases. */
    private Counters.Suited suited(int[] bought, int starts, int passes) {
        Counters.Suited better = counters.suited(counters.best(known, bought, starts), pricesAt(bought), bought, passes);
        known.add(better.best().get(0));
        return better;
    }

    /** What purchases earn where orders are served as they come, at the counter that suits them. */
    double atItsCounter(int[] bought) {
        return suited(bought, 1, 1).best().get(0).mean(bought, courses);
    }

    /** What a unit of each row's limit is worth beside some purchases, with hindsight. */
    double[] pricesAt(int[] bought) {
        return hindsight.meanPrices(hindsight.best(program.limits(Arrays.stream(bought).asDoubleStream().toArray())));
    }

    private Rounding rounding(Counter counter, OptionalLong budget) {
        List<Choice> kits = new ArrayList<>();
        for (int k = 0; k < program.classes().size(); k++) {
            kits.addAll(counter.menu(k).stream().limit(KITS_OF_A_CLASS).toList());
        }
        return new Rounding(program, counter, kits, budget, courses, deadline);
    }
}
