package sledwright.report.compare;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.CompareView;
import sledwright.desk.view.CompareView.CurveView;
import sledwright.desk.view.CompareView.Extra;
import sledwright.desk.view.CompareView.PointView;
import sledwright.desk.view.CompareView.TogetherView;
import sledwright.domain.Energy;
import sledwright.report.build.JsonParts;
import sledwright.report.text.Json;
import sledwright.words.Numbers;

/** A comparison as JSON. */
public final class CompareJson {

    private final JsonGenerator out;
    private final JsonParts parts;

    private CompareJson(JsonGenerator out) {
        this.out = out;
        parts = new JsonParts(out);
    }

    public static String of(CompareView view) {
        return Json.document(out -> write(view, out));
    }

    private static void write(CompareView view, JsonGenerator out) throws IOException {
        new CompareJson(out).comparison(view);
    }

    private void comparison(CompareView view) throws IOException {
        out.writeStringField("request", view.request());
        out.writeStringField("currency", view.currency());
        out.writeStringField("status", view.status().label());
        out.writeNumberField("machines", view.machines());
        parts.day(view.day());
        energy(view);
        parts.number("discount_percent", view.discount().percent());
        out.writeBooleanField("by_platform", view.byPlatform());
        out.writeArrayFieldStart("curves");
        for (CurveView curve : view.curves()) {
            curve(curve);
        }
        out.writeEndArray();
        together(view);
        out.writeArrayFieldStart("builds");
        int number = 0;
        for (BuildView build : view.builds()) {
            out.writeStartObject();
            out.writeNumberField("number", ++number);
            parts.build(build, view.day());
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    private void energy(CompareView view) throws IOException {
        if (view.energy().isEmpty()) {
            out.writeNullField("energy");
            return;
        }
        Energy energy = view.energy().get();
        out.writeObjectFieldStart("energy");
        out.writeNumberField("years", Numbers.decimal(energy.years()));
        parts.number("price_per_kwh", view.pricePerKwh());
        out.writeNumberField("duty", Numbers.decimal(energy.duty()));
        out.writeEndObject();
    }

    private void curve(CurveView curve) throws IOException {
        out.writeStartObject();
        out.writeStringField("figure", curve.axis().label());
        out.writeStringField("unit", curve.axis().unit());
        out.writeBooleanField("less_is_better", curve.axis().lessIsBetter());
        out.writeStringField("cost", curve.cost().label());
        parts.string("platform", curve.platform());
        out.writeStringField("status", curve.status().label());
        out.writeNumberField("proved_points", curve.proved());
        parts.number("bound", curve.bound());
        out.writeArrayFieldStart("points");
        for (PointView point : curve.points()) {
            point(point);
        }
        out.writeEndArray();
        out.writeEndObject();
    }

    private void point(PointView point) throws IOException {
        out.writeStartObject();
        out.writeNumberField("build", point.build());
        out.writeNumberField("cost", point.cost());
        out.writeNumberField("value", Numbers.decimal(point.figure()));
        parts.number("per_unit", point.perUnit());
        parts.number("extra_cost", point.extra().map(Extra::cost));
        parts.number("extra_value", point.extra().map(extra -> Numbers.decimal(extra.figure())));
        parts.number("extra_per_unit", point.extra().map(Extra::perUnit));
        out.writeBooleanField("knee", point.knee());
        out.writeBooleanField("best_per_unit", point.bestPerUnit());
        out.writeBooleanField("foremost", point.foremost());
        out.writeNumberField("price", point.price());
        parts.number("energy_cost", point.energy());
        parts.number("total_cost", point.energy().map(energy -> point.total()));
        out.writeEndObject();
    }

    private void together(CompareView view) throws IOException {
        if (view.together().isEmpty()) {
            out.writeNullField("together");
            return;
        }
        TogetherView all = view.together().get();
        out.writeObjectFieldStart("together");
        out.writeNumberField("share", Numbers.decimal(all.share()));
        out.writeBooleanField("complete", all.complete());
        out.writeArrayFieldStart("builds");
        for (int number : all.builds()) {
            out.writeNumber(number);
        }
        out.writeEndArray();
        out.writeEndObject();
    }
}
