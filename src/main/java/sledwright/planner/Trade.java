package sledwright.planner;

import sledwright.words.Sentence;

/**
 * What a build gives, or takes, in one figure, weighed against its price.
 *
 * @param amount   the figure: minor units of the currency for money, else that of one machine in its own unit
 * @param sentence finished, with the numbers
 */
public record Trade(Criterion criterion, double amount, Sentence sentence) {
}
