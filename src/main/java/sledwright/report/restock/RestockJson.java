package sledwright.report.restock;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.OptionalLong;
import sledwright.desk.view.RestockView;
import sledwright.explain.conflict.Conflict;
import sledwright.report.text.Json;
import sledwright.restock.Levels;
import sledwright.restock.RestockPlan;
import sledwright.restock.RestockPlan.Buy;
import sledwright.restock.RestockPlan.ClassOutlook;
import sledwright.restock.RestockPlan.CurvePoint;
import sledwright.restock.RestockPlan.Expected;
import sledwright.restock.RestockPlan.PartOutlook;
import sledwright.words.Numbers;

/** A restocking plan as JSON. */
public final class RestockJson {

    private final RestockView view;
    private final JsonGenerator out;

    private RestockJson(RestockView view, JsonGenerator out) {
        this.view = view;
        this.out = out;
    }

    public static String of(RestockView view) {
        return Json.document(out -> write(view, out));
    }

    private static void write(RestockView view, JsonGenerator out) throws IOException {
        new RestockJson(view, out).write();
    }

    private void write() throws IOException {
        RestockPlan plan = view.plan();
        out.writeStringField("request", plan.request().name());
        out.writeStringField("currency", view.currency());
        out.writeNumberField("seed", view.seed());
        out.writeNumberField("courses", plan.courses());
        out.writeBooleanField("complete", !plan.late());
        optional("budget", plan.request().budget());
        money("cost", plan.cost());
        expected("expected_margin", plan.with());
        expected("without", plan.without());
        expected("gain", plan.gain());
        out.writeObjectFieldStart("bound");
        money("most", plan.bound());
        money("rounded_in_hindsight", plan.rounded());
        money("rounded_as_orders_come", plan.roundedInSample());
        money("plan_in_hindsight", plan.hindsight());
        money("plan_as_orders_come", plan.inSample());
        out.writeNumberField("gap", Numbers.decimal(plan.gap()));
        out.writeNumberField("rounded_gap", Numbers.decimal(plan.roundedGap()));
        out.writeNumberField("builds", plan.builds());
        out.writeBooleanField("no_other_build", plan.closed());
        out.writeEndObject();
        out.writeArrayFieldStart("buy");
        for (Buy buy : plan.buys()) {
            out.writeStartObject();
            out.writeStringField("sku", buy.offer().sku());
            out.writeStringField("supplier", buy.offer().supplier());
            out.writeStringField("condition", buy.offer().condition().label());
            out.writeNumberField("quantity", buy.quantity());
            money("unit_cost", buy.offer().unitCost());
            money("cost", buy.cost());
            out.writeNumberField("lead_days", buy.offer().leadDays());
            out.writeStringField("why", buy.why());
            out.writeEndObject();
        }
        out.writeEndArray();
        classes();
        out.writeArrayFieldStart("curve");
        for (CurvePoint point : plan.curve()) {
            out.writeStartObject();
            money("budget", point.budget());
            money("spent", point.spent());
            expected("expected_margin", point.margin());
            out.writeEndObject();
        }
        out.writeEndArray();
        parts();
        levels();
    }

    private void classes() throws IOException {
        out.writeArrayFieldStart("classes");
        for (ClassOutlook outlook : view.plan().classes()) {
            out.writeStartObject();
            out.writeStringField("name", outlook.name());
            out.writeNumberField("orders", Numbers.decimal(outlook.orders()));
            out.writeNumberField("filled", Numbers.decimal(outlook.filled()));
            out.writeNumberField("filled_half_width", Numbers.decimal(outlook.halfWidth()));
            out.writeNumberField("filled_without", Numbers.decimal(outlook.without()));
            optional("pays", outlook.revenue());
            optional("costs", outlook.cost());
            out.writeBooleanField("possible", outlook.impossible().isEmpty());
            out.writeArrayFieldStart("conflicts");
            if (outlook.impossible().isPresent()) {
                for (Conflict conflict : outlook.impossible().get().conflicts()) {
                    out.writeString(conflict.message());
                }
            }
            out.writeEndArray();
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    private void parts() throws IOException {
        out.writeArrayFieldStart("parts");
        for (PartOutlook part : view.plan().parts()) {
            out.writeStartObject();
            out.writeStringField("sku", part.sku());
            out.writeNumberField("on_shelf", part.standing());
            out.writeNumberField("bought", part.bought());
            out.writeNumberField("used", Numbers.decimal(part.used()));
            out.writeNumberField("left", Numbers.decimal(part.left()));
            money("left_loses", part.lost());
            money("worth", part.worth());
            money("one_more", part.oneMore());
            optional("pay_at_most", part.mostPrice());
            out.writeBooleanField("dead", part.isDead());
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    private void levels() throws IOException {
        out.writeArrayFieldStart("levels");
        for (Levels.Level level : view.levels()) {
            out.writeStartObject();
            out.writeStringField("sku", level.sku());
            out.writeStringField("supplier", level.supplier());
            out.writeNumberField("lead_days", level.leadDays());
            out.writeNumberField("per_month", Numbers.decimal(level.perMonth()));
            out.writeNumberField("deviation", Numbers.decimal(level.deviation()));
            out.writeNumberField("reorder_point", level.point());
            out.writeNumberField("lot", level.lot());
            out.writeNumberField("safety_stock", Numbers.decimal(level.service().safetyStock()));
            out.writeNumberField("cycle_service", Numbers.decimal(level.service().cycleService()));
            out.writeNumberField("expected_shortage", Numbers.decimal(level.service().expectedShortage()));
            out.writeNumberField("fill_rate", Numbers.decimal(level.service().fillRate()));
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    private void expected(String name, Expected expected) throws IOException {
        out.writeObjectFieldStart(name);
        money("mean", expected.mean());
        money("half_width", expected.halfWidth());
        out.writeEndObject();
    }

    private void money(String name, double minor) throws IOException {
        out.writeNumberField(name, view.amount(minor));
    }

    private void optional(String name, OptionalLong minor) throws IOException {
        if (minor.isPresent()) {
            money(name, minor.getAsLong());
        } else {
            out.writeNullField(name);
        }
    }
}
