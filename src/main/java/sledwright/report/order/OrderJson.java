package sledwright.report.order;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.List;
import java.util.Set;
import sledwright.desk.view.AnswerDay;
import sledwright.desk.view.OrderView;
import sledwright.explain.Explanation;
import sledwright.generator.Doubts;
import sledwright.report.build.BuildJson;
import sledwright.report.build.DayJson;
import sledwright.report.build.ExplanationJson;
import sledwright.report.build.LineJson;
import sledwright.report.build.PaymentJson;
import sledwright.report.text.Json;
import sledwright.words.Numbers;

/** The answer to an order, as JSON. */
public record OrderJson(@JsonUnwrapped Head head, @JsonUnwrapped Costs costs, @JsonUnwrapped DayJson day, List<LineFilled> lines,
                        List<Enclosed> enclosures, @JsonUnwrapped Drawn drawn, Short shortage) {

    /** What was asked, how much of it is delivered and how well that is proved. */
    public record Head(String request, String currency, String status, @JsonUnwrapped Proof proof, int machines, int delivered) {
    }

    /** @param gapPercent null where nothing is delivered, like the two before */
    public record Proof(BigDecimal best, BigDecimal bound, BigDecimal gapPercent, String ended, List<String> doubts, Set<String> tooLarge) {
    }

    /** The whole order. */
    public record Costs(BigDecimal price, BigDecimal parts, BigDecimal labour, BigDecimal licence, BigDecimal delivery,
                        @JsonUnwrapped PaymentJson payment, @JsonUnwrapped Weighed weighed) {
    }

    /** What is no part of the price and decides between orders. */
    public record Weighed(BigDecimal modulePartCharge, BigDecimal worth) {
    }

    /** One line; the explanation is empty unless it is impossible by itself. */
    public record LineFilled(String line, @JsonUnwrapped Extent extent, BigDecimal price, List<Alike> builds, boolean impossible,
                             @JsonUnwrapped ExplanationJson explanation) {

        private static LineFilled of(OrderView.Filled line, AnswerDay day) {
            return new LineFilled(line.line().name(), new Extent(line.line().machines(), line.delivered(), line.missing(),
                    line.line().priority(), line.line().uniform()),
                    line.price(), line.builds().stream().map(group -> Alike.of(group, day)).toList(), line.why().isPresent(),
                    ExplanationJson.of(line.why().orElse(Explanation.NONE)));
        }
    }

    /** How many machines of a line. */
    public record Extent(int machines, int delivered, int missing, int priority, boolean uniform) {
    }

    /** Machines of a line that are one build. */
    public record Alike(int build, @JsonUnwrapped BuildJson.Dated dated, List<Picked> picked) {

        private static Alike of(OrderView.Group group, AnswerDay day) {
            return new Alike(group.number(), BuildJson.Dated.of(group.build(), day), group.picked().stream()
                    .map(picked -> new Picked(picked.first(), picked.last(), LineJson.all(picked.lines()))).toList());
        }
    }

    /** What machines from the first to the last take, each. */
    public record Picked(int first, int last, List<LineJson> lines) {
    }

    /** An enclosure and who sits in it. */
    public record Enclosed(int enclosure, String sku, String description, @JsonUnwrapped Feed feed, BigDecimal price, List<SledJson> sleds,
                           List<LineJson> lines) {

        private static Enclosed of(OrderView.Housed housed) {
            return new Enclosed(housed.number(), housed.filled().enclosure().sku(), housed.filled().enclosure().name(),
                    new Feed(housed.filled().enclosure().bays(), housed.filled().supply().sku(), housed.filled().supply().count(),
                    Numbers.decimal(housed.loadW())), housed.price(),
                    housed.sleds().stream().map(SledJson::of).toList(), LineJson.all(housed.lines()));
        }
    }

    /** Bays and supplies of an enclosure. */
    public record Feed(int bays, String supply, int supplies, BigDecimal loadW) {
    }

    /** One sled in its bay. */
    public record SledJson(int bay, String line, int machine, int build, BigDecimal loadW) {

        private static SledJson of(OrderView.Sled sled) {
            return new SledJson(sled.bay(), sled.line(), sled.machine(), sled.build(), Numbers.decimal(sled.loadW()));
        }
    }

    /** What all lines draw together. */
    public record Drawn(List<LineJson> picks, List<DeliveryJson> suppliers, List<OrderView.Scarce> scarce) {

        private static Drawn of(OrderView view) {
            return new Drawn(LineJson.all(view.contents().picks()), view.contents().suppliers().stream().map(DeliveryJson::of).toList(),
                    view.contents().scarce());
        }
    }

    /** What comes from one supplier. */
    public record DeliveryJson(String supplier, boolean own, int lots, int units, BigDecimal parts, BigDecimal delivery, int leadDays) {

        private static DeliveryJson of(OrderView.Delivery from) {
            return new DeliveryJson(from.supplier(), from.own(), from.lots(), from.units(), from.parts(), from.charge(), from.leadDays());
        }
    }

    /** Why machines are missing. */
    public record Short(boolean mostProved, boolean looked, List<CauseJson> causes, List<OrderView.Lack> lacks, Later later) {

        private static Short of(OrderView.Shortage shortage) {
            return new Short(shortage.most(), shortage.looked(), shortage.causes().stream().map(CauseJson::of).toList(),
                    shortage.lacks(), shortage.later().map(Later::of).orElse(null));
        }
    }

    /** @param line null where it is a limit of the whole order */
    public record CauseJson(String limit, String line, String message) {

        private static CauseJson of(OrderView.Cause cause) {
            return new CauseJson(cause.limit(), cause.line().orElse(null), cause.message());
        }
    }

    /** The whole order with parts that are bought for it; null where there is none. */
    public record Later(BigDecimal price, int leadDays, List<LineJson> purchases) {

        private static Later of(OrderView.Later later) {
            return new Later(later.price(), later.leadDays(), LineJson.all(later.purchases()));
        }
    }

    public static String of(OrderView view) {
        String ended = switch (view.proof().ended()) {
            case PROVED -> "proved";
            case TIME -> "time";
            case NOTHING_LEFT -> "nothing-left";
            case KEPT -> "kept";
        };
        return Json.of(new OrderJson(new Head(view.topic().request(), view.topic().currency(), view.proof().status().label(),
                new Proof(view.proof().best().orElse(null), view.proof().bound().orElse(null), view.proof().gapPercent().orElse(null),
                ended,
                view.proof().doubts().causes().stream().sorted().map(Doubts.Cause::label).toList(), view.proof().doubts().tooLarge()),
                view.topic().machines(),
                view.delivered()), new Costs(view.cost().total(), view.cost().parts(), view.cost().labour(), view.cost().licence(),
                view.cost().delivery(), PaymentJson.of(view.sale()), new Weighed(view.cost().charge(), view.cost().worth())),
                DayJson.of(view.day()), view.contents().lines().stream().map(line -> LineFilled.of(line, view.day())).toList(),
                view.contents().enclosures().stream().map(Enclosed::of).toList(), Drawn.of(view),
                view.shortage().map(Short::of).orElse(null)));
    }
}
