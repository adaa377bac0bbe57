package sledwright.report.build;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.List;
import sledwright.desk.view.Line;
import sledwright.report.text.Json;

/** One line of what is paid for, as JSON. */
public record LineJson(String kind, String sku, String description, @JsonUnwrapped From from, int quantity, @JsonUnwrapped Paid paid) {

    /** The lot; every component is null where there is none, and the first two where it is not shown. */
    public record From(String lot, String supplier, String condition, Integer leadDays) {

        private static From of(Line.Source source) {
            return new From(Json.unlessEmpty(source.lot()), Json.unlessEmpty(source.supplier()), source.condition(), source.leadDays());
        }
    }

    /** @param unitCost null where it is not known or not shown */
    public record Paid(BigDecimal unitCost, BigDecimal unitPrice, BigDecimal total) {
    }

    private static LineJson of(Line line) {
        return new LineJson(line.kind().label(), line.sku(), line.description(),
                line.source().map(From::of).orElse(new From(null, null, null, null)), line.quantity(),
                new Paid(line.source().flatMap(Line.Source::unitCost).orElse(null), line.unitPrice(), line.total()));
    }

    public static List<LineJson> all(List<Line> lines) {
        return lines.stream().map(LineJson::of).toList();
    }
}
