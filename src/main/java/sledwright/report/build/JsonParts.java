package sledwright.report.build;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import sledwright.desk.view.AnswerDay;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.Earnings;
import sledwright.desk.view.Line;
import sledwright.desk.view.MachineView;
import sledwright.desk.view.Payment;
import sledwright.domain.Card;
import sledwright.domain.Drive;
import sledwright.domain.Fitout;
import sledwright.domain.Housed;
import sledwright.domain.Volume;
import sledwright.metrics.Figures;
import sledwright.metrics.WorkDone;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** What several documents hold: builds with their lines, violations, and values that may be absent. */
public final class JsonParts {

    private static final double NOT_KNOWN = -1;

    private final JsonGenerator out;

    public JsonParts(JsonGenerator out) {
        this.out = out;
    }

    /** The day of an answer, and what the shop should know before it offers it. */
    public void day(AnswerDay day) throws IOException {
        out.writeStringField("today", day.today().toString());
        out.writeStringField("priced_on", day.pricedOn().toString());
        string("valid_until", day.validUntil().map(LocalDate::toString));
        strings("warnings", day.warnings());
    }

    /** What is paid for a price, and what the shop is left of it; a customer sees null there. */
    public void payment(Payment pays, Optional<Earnings> earned) throws IOException {
        number("discount_percent", pays.percent());
        out.writeBooleanField("agreed", pays.agreed());
        out.writeNumberField("net", pays.net());
        number("tax", pays.tax().map(Payment.Tax::amount));
        out.writeNumberField("gross", pays.gross());
        number("earned", earned.filter(Earnings::isKnown).map(Earnings::margin));
        number("earned_percent", earned.filter(Earnings::isKnown).flatMap(Earnings::percent));
    }

    /** A build and the day on which its last part is here. */
    public void build(BuildView build, AnswerDay day) throws IOException {
        build(build);
        out.writeStringField("ready_on", day.in(build.leadDays()).toString());
    }

    public void build(BuildView build) throws IOException {
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
        fitout(build.heaviest().fitout());
        out.writeNumberField("cores", figures.cores());
        out.writeNumberField("memory_gb", figures.memoryGb());
        out.writeNumberField("usable_gb", Numbers.decimal(figures.usableGb()));
        speed(figures);
        out.writeNumberField("throughput", Numbers.decimal(figures.throughput()));
        out.writeBooleanField("throughput_estimated", figures.throughputEstimated());
        watts(figures);
        out.writeNumberField("base_ghz", Numbers.decimal(figures.baseGhz()));
        out.writeNumberField("all_core_ghz", Numbers.decimal(figures.allCoreGhz()));
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
            volumes(machine.fitout());
            speed(machine.figures());
            watts(machine.figures());
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeObjectFieldStart("figures_of");
        List<Figures> each = build.machines().stream().map(MachineView::figures).toList();
        out.writeNumberField("modules", each.indexOf(build.heaviest().figures()));
        out.writeNumberField("slots", each.indexOf(build.heaviest().figures()));
        place("memory_mts", figures.speed().mts(), each, machine -> machine.speed().mts());
        place("speed_set_by", figures.speed().mts(), each, machine -> machine.speed().mts());
        place("bandwidth_gbs", figures.bandwidthGbs(), each, Figures::bandwidthGbs);
        place("work", figures.work(), each, Figures::work);
        place("work_held_by", figures.work(), each, Figures::work);
        place("load_w", figures.loadW(), each, Figures::loadW);
        place("wall_w", figures.wallW().orElse(NOT_KNOWN), each, machine -> machine.wallW().orElse(NOT_KNOWN));
        out.writeEndObject();
    }

    /** Names the first machine that has the figure, by its place among {@code builds}. */
    private void place(String key, double figure, List<Figures> machines, ToDoubleFunction<Figures> of) throws IOException {
        out.writeNumberField(key, machines.stream().map(of::applyAsDouble).toList().indexOf(figure));
    }

    /** What a machine's part numbers decide, though they are alike in all else. */
    private void speed(Figures figures) throws IOException {
        out.writeNumberField("memory_mts", figures.speed().mts());
        out.writeStringField("speed_set_by", figures.speed().setBy().label());
        out.writeNumberField("bandwidth_gbs", Numbers.decimal(figures.bandwidthGbs()));
        out.writeNumberField("work", Numbers.decimal(figures.work()));
        string("work_held_by", Optional.of(figures.workHeldBy()).filter(held -> held != WorkDone.Held.NOTHING).map(WorkDone.Held::label));
    }

    private void watts(Figures figures) throws IOException {
        out.writeNumberField("load_w", Numbers.decimal(figures.loadW()));
        number("wall_w", figures.wallW().stream().mapToObj(Numbers::decimal).findFirst());
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

    /** Drives, cards, extras and enclosures. */
    private void fitout(Fitout fitout) throws IOException {
        volumes(fitout);
        string("driver", fitout.driver());
        out.writeObjectFieldStart("cards");
        for (Map.Entry<String, Card> card : fitout.cards().entrySet()) {
            out.writeStringField(card.getKey(), card.getValue().sku());
        }
        out.writeEndObject();
        out.writeObjectFieldStart("extras");
        for (Map.Entry<String, Integer> extra : fitout.extrasBySku().entrySet()) {
            out.writeNumberField(extra.getKey(), extra.getValue());
        }
        out.writeEndObject();
        out.writeArrayFieldStart("enclosures");
        if (fitout.housed().isPresent()) {
            Housed housed = fitout.housed().get();
            out.writeStartObject();
            out.writeStringField("sku", housed.enclosure().sku());
            out.writeStringField("supply", housed.supply().sku());
            out.writeNumberField("supplies", housed.supply().count());
            out.writeNumberField("count", housed.count());
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    private void volumes(Fitout fitout) throws IOException {
        out.writeArrayFieldStart("volumes");
        for (Volume volume : fitout.volumes()) {
            out.writeStartObject();
            out.writeStringField("name", volume.name());
            out.writeNumberField("level", volume.level().number());
            out.writeStringField("group", volume.group());
            strings("drives", volume.drives().stream().map(Drive::sku).toList());
            strings("hot_spares", volume.hotSpares().stream().map(Drive::sku).toList());
            out.writeNumberField("usable_gb", Numbers.decimal(volume.usableGb()));
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    public void line(Line line) throws IOException {
        out.writeStartObject();
        out.writeStringField("kind", line.kind().label());
        out.writeStringField("sku", line.sku());
        out.writeStringField("description", line.description());
        string("lot", line.source().map(Line.Source::lot).filter(told -> !told.isEmpty()));
        string("supplier", line.source().map(Line.Source::supplier).filter(told -> !told.isEmpty()));
        string("condition", line.source().map(Line.Source::condition));
        out.writeFieldName("lead_days");
        if (line.source().isPresent()) {
            out.writeNumber(line.source().get().leadDays());
        } else {
            out.writeNull();
        }
        out.writeNumberField("quantity", line.quantity());
        number("unit_cost", line.source().flatMap(Line.Source::unitCost));
        out.writeNumberField("unit_price", line.unitPrice());
        out.writeNumberField("total", line.total());
        out.writeEndObject();
    }

    public void violations(String key, List<Violation> violations) throws IOException {
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

    public void string(String key, Optional<String> value) throws IOException {
        if (value.isPresent()) {
            out.writeStringField(key, value.get());
        } else {
            out.writeNullField(key);
        }
    }

    public void number(String key, Optional<BigDecimal> value) throws IOException {
        if (value.isPresent()) {
            out.writeNumberField(key, value.get());
        } else {
            out.writeNullField(key);
        }
    }

    public void strings(String key, List<?> values) throws IOException {
        out.writeArrayFieldStart(key);
        for (Object value : values) {
            out.writeString(value.toString());
        }
        out.writeEndArray();
    }
}
