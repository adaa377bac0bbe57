package sledwright.report.check;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import sledwright.desk.view.CheckView;
import sledwright.report.build.JsonParts;
import sledwright.report.text.Json;

/** A verdict as JSON. */
public final class CheckJson {

    private CheckJson() {
    }

    public static String of(CheckView view) {
        return Json.document(out -> write(view, out));
    }

    private static void write(CheckView view, JsonGenerator out) throws IOException {
        JsonParts parts = new JsonParts(out);
        out.writeStringField("build", view.name());
        out.writeStringField("currency", view.currency());
        out.writeBooleanField("valid", view.valid());
        parts.violations("violations", view.violations());
        parts.build(view.build());
    }
}
