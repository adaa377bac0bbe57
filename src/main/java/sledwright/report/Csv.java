package sledwright.report;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.dataformat.csv.CsvFactory;
import com.fasterxml.jackson.dataformat.csv.CsvGenerator;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sledwright.catalog.intake.Formulas;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.CatalogView;
import sledwright.desk.view.CheckView;
import sledwright.desk.view.CompareView;
import sledwright.desk.view.Decimals;
import sledwright.desk.view.LabelView;
import sledwright.desk.view.Line;
import sledwright.desk.view.QuoteView;
import sledwright.desk.view.QuoteView.Alternative;
import sledwright.desk.view.RestockView;
import sledwright.desk.view.UpgradeView;
import sledwright.metrics.Figures;
import sledwright.rules.Violation;

/**
 * Views as comma-separated values with a header, for spreadsheets. A text that a spreadsheet would run as a formula gets an
 * apostrophe before it.
 */
public final class Csv {

    private Csv() {
    }

    /** One row for each alternative. */
    public static String of(QuoteView view) {
        List<String> header = List.of("rank", "request", "status", "machines", "price", "currency", "platform", "processor", "processors",
                "cooling", "supply", "supplies", "modules", "cores", "memory_gb", "usable_gb", "memory_mts", "speed_set_by",
                "bandwidth_gbs", "throughput", "throughput_estimated", "load_w", "wall_w", "base_ghz", "all_core_ghz", "spare_slots",
                "lead_days", "price_less_worth", "reasons");
        return write(header, view.alternatives().stream().map(alternative -> row(view, alternative)).toList());
    }

    private static List<Object> row(QuoteView view, Alternative alternative) {
        BuildView build = alternative.build();
        Figures figures = build.figures();
        return List.of(alternative.rank(), view.request(), view.status().label(), build.count(), build.price().<Object>map(price -> price).orElse(""),
                view.currency(), build.platform(), build.processorSku().orElse(""), build.processors(), build.cooling().orElse(""),
                build.supply().orElse(""), build.supplies(), modules(build.heaviest().modules()), figures.cores(), figures.memoryGb(),
                Decimals.of(figures.usableGb()), figures.speed().mts(), figures.speed().setBy().label(),
                Decimals.of(figures.bandwidthGbs()), Decimals.of(figures.throughput()), String.valueOf(figures.throughputEstimated()),
                Decimals.of(figures.loadW()),
                figures.wallW().isPresent() ? Decimals.of(figures.wallW().getAsDouble()) : "", Decimals.of(figures.baseGhz()),
                Decimals.of(figures.allCoreGhz()), figures.spareSlots(), build.leadDays(),
                alternative.priceLessWorth().<Object>map(amount -> amount).orElse(""), String.join(" ", alternative.sentences()));
    }

    static String modules(Map<String, Integer> modules) {
        return modules.entrySet().stream().map(entry -> entry.getValue() + " x " + entry.getKey()).collect(Collectors.joining("; "));
    }

    /** One row for each line of an upgrade: what stays, what is paid for, what is pulled. */
    public static String of(UpgradeView view) {
        List<String> header = List.of("upgrade", "status", "currency", "kind", "sku", "description", "lot", "supplier", "condition", "lead_days",
                "quantity", "unit_price", "total");
        List<Line> lines = view.upgrade().map(done -> done.build().lines()).orElse(List.of());
        return write(header, lines.stream().map(line -> List.<Object>of(view.request(), view.status().label(), view.currency(), line.kind().label(),
                line.sku(), line.description(), line.source().map(Line.Source::lot).orElse(""), line.source().map(Line.Source::supplier).orElse(""),
                line.source().map(Line.Source::condition).orElse(""), line.source().<Object>map(Line.Source::leadDays).orElse(""),
                line.quantity(), line.unitPrice(), line.total())).toList());
    }

    /** One row for each purchase. */
    public static String of(RestockView view) {
        return write(List.of("sku", "supplier", "condition", "quantity", "unit_cost", "cost", "currency", "lead_days", "why"),
                view.plan().buys().stream().map(buy -> List.<Object>of(buy.offer().sku(), buy.offer().supplier(), buy.offer().condition().label(),
                        buy.quantity(), view.amount(buy.offer().unitCost()), view.amount(buy.cost()), view.currency(), buy.offer().leadDays(),
                        buy.why())).toList());
    }

    /** One row for each broken rule. */
    public static String of(CheckView view) {
        List<List<Object>> rows = new ArrayList<>();
        for (Violation violation : view.violations()) {
            rows.add(List.of(violation.rule(), violation.where(), violation.message()));
        }
        return write(List.of("rule", "where", "message"), rows);
    }

    /** One row for each point of each curve. */
    public static String of(CompareView view) {
        return write(CompareRows.HEADER, CompareRows.of(view));
    }

    /** One row for each kind that is counted. */
    public static String of(CatalogView view) {
        return write(List.of("kind", "count"), view.counts().entrySet().stream()
                .map(entry -> List.<Object>of(entry.getKey(), entry.getValue())).toList());
    }

    /** One row of memory.csv for each module. */
    public static String of(LabelView view) {
        return write(LabelView.COLUMNS, view.rows().stream().map(row -> LabelView.cells(row).stream()
                .map(cell -> cell.orElse("")).toList()).toList());
    }

    /** Rows under a header; a cell is a text, a whole number or an amount. */
    public static String write(List<String> header, List<List<Object>> rows) {
        CsvSchema.Builder schema = CsvSchema.builder().setLineSeparator("\n");
        header.forEach(schema::addColumn);
        StringWriter text = new StringWriter();
        try (CsvGenerator out = CsvFactory.builder().build().createGenerator(text)) {
            out.setSchema(schema.build().withHeader());
            out.enable(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN);
            if (rows.isEmpty()) {
                return String.join(",", header) + "\n";
            }
            for (List<Object> row : rows) {
                out.writeStartArray();
                for (Object cell : row) {
                    write(out, cell);
                }
                out.writeEndArray();
            }
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.toString();
    }

    private static void write(CsvGenerator out, Object cell) throws IOException {
        if (cell instanceof Integer number) {
            out.writeNumber(number);
        } else if (cell instanceof Long number) {
            out.writeNumber(number);
        } else if (cell instanceof BigDecimal number) {
            out.writeNumber(number);
        } else {
            out.writeString(Formulas.defused((String) cell));
        }
    }
}
