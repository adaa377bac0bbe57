package sledwright.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.Optional;
import sledwright.domain.Energy;
import sledwright.report.CompareView.CurveView;
import sledwright.report.CompareView.Extra;
import sledwright.report.CompareView.PointView;
import sledwright.report.CompareView.TogetherView;

/** A comparison as JSON, but for its builds. */
final class CompareJson {

    private CompareJson() {
    }

    static void write(CompareView view, JsonGenerator out) throws IOException {
        out.writeStringField("request", view.request());
        out.writeStringField("currency", view.currency());
        out.writeStringField("status", view.status().label());
        out.writeNumberField("machines", view.machines());
        energy(view, out);
        out.writeBooleanField("by_platform", view.byPlatform());
        out.writeArrayFieldStart("curves");
        for (CurveView curve : view.curves()) {
            curve(curve, out);
        }
        out.writeEndArray();
        together(view, out);
    }

    private static void energy(CompareView view, JsonGenerator out) throws IOException {
        if (view.energy().isEmpty()) {
            out.writeNullField("energy");
            return;
        }
        Energy energy = view.energy().get();
        out.writeObjectFieldStart("energy");
        out.writeNumberField("years", Decimals.of(energy.years()));
        number("price_per_kwh", view.pricePerKwh(), out);
        out.writeNumberField("duty", Decimals.of(energy.duty()));
        out.writeEndObject();
    }

    private static void curve(CurveView curve, JsonGenerator out) throws IOException {
        out.writeStartObject();
        out.writeStringField("figure", curve.axis().label());
        out.writeStringField("unit", curve.axis().unit());
        out.writeBooleanField("less_is_better", curve.axis().lessIsBetter());
        out.writeStringField("cost", curve.cost().label());
        if (curve.platform().isPresent()) {
            out.writeStringField("platform", curve.platform().get());
        } else {
            out.writeNullField("platform");
        }
        out.writeStringField("status", curve.status().label());
        out.writeNumberField("proved_points", curve.proved());
        number("bound", curve.bound(), out);
        out.writeArrayFieldStart("points");
        for (PointView point : curve.points()) {
            point(point, out);
        }
        out.writeEndArray();
        out.writeEndObject();
    }

    private static void point(PointView point, JsonGenerator out) throws IOException {
        out.writeStartObject();
        out.writeNumberField("build", point.build());
        out.writeNumberField("cost", point.cost());
        out.writeNumberField("value", Decimals.of(point.figure()));
        number("per_unit", point.perUnit(), out);
        number("extra_cost", point.extra().map(Extra::cost), out);
        number("extra_value", point.extra().map(extra -> Decimals.of(extra.figure())), out);
        number("extra_per_unit", point.extra().map(Extra::perUnit), out);
        out.writeBooleanField("knee", point.knee());
        out.writeBooleanField("best_per_unit", point.bestPerUnit());
        out.writeBooleanField("foremost", point.foremost());
        out.writeNumberField("price", point.price());
        number("energy_cost", point.energy(), out);
        number("total_cost", point.energy().map(energy -> point.total()), out);
        out.writeEndObject();
    }

    private static void together(CompareView view, JsonGenerator out) throws IOException {
        if (view.together().isEmpty()) {
            out.writeNullField("together");
            return;
        }
        TogetherView all = view.together().get();
        out.writeObjectFieldStart("together");
        out.writeNumberField("share", Decimals.of(all.share()));
        out.writeBooleanField("complete", all.complete());
        out.writeArrayFieldStart("builds");
        for (int number : all.builds()) {
            out.writeNumber(number);
        }
        out.writeEndArray();
        out.writeEndObject();
    }

    private static void number(String key, Optional<BigDecimal> value, JsonGenerator out) throws IOException {
        if (value.isPresent()) {
            out.writeNumberField(key, value.get());
        } else {
            out.writeNullField(key);
        }
    }
}
