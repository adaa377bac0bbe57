package sledwright.report.quote;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import sledwright.compare.PricePoints;
import sledwright.desk.view.QuoteView;
import sledwright.desk.view.QuoteView.Alternative;
import sledwright.explain.whynot.WhyNot;
import sledwright.generator.Doubts;
import sledwright.report.build.ExplanationJson;
import sledwright.report.build.JsonParts;
import sledwright.report.text.Json;

/** A quote as JSON. */
public final class QuoteJson {

    private QuoteJson() {
    }

    public static String of(QuoteView view) {
        return Json.document(out -> write(view, out));
    }

    private static void write(QuoteView view, JsonGenerator out) throws IOException {
        JsonParts parts = new JsonParts(out);
        ExplanationJson explanations = new ExplanationJson(out);
        out.writeStringField("request", view.request());
        out.writeStringField("currency", view.currency());
        out.writeStringField("status", view.status().label());
        parts.number("best", view.best());
        parts.number("bound", view.bound());
        out.writeStringField("objective", view.objective().label());
        out.writeNumberField("machines", view.machines());
        parts.day(view.day());
        out.writeArrayFieldStart("alternatives");
        for (Alternative alternative : view.alternatives()) {
            out.writeStartObject();
            out.writeNumberField("rank", alternative.rank());
            parts.build(alternative.build(), view.day());
            parts.string("mark", alternative.mark().map(PricePoints.Mark::label));
            parts.number("price_less_worth", alternative.priceLessWorth());
            parts.payment(alternative.pays(), alternative.earned());
            parts.strings("reasons", alternative.sentences());
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeBooleanField("alternatives_complete", view.complete());
        parts.strings("doubts", view.doubts().causes().stream().sorted().map(Doubts.Cause::label).toList());
        out.writeArrayFieldStart("why_not");
        for (WhyNot answer : view.explanation().whyNot()) {
            explanations.whyNot(answer);
        }
        out.writeEndArray();
        explanations.explanation(view.explanation());
        if (view.steps().isPresent()) {
            out.writeObjectFieldStart("steps");
            explanations.steps(view.steps().get());
            out.writeEndObject();
        } else {
            out.writeNullField("steps");
        }
    }
}
