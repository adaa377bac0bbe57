package sledwright.report.text;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import sledwright.input.Fault;

/** What is wrong, as JSON. */
public final class FaultsJson {

    private FaultsJson() {
    }

    public static String of(List<Fault> faults) {
        return Json.document(out -> {
            out.writeArrayFieldStart("faults");
            for (Fault fault : faults) {
                write(fault, out);
            }
            out.writeEndArray();
        });
    }

    private static void write(Fault fault, JsonGenerator out) throws IOException {
        out.writeStartObject();
        out.writeStringField("place", fault.file());
        if (fault.line() > 0) {
            out.writeNumberField("line", fault.line());
        } else {
            out.writeNullField("line");
        }
        if (fault.value().isEmpty()) {
            out.writeNullField("value");
        } else {
            out.writeStringField("value", fault.value());
        }
        out.writeStringField("message", fault.message());
        out.writeEndObject();
    }
}
