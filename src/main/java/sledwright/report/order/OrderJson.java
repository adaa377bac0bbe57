package sledwright.report.order;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.desk.view.AnswerDay;
import sledwright.desk.view.Line;
import sledwright.desk.view.OrderView;
import sledwright.desk.view.OrderView.Cause;
import sledwright.desk.view.OrderView.Delivery;
import sledwright.desk.view.OrderView.Filled;
import sledwright.desk.view.OrderView.Group;
import sledwright.desk.view.OrderView.Housed;
import sledwright.desk.view.OrderView.Lack;
import sledwright.desk.view.OrderView.Picked;
import sledwright.desk.view.OrderView.Scarce;
import sledwright.desk.view.OrderView.Shortage;
import sledwright.desk.view.OrderView.Sled;
import sledwright.explain.Explanation;
import sledwright.report.build.ExplanationJson;
import sledwright.report.build.JsonParts;
import sledwright.report.text.Json;
import sledwright.words.Numbers;

/** The answer to an order, as JSON. */
public final class OrderJson {

    private final JsonParts parts;
    private final JsonGenerator out;

    private OrderJson(JsonGenerator out) {
        parts = new JsonParts(out);
        this.out = out;
    }

    public static String of(OrderView view) {
        return Json.document(out -> write(view, out));
    }

    private static void write(OrderView view, JsonGenerator out) throws IOException {
        new OrderJson(out).order(view);
    }

    private void order(OrderView view) throws IOException {
        out.writeStringField("request", view.request());
        out.writeStringField("currency", view.currency());
        out.writeStringField("status", view.status().label());
        parts.number("best", view.best());
        parts.number("bound", view.bound());
        parts.number("gap_percent", view.gapPercent());
        out.writeStringField("ended", switch (view.ended()) {
            case PROVED -> "proved";
            case TIME -> "time";
            case NOTHING_LEFT -> "nothing-left";
        });
        out.writeNumberField("machines", view.machines());
        out.writeNumberField("delivered", view.delivered());
        out.writeNumberField("price", view.cost().total());
        out.writeNumberField("parts", view.cost().parts());
        out.writeNumberField("labour", view.cost().labour());
        out.writeNumberField("licence", view.cost().licence());
        out.writeNumberField("delivery", view.cost().delivery());
        parts.payment(view.pays(), view.earned());
        out.writeNumberField("module_part_charge", view.charge());
        out.writeNumberField("worth", view.worth());
        parts.day(view.day());
        out.writeArrayFieldStart("lines");
        for (Filled line : view.lines()) {
            line(line, view.day());
        }
        out.writeEndArray();
        out.writeArrayFieldStart("enclosures");
        for (Housed housed : view.enclosures()) {
            housed(housed);
        }
        out.writeEndArray();
        lines("picks", view.picks());
        out.writeArrayFieldStart("suppliers");
        for (Delivery delivery : view.suppliers()) {
            delivery(delivery);
        }
        out.writeEndArray();
        out.writeArrayFieldStart("scarce");
        for (Scarce scarce : view.scarce()) {
            out.writeStartObject();
            out.writeStringField("sku", scarce.sku());
            out.writeNumberField("saves", scarce.saves());
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeFieldName("shortage");
        if (view.shortage().isPresent()) {
            shortage(view.shortage().get());
        } else {
            out.writeNull();
        }
    }

    private void lines(String key, List<Line> lines) throws IOException {
        out.writeArrayFieldStart(key);
        for (Line line : lines) {
            parts.line(line);
        }
        out.writeEndArray();
    }

    private void line(Filled line, AnswerDay day) throws IOException {
        out.writeStartObject();
        out.writeStringField("line", line.name());
        out.writeNumberField("machines", line.asked());
        out.writeNumberField("delivered", line.delivered());
        out.writeNumberField("missing", line.missing());
        out.writeNumberField("priority", line.priority());
        out.writeBooleanField("uniform", line.uniform());
        out.writeNumberField("price", line.price());
        out.writeArrayFieldStart("builds");
        for (Group group : line.builds()) {
            out.writeStartObject();
            out.writeNumberField("build", group.number());
            parts.build(group.build(), day);
            out.writeArrayFieldStart("picked");
            for (Picked picked : group.picked()) {
                out.writeStartObject();
                out.writeNumberField("first", picked.first());
                out.writeNumberField("last", picked.last());
                lines("lines", picked.lines());
                out.writeEndObject();
            }
            out.writeEndArray();
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeBooleanField("impossible", line.why().isPresent());
        new ExplanationJson(out).explanation(line.why().orElse(Explanation.NONE));
        out.writeEndObject();
    }

    private void housed(Housed housed) throws IOException {
        out.writeStartObject();
        out.writeNumberField("enclosure", housed.number());
        out.writeStringField("sku", housed.sku());
        out.writeStringField("description", housed.name());
        out.writeNumberField("bays", housed.bays());
        out.writeStringField("supply", housed.supply());
        out.writeNumberField("supplies", housed.supplies());
        out.writeNumberField("load_w", Numbers.decimal(housed.loadW()));
        out.writeNumberField("price", housed.price());
        out.writeArrayFieldStart("sleds");
        for (Sled sled : housed.sleds()) {
            out.writeStartObject();
            out.writeNumberField("bay", sled.bay());
            out.writeStringField("line", sled.line());
            out.writeNumberField("machine", sled.machine());
            out.writeNumberField("build", sled.build());
            out.writeNumberField("load_w", Numbers.decimal(sled.loadW()));
            out.writeEndObject();
        }
        out.writeEndArray();
        lines("lines", housed.lines());
        out.writeEndObject();
    }

    private void delivery(Delivery delivery) throws IOException {
        out.writeStartObject();
        out.writeStringField("supplier", delivery.supplier());
        out.writeBooleanField("own", delivery.own());
        out.writeNumberField("lots", delivery.lots());
        out.writeNumberField("units", delivery.units());
        out.writeNumberField("parts", delivery.parts());
        out.writeNumberField("delivery", delivery.charge());
        out.writeNumberField("lead_days", delivery.leadDays());
        out.writeEndObject();
    }

    private void shortage(Shortage shortage) throws IOException {
        out.writeStartObject();
        out.writeBooleanField("most_proved", shortage.most());
        out.writeBooleanField("looked", shortage.looked());
        out.writeArrayFieldStart("causes");
        for (Cause cause : shortage.causes()) {
            out.writeStartObject();
            out.writeStringField("limit", cause.limit());
            out.writeStringField("line", cause.line().orElse(null));
            out.writeStringField("message", cause.message());
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeArrayFieldStart("lacks");
        for (Lack lack : shortage.lacks()) {
            out.writeStartObject();
            out.writeStringField("sku", lack.sku());
            out.writeStringField("description", lack.description());
            out.writeNumberField("units", lack.units());
            out.writeObjectFieldStart("by_line");
            for (Map.Entry<String, Integer> line : lack.byLine().entrySet()) {
                out.writeNumberField(line.getKey(), line.getValue());
            }
            out.writeEndObject();
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeFieldName("later");
        if (shortage.later().isPresent()) {
            out.writeStartObject();
            parts.number("price", Optional.of(shortage.later().get().price()));
            out.writeNumberField("lead_days", shortage.later().get().leadDays());
            lines("purchases", shortage.later().get().purchases());
            out.writeEndObject();
        } else {
            out.writeNull();
        }
        out.writeEndObject();
    }
}
