package sledwright.words;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;

/** How a place writes what others write differently. */
public interface Manner {

    /** Plain figures, and advice for readers who have no options to give: on a page, on paper. */
    Manner PLAIN = new Manner() { };

    /** As on a command line: plain figures, and advice that names options. */
    Manner COMMAND_LINE = new Manner() {
        @Override
        public String advice(Advice advice) {
            return switch (advice) {
                case MORE_TIME -> "Maybe allow more time: --time-limit";
            };
        }
    };

    /** The words of a sentence, which have the gaps of {@link Sentence#of}, in the place's language and for its readers. */
    default String words(String template) {
        return template;
    }

    /** {@code a}, {@code a and b}, {@code a, b and c}. */
    default String list(List<String> items) {
        return Sentences.list(items);
    }

    default String day(LocalDate day) {
        return day.toString();
    }

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
            case MORE_TIME -> "More time may settle it.";
        };
    }
}
