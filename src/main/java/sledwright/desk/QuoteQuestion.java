package sledwright.desk;

import java.util.List;

/**
 * What is asked of a request of kind {@code quote} for its ranked builds.
 *
 * @param sets   keys to answer with in place of the request's own, as {@code path=value}
 * @param whyNot part numbers of which to say why they are not in the best build
 * @param steps  what to say of more or less of each requirement
 */
public record QuoteQuestion(List<String> sets, List<String> whyNot, Further steps) {

    /** What is said beyond the best and its alternatives. */
    public enum Further {
        NOTHING,
        /** What more or less of each requirement costs. */
        REQUIREMENTS,
        /** That, and at which prices of its parts the best build stays the best. */
        REQUIREMENTS_AND_PRICES
    }

    /** @param steps whether to say what more or less of each requirement costs, and at which prices of its parts the best stays the best */
    public QuoteQuestion(List<String> sets, List<String> whyNot, boolean steps) {
        this(sets, whyNot, steps ? Further.REQUIREMENTS_AND_PRICES : Further.NOTHING);
    }

    public QuoteQuestion {
        sets = List.copyOf(sets);
        whyNot = List.copyOf(whyNot);
    }

    /** The request as it stands, and nothing beside it. */
    public static QuoteQuestion plain() {
        return new QuoteQuestion(List.of(), List.of(), false);
    }
}
