package sledwright.report.label;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import sledwright.desk.view.LabelView;
import sledwright.label.Meaning;
import sledwright.label.Reading;
import sledwright.label.Unknown;
import sledwright.report.text.Json;

/** Modules from labels as JSON. */
public final class LabelJson {

    private LabelJson() {
    }

    public static String of(LabelView view) {
        return Json.document(out -> write(view, out));
    }

    private static void write(LabelView view, JsonGenerator out) throws IOException {
        out.writeArrayFieldStart("modules");
        for (Reading reading : view.readings()) {
            out.writeStartObject();
            out.writeStringField("read_from", reading.from());
            out.writeStringField("label", reading.label().toString());
            row(reading, out);
            meanings(reading.meanings(), out);
            unknown(reading.unknown(), out);
            passedOver(reading.passedOver(), out);
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    private static void row(Reading reading, JsonGenerator out) throws IOException {
        out.writeObjectFieldStart("row");
        List<Optional<Object>> cells = LabelView.cells(reading.row());
        for (int column = 0; column < cells.size(); column++) {
            out.writeFieldName(LabelView.COLUMNS.get(column));
            Object cell = cells.get(column).orElse(null);
            if (cell instanceof Integer number) {
                out.writeNumber(number);
            } else if (cell instanceof BigDecimal number) {
                out.writeNumber(number);
            } else {
                out.writeString((String) cell);
            }
        }
        out.writeEndObject();
    }

    private static void meanings(List<Meaning> meanings, JsonGenerator out) throws IOException {
        out.writeArrayFieldStart("fields");
        for (Meaning meaning : meanings) {
            out.writeStartObject();
            out.writeStringField("field", meaning.field());
            out.writeStringField("written", meaning.written());
            out.writeStringField("meaning", meaning.meaning());
            out.writeBooleanField("from_memory", meaning.fromMemory());
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    private static void passedOver(List<String> words, JsonGenerator out) throws IOException {
        out.writeArrayFieldStart("passed_over");
        for (String word : words) {
            out.writeString(word);
        }
        out.writeEndArray();
    }

    private static void unknown(List<Unknown> unknown, JsonGenerator out) throws IOException {
        out.writeArrayFieldStart("unknown");
        for (Unknown one : unknown) {
            out.writeStartObject();
            out.writeStringField("what", one.what());
            out.writeStringField("why", one.why());
            out.writeEndObject();
        }
        out.writeEndArray();
    }
}
