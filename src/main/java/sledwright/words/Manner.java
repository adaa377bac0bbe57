package sledwright.words;

import java.math.BigDecimal;

/** How a place writes what others write differently. */
public interface Manner {

    /** As on a command line: plain figures, and advice that names options. */
    Manner COMMAND_LINE = new Manner() { };

    default String measure(BigDecimal figure) {
        return figure.toPlainString();
    }

    /**
     * @param amount   in units of the currency
     * @param currency ISO 4217
     */
    default String sum(BigDecimal amount, String currency) {
        return amount.toPlainString() + " " + currency;
    }

    default String advice(Advice advice) {
        return switch (advice) {
            case MORE_TIME -> "Maybe allow more time: --time-limit";
        };
    }
}
