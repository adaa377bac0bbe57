package sledwright.planner;

import org.optaplanner.core.api.score.stream.ConstraintStreamImplType;
import org.optaplanner.core.api.solver.SolverFactory;
import org.optaplanner.core.config.constructionheuristic.ConstructionHeuristicPhaseConfig;
import org.optaplanner.core.config.heuristic.selector.common.SelectionCacheType;
import org.optaplanner.core.config.heuristic.selector.common.SelectionOrder;
import org.optaplanner.core.config.heuristic.selector.move.generic.ChangeMoveSelectorConfig;
import org.optaplanner.core.config.localsearch.LocalSearchPhaseConfig;
import org.optaplanner.core.config.score.director.ScoreDirectorFactoryConfig;
import org.optaplanner.core.config.solver.EnvironmentMode;
import org.optaplanner.core.config.solver.SolverConfig;
import org.optaplanner.core.config.solver.termination.TerminationConfig;

/** How OptaPlanner is set up: in Java, since reading a configuration from XML would bring a parser along. */
final class Solving {

    /** A time limit would give other answers on another machine. */
    private static final int LOCAL_SEARCH_STEPS = 50;

    private Solving() {
    }

    /** The same seed gives the same plan. */
    static SolverFactory<OrderPlan> factory(long seed) {
        return SolverFactory.create(new SolverConfig()
                .withSolutionClass(OrderPlan.class)
                .withEntityClasses(LinePlan.class)
                .withScoreDirectorFactory(new ScoreDirectorFactoryConfig()
                        .withConstraintProviderClass(OrderConstraints.class)
                        .withConstraintStreamImplType(ConstraintStreamImplType.BAVET))
                .withEnvironmentMode(EnvironmentMode.REPRODUCIBLE)
                .withRandomSeed(seed)
                .withPhases(new ConstructionHeuristicPhaseConfig(), new LocalSearchPhaseConfig()
                        .withMoveSelectorConfig(everyChangeOnce())
                        .withTerminationConfig(new TerminationConfig().withStepCountLimit(LOCAL_SEARCH_STEPS))));
    }

    /**
     * Each step goes through the changes once in a random order. Changes drawn at random without end, as is the default, would
     * keep a step at the best plan waiting for one that is accepted.
     */
    private static ChangeMoveSelectorConfig everyChangeOnce() {
        ChangeMoveSelectorConfig changes = new ChangeMoveSelectorConfig();
        changes.setCacheType(SelectionCacheType.STEP);
        changes.setSelectionOrder(SelectionOrder.SHUFFLED);
        return changes;
    }
}
