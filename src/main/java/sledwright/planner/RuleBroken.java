package sledwright.planner;

import java.util.List;
import sledwright.rules.Violation;

/** Why a rule's constraint counts: every breach that the rule found in the lines of a stock. */
record RuleBroken(String stock, List<Violation> violations) implements Judgement {
}
