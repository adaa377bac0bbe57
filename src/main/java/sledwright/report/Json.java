package sledwright.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.explain.Explanation;
import sledwright.explain.Relaxation;
import sledwright.explain.Steps;
import sledwright.explain.WhyNot;
import sledwright.metrics.Figures;
import sledwright.planner.upgrade.BenchStep;
import sledwright.report.QuoteView.Alternative;
import sledwright.rules.Violation;

/** Views as JSON; docs/json.md describes every key. Money has the currency's digits, figures have no trailing zeros. */
public final class Json {

    private interface Content {
        void write(Json json) throws IOException;
    }

    private final JsonGenerator out;

    private Json(JsonGenerator out) {
        this.out = out;
    }

    public static String of(QuoteView view) {
        return render(json -> json.quote(view));
    }

    public static String of(CheckView view) {
        return render(json -> json.check(view));
    }

    public static String of(UpgradeView view) {
        return render(json -> json.upgrade(view));
    }

    public static String of(RestockView view) {
        return render(json -> RestockJson.write(view, json.out));
    }

    public static String of(CompareView view) {
        return render(json -> json.comparison(view));
    }

    public static String of(OrderView view) {
        return render(json -> OrderJson.write(view, json, json.out));
    }

    public static String of(CatalogView view) {
        return render(json -> CatalogJson.write(view, json.out));
    }

    public static String of(LabelView view) {
        return render(json -> LabelJson.write(view, json.out));
    }

    /** What another class writes into a document. */
    public interface Body {
        void write(JsonGenerator out) throws IOException;
    }

    /** A document whose keys another class writes, in the form of all documents. */
    public static String document(Body body) {
        return render(json -> body.write(json.out));
    }

    private static String render(Content content) {
        StringWriter text = new StringWriter();
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter(Separators.createDefaultInstance()
                .withObjectFieldValueSpacing(Separators.Spacing.AFTER).withArrayEmptySeparator("").withObjectEmptySeparator(""))
                .withObjectIndenter(lines).withArrayIndenter(lines);
        try (JsonGenerator out = new JsonFactory().createGenerator(text)) {
            out.setPrettyPrinter(printer);
            out.enable(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN);
            out.writeStartObject();
            content.write(new Json(out));
            out.writeEndObject();
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.append('\n').toString();
    }

    private void quote(QuoteView view) throws IOException {
        out.writeStringField("request", view.request());
        out.writeStringField("currency", view.currency());
        out.writeStringField("status", view.status().label());
        number("best", view.best());
        number("bound", view.bound());
        out.writeStringField("objective", view.objective().label());
        out.writeNumberField("machines", view.machines());
        out.writeArrayFieldStart("alternatives");
        for (Alternative alternative : view.alternatives()) {
            out.writeStartObject();
            out.writeNumberField("rank", alternative.rank());
            build(alternative.build());
            number("price_less_worth", alternative.priceLessWorth());
            strings("reasons", alternative.sentences());
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeBooleanField("alternatives_complete", view.complete());
        out.writeArrayFieldStart("why_not");
        for (WhyNot answer : view.explanation().whyNot()) {
            whyNot(answer);
        }
        out.writeEndArray();
        explanation(view.explanation());
        if (view.steps().isPresent()) {
            out.writeObjectFieldStart("steps");
            steps(view.steps().get());
            out.writeEndObject();
        } else {
            out.writeNullField("steps");
        }
    }

    void explanation(Explanation explanation) throws IOException {
        out.writeArrayFieldStart("conflicts");
        for (var conflict : explanation.conflicts()) {
            out.writeStartObject();
            strings("keys", conflict.keys());
            out.writeArrayFieldStart("demands");
            for (var member : conflict.members()) {
                out.writeStartObject();
                out.writeStringField("key", member.key());
                string("sku", member.sku());
                out.writeStringField("words", member.words());
                out.writeEndObject();
            }
            out.writeEndArray();
            strings("rules", conflict.rules());
            out.writeStringField("message", conflict.message());
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeArrayFieldStart("relaxations");
        for (Relaxation relaxation : explanation.relaxations()) {
            relaxation(relaxation);
        }
        out.writeEndArray();
        strings("notes", explanation.notes());
    }

    private void steps(Steps steps) throws IOException {
        out.writeArrayFieldStart("requirements");
        for (Steps.Curve curve : steps.curves()) {
            out.writeStartObject();
            out.writeStringField("key", curve.key());
            out.writeNumberField("asked", Decimals.of(curve.asked()));
            out.writeArrayFieldStart("steps");
            for (Steps.Step step : curve.steps()) {
                out.writeStartObject();
                out.writeNumberField("up_to", Decimals.of(step.upTo()));
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
            number("to", part.to());
            out.writeStringField("from_set_by", part.below().label());
            out.writeStringField("to_set_by", part.above().label());
            out.writeEndObject();
        }
        out.writeEndArray();
        strings("notes", steps.notes());
    }

    private void whyNot(WhyNot answer) throws IOException {
        out.writeStartObject();
        out.writeStringField("sku", answer.sku());
        out.writeStringField("verdict", answer.verdict().label());
        strings("rules", answer.rules());
        number("price", answer.offer().map(WhyNot.Offer::price));
        number("extra", answer.offer().map(WhyNot.Offer::extra));
        out.writeObjectFieldStart("difference");
        for (Map.Entry<String, BigDecimal> kind : answer.offer().map(WhyNot.Offer::difference).orElse(Map.of()).entrySet()) {
            out.writeNumberField(kind.getKey(), kind.getValue());
        }
        out.writeEndObject();
        number("break_even", answer.offer().flatMap(WhyNot.Offer::breakEven));
        out.writeNumberField("break_even_units", answer.offer().map(WhyNot.Offer::units).orElse(0));
        out.writeStringField("message", answer.message());
        out.writeEndObject();
    }

    private void relaxation(Relaxation relaxation) throws IOException {
        out.writeStartObject();
        strings("keys", relaxation.keys());
        out.writeArrayFieldStart("changes");
        for (Relaxation.Change change : relaxation.changes()) {
            out.writeStartObject();
            out.writeStringField("key", change.key());
            string("from", Optional.of(change.from()).filter(value -> !value.isEmpty()));
            string("to", Optional.of(change.to()).filter(value -> !value.isEmpty()));
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeNumberField("price", relaxation.price());
        out.writeStringField("message", relaxation.message());
        out.writeEndObject();
    }

    private void check(CheckView view) throws IOException {
        out.writeStringField("build", view.name());
        out.writeStringField("currency", view.currency());
        out.writeBooleanField("valid", view.valid());
        violations("violations", view.violations());
        build(view.build());
    }

    private void violations(String key, List<Violation> violations) throws IOException {
        out.writeArrayFieldStart(key);
        for (Violation violation : violations) {
            out.writeStartObject();
            out.writeStringField("rule", violation.rule());
            out.writeStringField("where", violation.where());
            out.writeStringField("message", violation.message());
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    private void upgrade(UpgradeView view) throws IOException {
        out.writeStringField("upgrade", view.request());
        out.writeStringField("currency", view.currency());
        out.writeStringField("status", view.status().label());
        out.writeNumberField("machines", view.machines());
        number("spend", view.upgrade().map(UpgradeView.Done::spend));
        number("bound", view.bound());
        number("parts", view.upgrade().map(UpgradeView.Done::parts));
        number("labour", view.upgrade().map(UpgradeView.Done::labour));
        number("licence", view.upgrade().map(UpgradeView.Done::licence));
        number("credit", view.upgrade().map(UpgradeView.Done::credit));
        violations("breaches", view.breaches());
        violations("misses", view.misses());
        out.writeFieldName("build");
        if (view.upgrade().isPresent()) {
            out.writeStartObject();
            build(view.upgrade().get().build());
            out.writeEndObject();
        } else {
            out.writeNull();
        }
        out.writeArrayFieldStart("work");
        for (UpgradeView.Work work : view.upgrade().map(UpgradeView.Done::work).orElse(List.of())) {
            work(work);
        }
        out.writeEndArray();
        strings("precautions", view.upgrade().filter(UpgradeView.Done::changes).map(done -> Precautions.BEFORE).orElse(List.of()));
        out.writeFieldName("whole");
        if (view.whole().isPresent()) {
            UpgradeView.Bought whole = view.whole().get();
            out.writeStartObject();
            out.writeNumberField("spend", whole.spend());
            out.writeNumberField("credit", whole.credit());
            number("extra", whole.extra());
            out.writeBooleanField("cheaper", whole.isCheaper());
            build(whole.build());
            out.writeEndObject();
        } else {
            out.writeNull();
        }
        out.writeBooleanField("whole_proved", view.wholeProved());
        explanation(view.explanation());
    }

    private void comparison(CompareView view) throws IOException {
        CompareJson.write(view, out);
        out.writeArrayFieldStart("builds");
        int number = 0;
        for (BuildView build : view.builds()) {
            out.writeStartObject();
            out.writeNumberField("number", ++number);
            build(build);
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    private void work(UpgradeView.Work work) throws IOException {
        out.writeStartObject();
        out.writeNumberField("machines", work.machines());
        out.writeArrayFieldStart("steps");
        for (BenchStep step : work.steps()) {
            out.writeStartObject();
            out.writeStringField("action", step.action().label());
            out.writeStringField("part", step.part().label());
            out.writeStringField("sku", step.sku());
            string("from", step.from());
            string("to", step.to());
            out.writeStringField("message", BenchText.sentence(step));
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeEndObject();
    }

    void build(BuildView build) throws IOException {
        Figures figures = build.figures();
        number("price", build.price());
        out.writeStringField("platform", build.platform());
        string("processor", build.processorSku());
        out.writeNumberField("processors", build.processors());
        string("cooling", build.cooling());
        string("supply", build.supply());
        out.writeNumberField("supplies", build.supplies());
        out.writeNumberField("machines", build.count());
        population(build.heaviest());
        out.writeNumberField("cores", figures.cores());
        out.writeNumberField("memory_gb", figures.memoryGb());
        out.writeNumberField("usable_gb", Decimals.of(figures.usableGb()));
        out.writeNumberField("memory_mts", figures.speed().mts());
        out.writeStringField("speed_set_by", figures.speed().setBy().label());
        out.writeNumberField("bandwidth_gbs", Decimals.of(figures.bandwidthGbs()));
        out.writeNumberField("throughput", Decimals.of(figures.throughput()));
        out.writeBooleanField("throughput_estimated", figures.throughputEstimated());
        out.writeNumberField("load_w", Decimals.of(figures.loadW()));
        number("wall_w", figures.wallW().stream().mapToObj(Decimals::of).findFirst());
        out.writeNumberField("base_ghz", Decimals.of(figures.baseGhz()));
        out.writeNumberField("all_core_ghz", Decimals.of(figures.allCoreGhz()));
        out.writeNumberField("spare_slots", figures.spareSlots());
        out.writeNumberField("lead_days", build.leadDays());
        out.writeArrayFieldStart("lines");
        for (Line line : build.lines()) {
            line(line);
        }
        out.writeEndArray();
        out.writeArrayFieldStart("builds");
        for (MachineView machine : build.machines()) {
            out.writeStartObject();
            out.writeNumberField("machines", machine.count());
            population(machine);
            out.writeNumberField("load_w", Decimals.of(machine.figures().loadW()));
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    private void population(MachineView machine) throws IOException {
        out.writeObjectFieldStart("modules");
        for (Map.Entry<String, Integer> entry : machine.modules().entrySet()) {
            out.writeNumberField(entry.getKey(), entry.getValue());
        }
        out.writeEndObject();
        out.writeObjectFieldStart("slots");
        for (Map.Entry<String, String> entry : machine.slots().entrySet()) {
            out.writeStringField(entry.getKey(), entry.getValue());
        }
        out.writeEndObject();
    }

    void line(Line line) throws IOException {
        out.writeStartObject();
        out.writeStringField("kind", line.kind().label());
        out.writeStringField("sku", line.sku());
        out.writeStringField("description", line.description());
        string("lot", line.source().map(Line.Source::lot));
        string("supplier", line.source().map(Line.Source::supplier));
        string("condition", line.source().map(Line.Source::condition));
        out.writeFieldName("lead_days");
        if (line.source().isPresent()) {
            out.writeNumber(line.source().get().leadDays());
        } else {
            out.writeNull();
        }
        out.writeNumberField("quantity", line.quantity());
        out.writeNumberField("unit_price", line.unitPrice());
        out.writeNumberField("total", line.total());
        out.writeEndObject();
    }

    void string(String key, Optional<String> value) throws IOException {
        if (value.isPresent()) {
            out.writeStringField(key, value.get());
        } else {
            out.writeNullField(key);
        }
    }

    void number(String key, Optional<BigDecimal> value) throws IOException {
        if (value.isPresent()) {
            out.writeNumberField(key, value.get());
        } else {
            out.writeNullField(key);
        }
    }

    void strings(String key, List<String> values) throws IOException {
        out.writeArrayFieldStart(key);
        for (String value : values) {
            out.writeString(value);
        }
        out.writeEndArray();
    }
}
