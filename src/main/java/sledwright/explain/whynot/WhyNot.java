package sledwright.explain.whynot;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import sledwright.words.Sentence;

/**
 * Why a part that somebody asked about is not in the best build.
 *
 * @param sentences finished
 * @param rules     identifiers of the rules that bar it, where it is barred
 * @param offer     the best build with it, where there is one
 */
public record WhyNot(String sku, Verdict verdict, List<Sentence> sentences, List<String> rules, Optional<Offer> offer) {

    /** How a part stands. */
    public enum Verdict {
        /** It is in the best build. */
        CHOSEN,
        /** There is a build with it, and a better one without. */
        BEATEN,
        /** No valid build holds it. */
        BARRED,
        /** Time ran out before an answer was found. */
        UNSETTLED;

        public String label() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * The best build with a part. Amounts are of all machines, in units of the currency.
     *
     * @param extra      how much dearer it is than the best; may be negative where money is not the objective
     * @param difference kind -> how much more it spends on that; the sum is {@code extra}
     * @param breakEven  the greatest unit price at which a build with the part is as good as the best; empty where there is none, or where
     *                   time ran out before it was found
     * @param units      bought at that price; 0 where there is none
     */
    public record Offer(BigDecimal price, BigDecimal extra, Map<String, BigDecimal> difference, Optional<BigDecimal> breakEven, int units) {
    }

    public WhyNot {
        sentences = List.copyOf(sentences);
        rules = List.copyOf(rules);
    }

    /** All sentences as one text, as on a command line. */
    public String message() {
        return Sentence.joined(" ", sentences).toString();
    }
}
