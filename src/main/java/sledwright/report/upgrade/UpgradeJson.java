package sledwright.report.upgrade;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import sledwright.desk.view.UpgradeView;
import sledwright.generator.Doubts;
import sledwright.planner.upgrade.BenchStep;
import sledwright.report.build.BenchText;
import sledwright.report.build.ExplanationJson;
import sledwright.report.build.JsonParts;
import sledwright.report.build.Precautions;
import sledwright.report.text.Json;
import sledwright.words.Numbers;

/** An upgrade as JSON. */
public final class UpgradeJson {

    private UpgradeJson() {
    }

    public static String of(UpgradeView view) {
        return Json.document(out -> write(view, out));
    }

    private static void write(UpgradeView view, JsonGenerator out) throws IOException {
        JsonParts parts = new JsonParts(out);
        out.writeStringField("upgrade", view.request());
        out.writeStringField("currency", view.currency());
        out.writeStringField("status", view.status().label());
        out.writeNumberField("machines", view.machines());
        parts.number("spend", view.upgrade().map(UpgradeView.Done::spend));
        parts.number("bound", view.bound());
        parts.number("parts", view.upgrade().map(UpgradeView.Done::parts));
        parts.number("labour", view.upgrade().map(UpgradeView.Done::labour));
        parts.number("licence", view.upgrade().map(UpgradeView.Done::licence));
        parts.number("credit", view.upgrade().map(UpgradeView.Done::credit));
        parts.day(view.day());
        parts.violations("breaches", view.breaches());
        parts.violations("misses", view.misses());
        out.writeArrayFieldStart("figures");
        for (UpgradeView.Reach reach : view.figures()) {
            out.writeStartObject();
            out.writeStringField("figure", reach.id());
            out.writeStringField("unit", reach.unit().strip());
            parts.number("least", reach.least().map(Numbers::decimal));
            parts.number("most", reach.most().map(Numbers::decimal));
            out.writeNumberField("now", Numbers.decimal(reach.now()));
            parts.number("then", reach.then().map(Numbers::decimal));
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeFieldName("build");
        if (view.upgrade().isPresent()) {
            out.writeStartObject();
            parts.build(view.upgrade().get().build(), view.day());
            out.writeEndObject();
        } else {
            out.writeNull();
        }
        out.writeArrayFieldStart("work");
        for (UpgradeView.Work work : view.upgrade().map(UpgradeView.Done::work).orElse(List.of())) {
            work(work, parts, out);
        }
        out.writeEndArray();
        parts.strings("precautions", view.upgrade().filter(UpgradeView.Done::changes).map(done -> Precautions.BEFORE).orElse(List.of()));
        out.writeFieldName("whole");
        if (view.whole().isPresent()) {
            UpgradeView.Bought whole = view.whole().get();
            out.writeStartObject();
            out.writeNumberField("spend", whole.spend());
            out.writeNumberField("credit", whole.credit());
            parts.number("extra", whole.extra());
            out.writeBooleanField("cheaper", whole.isCheaper());
            parts.build(whole.build(), view.day());
            out.writeEndObject();
        } else {
            out.writeNull();
        }
        parts.strings("doubts", Doubts.ofAll(List.of(view.doubts(), view.wholeDoubts())).causes().stream().sorted()
                .map(Doubts.Cause::label).toList());
        out.writeBooleanField("whole_proved", view.wholeProved());
        new ExplanationJson(out).explanation(view.explanation());
    }

    private static void work(UpgradeView.Work work, JsonParts parts, JsonGenerator out) throws IOException {
        out.writeStartObject();
        out.writeNumberField("machines", work.machines());
        out.writeArrayFieldStart("steps");
        for (BenchStep step : work.steps()) {
            out.writeStartObject();
            out.writeStringField("action", step.action().label());
            out.writeStringField("part", step.part().label());
            out.writeStringField("sku", step.sku());
            parts.string("from", step.from());
            parts.string("to", step.to());
            out.writeStringField("message", BenchText.sentence(step));
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeEndObject();
    }
}
