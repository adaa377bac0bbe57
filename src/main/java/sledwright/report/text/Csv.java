package sledwright.report.text;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.dataformat.csv.CsvFactory;
import com.fasterxml.jackson.dataformat.csv.CsvGenerator;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import sledwright.catalog.intake.Formulas;

/**
 * Comma-separated values with a header, for spreadsheets. A text that a spreadsheet would run as a formula gets an apostrophe before it.
 */
public final class Csv {

    private Csv() {
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

    /** A cell that is empty where there is nothing. */
    public static Object cell(Optional<?> value) {
        return value.<Object>map(found -> found).orElse("");
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
