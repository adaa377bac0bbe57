package sledwright.planner;

import org.optaplanner.core.api.score.stream.ConstraintJustification;

/**
 * What a build gives, or takes, in one figure, weighed against its price.
 *
 * @param amount  the figure: minor units of the currency for money, else that of one machine in its own unit
 * @param message a finished sentence with the numbers
 */
public record Trade(Criterion criterion, double amount, String message) implements ConstraintJustification {
}
