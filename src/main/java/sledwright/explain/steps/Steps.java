package sledwright.explain.steps;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import sledwright.metrics.Quantity;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/**
 * How the best changes when a little more or less is asked for, and at which prices of its parts it stays the best.
 *
 * @param curves one for each requirement of the request, each changed by itself
 * @param wishes one for each wish without which the best is better, each dropped by itself
 * @param parts  one for each part of the best build that is paid for, each price changed by itself
 * @param notes  sentences about what is missing here
 */
public record Steps(List<Curve> curves, List<Dropped> wishes, List<PriceRange> parts, List<Sentence> notes) {

    public Steps {
        curves = List.copyOf(curves);
        wishes = List.copyOf(wishes);
        parts = List.copyOf(parts);
        notes = List.copyOf(notes);
    }

    /**
     * What the figures of one requirement cost.
     *
     * @param key   the request's key, such as {@code require.cores}
     * @param name  which entry under the key is meant, such as a volume; empty where the key is of one figure
     * @param unit  behind a number, with the space before it; may be empty
     * @param asked the request's figure
     * @param steps ascending; one of them is what the request asks for
     * @param first whether asking for less than the first step brings nothing more
     * @param last  whether no build reaches more than the last step
     */
    public record Curve(String key, Optional<String> name, String unit, double asked, List<Step> steps, boolean first, boolean last) {

        public Curve {
            steps = List.copyOf(steps);
        }

        /** The key without its section, and what is meant. */
        public String label() {
            return key.replaceFirst("^require\\.", "") + name.map(" "::concat).orElse("");
        }

        /** Whether the request's figure lies on a step: the first that reaches it. */
        public boolean isAsked(Step step) {
            return steps.stream().filter(other -> Quantity.reaches(other.upTo(), asked)).findFirst().filter(step::equals).isPresent();
        }
    }

    /**
     * Whoever asks for more than the step before and for no more than {@code upTo} gets this.
     *
     * @param upTo   the figure that the best then reaches
     * @param best   what the objective measures: units of the currency for cheapest and best-value, else the figure of one machine
     * @param change of {@code best} against the answer to the request
     * @param price  all machines, units of the currency
     * @param within whether the request's limit of the price allows it
     */
    public record Step(double upTo, BigDecimal best, BigDecimal change, BigDecimal price, boolean within) {

        /** The figure to two decimals, cut off: who asks for so much gets this. */
        public String upToWords() {
            return Numbers.floor(upTo).toString();
        }
    }

    /**
     * What the best would be without a wish.
     *
     * @param key    the request's key, such as {@code require.balanced}
     * @param sku    the part that is meant where the key holds a list of them
     * @param wish   in words, to stand in a list
     * @param best   what the objective measures then
     * @param change of {@code best} against the answer to the request
     * @param price  all machines, units of the currency
     */
    public record Dropped(String key, Optional<String> sku, Sentence wish, BigDecimal best, BigDecimal change, BigDecimal price) {
    }

    /**
     * Between which unit prices of a part the best build stays a best one, where the price of all its lots rises or falls alike.
     *
     * @param units     bought for all machines
     * @param unitPrice paid for one; an average where they come at different prices
     * @param from      least such unit price
     * @param to        greatest such unit price; empty: whatever it costs
     * @param below     what ends the range below
     * @param above     what ends it above
     */
    public record PriceRange(String sku, int units, BigDecimal unitPrice, BigDecimal from, Optional<BigDecimal> to, End below, End above) {
    }

    /** What ends a range of prices. */
    public enum End {
        /** Beyond, another build is better. */
        OTHER_BUILD("other-build"),
        /** A unit of the part is free of charge. */
        FREE("free"),
        /** Beyond, the price is above the request's limit. */
        PRICE_LIMIT("limit.price"),
        /** Nothing: the build stays the best. */
        NOTHING("nothing");

        private final String label;

        End(String label) {
            this.label = label;
        }

        public String label() {
            return label;
        }
    }
}
