package sledwright.planner;

import java.util.List;
import sledwright.metrics.Figures;
import sledwright.rules.Machine;
import sledwright.rules.Order;
import sledwright.rules.Violation;

/**
 * An order under the planner's judgement.
 *
 * @param heaviest the machine of the greatest load
 * @param figures  what each machine reaches
 * @param score    breaches, then the figures in the order of the objective; for developers
 * @param broken   every breach of a rule, in the order of the rulebook
 * @param trades   what it gives and takes, in the order of the objective
 */
public record Judged(Order order, Machine heaviest, Figures figures, String score, List<Violation> broken,
                     List<Trade> trades) {

    public Judged {
        broken = List.copyOf(broken);
        trades = List.copyOf(trades);
    }

    /** Whether no rule is broken. */
    public boolean valid() {
        return broken.isEmpty();
    }
}
