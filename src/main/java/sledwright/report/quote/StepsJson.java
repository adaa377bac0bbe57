package sledwright.report.quote;

import java.math.BigDecimal;
import java.util.List;
import sledwright.explain.steps.Steps;
import sledwright.report.build.ExplanationJson;
import sledwright.words.Numbers;

/** What more or less costs, as JSON. */
public record StepsJson(List<Curve> requirements, List<Dropped> wishes, List<Range> parts, List<String> notes) {

    /** What the figures of one requirement cost; {@code name} is null where the key is of one figure. */
    public record Curve(String key, String name, BigDecimal asked, List<Step> steps, boolean first, boolean last) {

        private static Curve of(Steps.Curve curve) {
            return new Curve(curve.key(), curve.name().orElse(null), Numbers.decimal(curve.asked()),
                    curve.steps().stream().map(step -> Step.of(step, curve)).toList(), curve.first(), curve.last());
        }
    }

    /** What whoever asks for no more than {@code upTo} gets. */
    public record Step(BigDecimal upTo, BigDecimal best, BigDecimal change, BigDecimal price, boolean withinLimit, boolean asked) {

        private static Step of(Steps.Step step, Steps.Curve curve) {
            return new Step(Numbers.decimal(step.upTo()), step.best(), step.change(), step.price(), step.within(), curve.isAsked(step));
        }
    }

    /** What the best would be without a wish; {@code sku} is null where the key is of one wish. */
    public record Dropped(String key, String sku, String wish, BigDecimal best, BigDecimal change, BigDecimal price) {

        private static Dropped of(Steps.Dropped one) {
            return new Dropped(one.key(), one.sku().orElse(null), one.wish().toString(), one.best(), one.change(), one.price());
        }
    }

    /** Between which prices of a part the best stays the best; {@code to} is null where it does whatever the part costs. */
    public record Range(String sku, int units, BigDecimal unitPrice, BigDecimal from, BigDecimal to, String fromSetBy, String toSetBy) {

        private static Range of(Steps.PriceRange part) {
            return new Range(part.sku(), part.units(), part.unitPrice(), part.from(), part.to().orElse(null), part.below().label(),
                    part.above().label());
        }
    }

    static StepsJson of(Steps steps) {
        return new StepsJson(steps.curves().stream().map(Curve::of).toList(), steps.wishes().stream().map(Dropped::of).toList(),
                steps.parts().stream().map(Range::of).toList(),
                ExplanationJson.words(steps.notes()));
    }
}
