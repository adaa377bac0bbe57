package sledwright.planner.allot;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.optaplanner.core.api.score.ScoreExplanation;
import org.optaplanner.core.api.score.buildin.bendablelong.BendableLongScore;
import org.optaplanner.core.api.score.stream.ConstraintStreamImplType;
import org.optaplanner.core.api.solver.SolutionManager;
import org.optaplanner.core.api.solver.Solver;
import org.optaplanner.core.api.solver.SolverFactory;
import org.optaplanner.core.api.solver.change.ProblemChange;
import org.optaplanner.core.api.solver.change.ProblemChangeDirector;
import org.optaplanner.core.config.heuristic.selector.move.composite.CartesianProductMoveSelectorConfig;
import org.optaplanner.core.config.heuristic.selector.move.composite.UnionMoveSelectorConfig;
import org.optaplanner.core.config.heuristic.selector.move.factory.MoveIteratorFactoryConfig;
import org.optaplanner.core.config.heuristic.selector.move.generic.ChangeMoveSelectorConfig;
import org.optaplanner.core.config.localsearch.LocalSearchPhaseConfig;
import org.optaplanner.core.config.localsearch.LocalSearchType;
import org.optaplanner.core.config.score.director.ScoreDirectorFactoryConfig;
import org.optaplanner.core.config.solver.SolverConfig;
import org.optaplanner.core.config.solver.termination.TerminationConfig;
import sledwright.domain.Lot;
import sledwright.generator.time.Deadline;

/**
 * Lets OptaPlanner choose among known ways to keep promises, and hears meanwhile what happens to promises and lots.
 *
 * @param news what has happened since it was last asked for
 */
record AllotmentSolving(Map<LotName, Lot> lots, long seed, Supplier<List<AllotmentChange>> news) {

    /** Steps without a better plan after which it is as good as it will get; steps and not time, so that a run can be repeated. */
    private static final int UNIMPROVED_STEPS = 3_000;

    /** The same where no plan can deliver more, change less or cost less. */
    private static final int STEPS_OF_PROVED = 300;

    /** How often room is made, beside single changes and pairs of them, which keep what stands better. */
    private static final double MAKING_ROOM = 4.0;

    /** Where hardly a move can be made, there is hardly a step either. */
    private static final long UNIMPROVED_MS = 3_000;

    private static final long ASK_EVERY_MS = 250;

    /**
     * What was decided.
     *
     * @param changes what happened meanwhile
     */
    record Decided(Allotment allotment, List<AllotmentChange> changes) {
    }

    /**
     * @param available units that there are of each lot, those of pinned promises among them
     * @param proved    whether the start is known to be as good as can be but for units that come from elsewhere
     */
    Decided solve(Allotment start, FillingPool pool, Map<LotName, Integer> available, boolean proved, Deadline deadline) {
        Solver<AllotmentPlan> solver = factory(proved ? STEPS_OF_PROVED : UNIMPROVED_STEPS, deadline).buildSolver();
        List<AllotmentChange> heard = new ArrayList<>();
        ScheduledExecutorService asking = Executors.newSingleThreadScheduledExecutor(work -> {
            Thread thread = new Thread(work, "allotment-news");
            thread.setDaemon(true);
            return thread;
        });
        try {
            asking.scheduleWithFixedDelay(() -> {
                List<AllotmentChange> fresh = news.get();
                heard.addAll(fresh);
                fresh.forEach(change -> solver.addProblemChange(changing(change)));
            }, 0, ASK_EVERY_MS, TimeUnit.MILLISECONDS);
            AllotmentPlan decided = solver.solve(plan(start, pool, available));
            asking.shutdown();
            asking.awaitTermination(1, TimeUnit.MINUTES);
            heard.addAll(news.get());
            return new Decided(allotment(decided), List.copyOf(heard));
        } catch (InterruptedException stopped) {
            throw new IllegalStateException(stopped);
        } finally {
            asking.shutdownNow();
        }
    }

    /** What the constraints say of an allotment. */
    ScoreExplanation<AllotmentPlan, BendableLongScore> explain(Allotment allotment, Map<LotName, Integer> available) {
        return SolutionManager.<AllotmentPlan, BendableLongScore>create(factory(1, Deadline.never()))
                .explain(plan(allotment, new FillingPool(), available));
    }

    private AllotmentPlan plan(Allotment start, FillingPool pool, Map<LotName, Integer> available) {
        List<PromisedMachines> promises = new ArrayList<>();
        start.fillings().forEach((promise, filling) -> promises.add(new PromisedMachines(promise,
                promise.pinned() ? List.of() : pool.of(promise), filling)));
        List<AllottedLot> shelf = new ArrayList<>();
        lots.forEach((name, lot) -> shelf.add(new AllottedLot(name, lot).with(available.getOrDefault(name, 0))));
        return new AllotmentPlan(promises, shelf);
    }

    private static Allotment allotment(AllotmentPlan plan) {
        Map<Promise, Filling> fillings = new LinkedHashMap<>();
        plan.promises().forEach(one -> fillings.put(one.promise(), one.filling()));
        return new Allotment(fillings);
    }

    /** The same change in OptaPlanner's words; what it works on is a copy of its own. */
    private static ProblemChange<AllotmentPlan> changing(AllotmentChange change) {
        return (plan, director) -> {
            if (change instanceof AllotmentChange.OfLot of) {
                replace(plan, of, director);
            } else if (change instanceof AllotmentChange.Picked picked) {
                settle(plan, picked.promise(), false, director);
            } else if (change instanceof AllotmentChange.Over over) {
                settle(plan, over.promise(), true, director);
            }
        };
    }

    private static void replace(AllotmentPlan plan, AllotmentChange.OfLot change, ProblemChangeDirector director) {
        plan.setLots(new ArrayList<>(plan.lots()));
        List<AllottedLot> old = plan.lots().stream().filter(lot -> lot.name().equals(change.lot())).toList();
        old.forEach(lot -> {
            director.removeProblemFact(lot, plan.lots()::remove);
            director.addProblemFact(lot.with(change.available()), plan.lots()::add);
        });
    }

    private static void settle(AllotmentPlan plan, String promise, boolean over, ProblemChangeDirector director) {
        plan.promises().stream().filter(one -> one.name().equals(promise)).findFirst().ifPresent(one -> {
            director.changeVariable(one, "filling", machines -> machines.take(over));
            director.changeProblemProperty(one, machines -> machines.settle(over));
        });
    }

    private SolverFactory<AllotmentPlan> factory(int steps, Deadline deadline) {
        long left = Math.max(1, Math.min(deadline.leftMillis(), Duration.ofDays(1).toMillis()));
        return SolverFactory.create(new SolverConfig()
                .withSolutionClass(AllotmentPlan.class)
                .withEntityClasses(PromisedMachines.class)
                .withRandomSeed(seed)
                .withScoreDirectorFactory(new ScoreDirectorFactoryConfig()
                        .withConstraintProviderClass(AllotmentConstraints.class)
                        .withConstraintStreamImplType(ConstraintStreamImplType.BAVET))
                .withTerminationConfig(new TerminationConfig().withMillisecondsSpentLimit(left))
                .withPhases(new LocalSearchPhaseConfig().withLocalSearchType(LocalSearchType.LATE_ACCEPTANCE)
                        .withTerminationConfig(new TerminationConfig().withUnimprovedStepCountLimit(steps)
                                .withUnimprovedMillisecondsSpentLimit(UNIMPROVED_MS))
                        .withMoveSelectorConfig(new UnionMoveSelectorConfig().withMoveSelectors(
                                new MoveIteratorFactoryConfig().withMoveIteratorFactoryClass(MakingRoom.class)
                                        .withFixedProbabilityWeight(MAKING_ROOM),
                                new ChangeMoveSelectorConfig(),
                                new CartesianProductMoveSelectorConfig(List.of(new ChangeMoveSelectorConfig(),
                                new ChangeMoveSelectorConfig()))))));
    }
}
