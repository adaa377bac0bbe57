package sledwright.words;

import java.math.BigDecimal;

/**
 * A sum of money.
 *
 * @param amount   in units of the currency, with its digits
 * @param currency ISO 4217
 */
public record Sum(BigDecimal amount, String currency) implements Variable {

    @Override
    public String in(Manner manner) {
        return manner.sum(amount, currency);
    }

    @Override
    public String toString() {
        return in(Manner.COMMAND_LINE);
    }
}
