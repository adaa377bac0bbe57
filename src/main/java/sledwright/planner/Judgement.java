package sledwright.planner;

import org.optaplanner.core.api.score.stream.ConstraintJustification;

/** What a constraint says of the lines that draw on one stock. */
sealed interface Judgement extends ConstraintJustification permits RuleBroken, Weighed {

    /** Which lines it is about. */
    String stock();
}
