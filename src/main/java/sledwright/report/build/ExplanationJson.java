package sledwright.report.build;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import sledwright.explain.Explanation;
import sledwright.explain.conflict.Lacks;
import sledwright.explain.conflict.Relaxation;
import sledwright.explain.steps.Steps;
import sledwright.explain.whynot.WhyNot;
import sledwright.words.Numbers;

/** Explanations as JSON: conflicts and ways out, why not, and what more costs. */
public final class ExplanationJson {

    private final JsonGenerator out;
    private final JsonParts parts;

    public ExplanationJson(JsonGenerator out) {
        this.out = out;
        parts = new JsonParts(out);
    }

    public void explanation(Explanation explanation) throws IOException {
        out.writeArrayFieldStart("conflicts");
        for (var conflict : explanation.conflicts()) {
            out.writeStartObject();
            parts.strings("keys", conflict.keys());
            out.writeArrayFieldStart("demands");
            for (var member : conflict.members()) {
                out.writeStartObject();
                out.writeStringField("key", member.key());
                parts.string("sku", member.sku());
                out.writeStringField("words", member.words().toString());
                out.writeEndObject();
            }
            out.writeEndArray();
            parts.strings("rules", conflict.rules());
            out.writeStringField("message", conflict.message());
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeArrayFieldStart("relaxations");
        for (Relaxation relaxation : explanation.relaxations()) {
            relaxation(relaxation);
        }
        out.writeEndArray();
        out.writeArrayFieldStart("catalog_lacks");
        for (Lacks.Lack lack : explanation.lacks()) {
            out.writeStartObject();
            out.writeStringField("platform", lack.platform());
            out.writeStringField("message", lack.message());
            out.writeEndObject();
        }
        out.writeEndArray();
        parts.strings("notes", explanation.notes());
    }

    private void relaxation(Relaxation relaxation) throws IOException {
        out.writeStartObject();
        parts.strings("keys", relaxation.keys());
        out.writeArrayFieldStart("changes");
        for (Relaxation.Change change : relaxation.changes()) {
            out.writeStartObject();
            out.writeStringField("key", change.key());
            parts.string("sku", change.sku());
            parts.string("from", Optional.of(change.from()).filter(value -> !value.isEmpty()));
            parts.string("to", Optional.of(change.to()).filter(value -> !value.isEmpty()));
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeNumberField("price", relaxation.price());
        out.writeStringField("message", relaxation.message());
        out.writeEndObject();
    }

    public void whyNot(WhyNot answer) throws IOException {
        out.writeStartObject();
        out.writeStringField("sku", answer.sku());
        out.writeStringField("verdict", answer.verdict().label());
        parts.strings("rules", answer.rules());
        parts.number("price", answer.offer().map(WhyNot.Offer::price));
        parts.number("extra", answer.offer().map(WhyNot.Offer::extra));
        out.writeObjectFieldStart("difference");
        for (Map.Entry<String, BigDecimal> kind : answer.offer().map(WhyNot.Offer::difference).orElse(Map.of()).entrySet()) {
            out.writeNumberField(kind.getKey(), kind.getValue());
        }
        out.writeEndObject();
        parts.number("break_even", answer.offer().flatMap(WhyNot.Offer::breakEven));
        out.writeNumberField("break_even_units", answer.offer().map(WhyNot.Offer::units).orElse(0));
        out.writeStringField("message", answer.message());
        out.writeEndObject();
    }

    public void steps(Steps steps) throws IOException {
        out.writeArrayFieldStart("requirements");
        for (Steps.Curve curve : steps.curves()) {
            out.writeStartObject();
            out.writeStringField("key", curve.key());
            parts.string("name", curve.name());
            out.writeNumberField("asked", Numbers.decimal(curve.asked()));
            out.writeArrayFieldStart("steps");
            for (Steps.Step step : curve.steps()) {
                out.writeStartObject();
                out.writeNumberField("up_to", Numbers.decimal(step.upTo()));
                out.writeNumberField("best", step.best());
                out.writeNumberField("change", step.change());
                out.writeNumberField("price", step.price());
                out.writeBooleanField("within_limit", step.within());
                out.writeBooleanField("asked", curve.isAsked(step));
                out.writeEndObject();
            }
            out.writeEndArray();
            out.writeBooleanField("first", curve.first());
            out.writeBooleanField("last", curve.last());
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeArrayFieldStart("parts");
        for (Steps.PriceRange part : steps.parts()) {
            out.writeStartObject();
            out.writeStringField("sku", part.sku());
            out.writeNumberField("units", part.units());
            out.writeNumberField("unit_price", part.unitPrice());
            out.writeNumberField("from", part.from());
            parts.number("to", part.to());
            out.writeStringField("from_set_by", part.below().label());
            out.writeStringField("to_set_by", part.above().label());
            out.writeEndObject();
        }
        out.writeEndArray();
        parts.strings("notes", steps.notes());
    }
}
