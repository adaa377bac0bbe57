package sledwright.report.quote;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import sledwright.explain.whynot.WhyNot;

/** Why a part is not in the best build, as JSON. */
public record WhyNotJson(String sku, String verdict, List<String> rules, @JsonUnwrapped Offer offer, String message) {

    /**
     * The best build that has the part; without one, each component is null, none or 0.
     *
     * @param difference kind of part -> what it costs more
     */
    public record Offer(BigDecimal price, BigDecimal extra, Map<String, BigDecimal> difference, BigDecimal breakEven,
                        int breakEvenUnits) {

        private static final Offer NONE = new Offer(null, null, Map.of(), null, 0);

        private static Offer of(WhyNot.Offer offer) {
            return new Offer(offer.price(), offer.extra(), offer.difference(), offer.breakEven().orElse(null), offer.units());
        }
    }

    static WhyNotJson of(WhyNot answer) {
        return new WhyNotJson(answer.sku(), answer.verdict().label(), answer.rules(), answer.offer().map(Offer::of).orElse(Offer.NONE),
                answer.message());
    }
}
