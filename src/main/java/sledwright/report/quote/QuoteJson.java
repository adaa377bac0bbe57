package sledwright.report.quote;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
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

/**
 * A quote as JSON.
 *
 * @param steps null where nobody asked for them
 */
public record QuoteJson(@JsonUnwrapped Head head, @JsonUnwrapped DayJson day, List<Alternative> alternatives,
                        @JsonUnwrapped Completeness completeness, List<WhyNotJson> whyNot, @JsonUnwrapped ExplanationJson explanation,
                        MoreWorkJson moreWork, TooManyJson tooMany, StepsJson steps) {

    /** How many machines can be had; the keys of {@code mixed} are null where no order of mixed builds was found that delivers more. */
    public record TooManyJson(int alike, BigDecimal alikePrice, Integer mixed, Integer mixedBuilds, BigDecimal mixedPrice,
                              Boolean mixedProved, Boolean mixedWithin, String message) {

        private static TooManyJson of(TooMany some) {
            Optional<TooMany.Mixed> order = some.mixed();
            return new TooManyJson(some.alike(), some.alikePrice(), order.map(TooMany.Mixed::machines).orElse(null),
                    order.map(TooMany.Mixed::builds).orElse(null), order.map(TooMany.Mixed::price).orElse(null),
                    order.map(TooMany.Mixed::proved).orElse(null), order.map(TooMany.Mixed::within).orElse(null), some.words().toString());
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

    /**
     * A ranked build; {@code mark} is null where it is no price point, {@code priceLessWorth} where the objective is another,
     * {@code energy} and {@code total} where the request counts no electricity.
     */
    public record Alternative(int rank, @JsonUnwrapped BuildJson.Dated build, String mark, BigDecimal priceLessWorth, BigDecimal energy,
                              BigDecimal total, @JsonUnwrapped PaymentJson payment, List<String> reasons) {

        private static Alternative of(QuoteView.Alternative one, QuoteView view) {
            return new Alternative(one.rank(), BuildJson.Dated.of(one.build(), view.day()),
                    one.mark().map(PricePoints.Mark::label).orElse(null), one.priceLessWorth().orElse(null), one.energy().orElse(null),
                    one.total().orElse(null), PaymentJson.of(one.pays(), one.earned()),
                    one.sentences().stream().map(Sentence::toString).toList());
        }
    }

    /** What keeps the list of alternatives from being the right one. */
    public record Completeness(boolean alternativesComplete, List<String> doubts) {
    }

    public static String of(QuoteView view) {
        return Json.of(record(view));
    }

    private static QuoteJson record(QuoteView view) {
        return new QuoteJson(new Head(view.request(), view.currency(), view.status().label(), view.best().orElse(null),
                view.bound().orElse(null), view.objective().label(), view.machines()), DayJson.of(view.day()),
                view.alternatives().stream().map(one -> Alternative.of(one, view)).toList(), new Completeness(view.complete(),
                view.doubts().causes().stream().sorted().map(Doubts.Cause::label).toList()),
                view.explanation().whyNot().stream().map(WhyNotJson::of).toList(), ExplanationJson.of(view.explanation()),
                view.moreWork().map(MoreWorkJson::of).orElse(null),
                view.tooMany().map(TooManyJson::of).orElse(null), view.steps().map(StepsJson::of).orElse(null));
    }
}
