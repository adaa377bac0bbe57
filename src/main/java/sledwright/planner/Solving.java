package sledwright.planner;

import org.optaplanner.core.api.score.buildin.bendablelong.BendableLongScore;
import org.optaplanner.core.api.score.stream.ConstraintStreamImplType;
import org.optaplanner.core.api.solver.SolutionManager;
import org.optaplanner.core.api.solver.SolverFactory;
import org.optaplanner.core.config.score.director.ScoreDirectorFactoryConfig;
import org.optaplanner.core.config.solver.SolverConfig;

/** How OptaPlanner is set up: in Java, since reading a configuration from XML would bring a parser along. */
final class Solving {

    /** Scores and explains plans. Threads may share it, and it is made once, with the first plan that is judged. */
    static final SolutionManager<OrderPlan, BendableLongScore> MANAGER = SolutionManager.create(SolverFactory.create(new SolverConfig()
            .withSolutionClass(OrderPlan.class)
            .withEntityClasses(LinePlan.class)
            .withScoreDirectorFactory(new ScoreDirectorFactoryConfig()
                    .withConstraintProviderClass(OrderConstraints.class)
                    .withConstraintStreamImplType(ConstraintStreamImplType.BAVET))));

    private Solving() {
    }

    /** Sets up, with the first call of anything here, what judges. */
    static void prepare() {
        // The field above does it.
    }
}
