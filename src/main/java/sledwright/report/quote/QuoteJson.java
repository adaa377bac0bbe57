package sledwright.report.quote;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.List;
import sledwright.compare.PricePoints;
import sledwright.desk.view.MoreWork;
import sledwright.desk.view.QuoteView;
import sledwright.desk.view.TooMany;
import sledwright.generator.Doubts;
import sledwright.report.build.BuildJson;
import sledwright.report.build.DayJson;
import sledwright.report.build.ExplanationJson;
import sledwright.report.build.PaymentJson;
import sledwright.report.text.Json;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/** A quote as JSON. */
public record QuoteJson(@JsonUnwrapped Head head, @JsonUnwrapped DayJson day, List<Alternative> alternatives,
                        @JsonUnwrapped Completeness completeness, List<WhyNotJson> whyNot, @JsonUnwrapped ExplanationJson explanation,
                        @JsonUnwrapped Beyond beyond) {

    /**
     * What more costs: a step of work, null without a workload; more machines than can be had, null where all can be; and every
     * requirement, null where nobody asked.
     */
    public record Beyond(MoreWorkJson moreWork, TooManyJson tooMany, StepsJson steps) {
    }

    /** How many machines can be had. */
    public record TooManyJson(int alike, BigDecimal alikePrice, @JsonUnwrapped MixedJson order, String message) {

        private static TooManyJson of(TooMany some) {
            return new TooManyJson(some.alike(), some.alikePrice(), some.mixed().map(MixedJson::of).orElse(MixedJson.NONE),
                    some.words().toString());
        }
    }

    /** An order of mixed builds; null where none was found that delivers more. */
    public record MixedJson(Integer mixed, Integer mixedBuilds, BigDecimal mixedPrice, Boolean mixedProved, Boolean mixedWithin) {

        private static final MixedJson NONE = new MixedJson(null, null, null, null, null);

        private static MixedJson of(TooMany.Mixed order) {
            return new MixedJson(order.machines(), order.builds(), order.price(), order.proved(), order.within());
        }
    }

    /** What one step of work costs; all but {@code step} and {@code message} are null where no build does so much more. */
    public record MoreWorkJson(BigDecimal step, BigDecimal work, BigDecimal percent, BigDecimal extra, Boolean within, String message) {

        private static MoreWorkJson of(MoreWork more) {
            return new MoreWorkJson(more.step(), more.next().map(next -> Numbers.decimal(next.work())).orElse(null),
                    more.next().map(MoreWork.Next::percent).orElse(null), more.next().map(MoreWork.Next::extra).orElse(null),
                    more.next().map(MoreWork.Next::within).orElse(null), more.words().toString());
        }
    }

    /** What was asked, and the best; {@code best} and {@code bound} are null where there is none. */
    public record Head(String request, String currency, String status, BigDecimal best, BigDecimal bound, String objective, int machines) {
    }

    /** A ranked build; {@code mark} is null where it is no price point. */
    public record Alternative(int rank, @JsonUnwrapped BuildJson.Dated build, String mark, @JsonUnwrapped Weighed weighed,
                              @JsonUnwrapped PaymentJson payment, List<String> reasons) {

        private static Alternative of(QuoteView.Alternative one, QuoteView view) {
            return new Alternative(one.rank(), BuildJson.Dated.of(one.build(), view.day()),
                    one.mark().map(PricePoints.Mark::label).orElse(null),
                    new Weighed(one.weighed().priceLessWorth().orElse(null), one.weighed().energy().orElse(null), one.total().orElse(null)),
                    PaymentJson.of(one.sale()), one.sentences().stream().map(Sentence::toString).toList());
        }
    }

    /** What decides: the first is null where the objective is another, the others where the request counts no electricity. */
    public record Weighed(BigDecimal priceLessWorth, BigDecimal energy, BigDecimal total) {
    }

    /** What keeps the list of alternatives from being the right one. */
    public record Completeness(boolean alternativesComplete, List<String> doubts) {
    }

    public static String of(QuoteView view) {
        return Json.of(new QuoteJson(new Head(view.topic().request(), view.topic().currency(), view.proof().status().label(),
                view.proof().best().orElse(null),
                view.proof().bound().orElse(null), view.objective().label(), view.topic().machines()), DayJson.of(view.day()),
                view.alternatives().stream().map(one -> Alternative.of(one, view)).toList(), new Completeness(view.complete(),
                view.proof().doubts().causes().stream().sorted().map(Doubts.Cause::label).toList()),
                view.explanation().whyNot().stream().map(WhyNotJson::of).toList(), ExplanationJson.of(view.explanation()),
                new Beyond(view.outlook().moreWork().map(MoreWorkJson::of).orElse(null),
                view.outlook().tooMany().map(TooManyJson::of).orElse(null),
                        view.outlook().steps().map(StepsJson::of).orElse(null))));
    }
}
