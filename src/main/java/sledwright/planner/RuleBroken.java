package sledwright.planner;

import java.util.List;
import org.optaplanner.core.api.score.stream.ConstraintJustification;
import sledwright.rules.Violation;

/** Why a rule's constraint counts: every breach that the rule found. */
record RuleBroken(List<Violation> violations) implements ConstraintJustification {
}
