package sledwright.report.catalog;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import sledwright.desk.view.CatalogView;
import sledwright.explain.audit.Warning;
import sledwright.report.text.Json;
import sledwright.words.Numbers;

/** What a catalogue holds, as JSON. */
public final class CatalogJson {

    private CatalogJson() {
    }

    public static String of(CatalogView view) {
        return Json.document(out -> write(view, out));
    }

    private static void write(CatalogView view, JsonGenerator out) throws IOException {
        out.writeStringField("catalog", view.name());
        out.writeStringField("currency", view.currency());
        out.writeStringField("priced_on", view.pricedOn().toString());
        out.writeObjectFieldStart("counts");
        for (Map.Entry<String, Long> entry : view.counts().entrySet()) {
            out.writeNumberField(entry.getKey().replace(' ', '_'), entry.getValue());
        }
        out.writeEndObject();
        out.writeArrayFieldStart("enclosures");
        for (CatalogView.Housed enclosure : view.enclosures()) {
            enclosure(enclosure, out);
        }
        out.writeEndArray();
        strings("unsold", view.unsold(), out);
        out.writeArrayFieldStart("warnings");
        for (Warning warning : view.warnings()) {
            out.writeStartObject();
            out.writeStringField("check", warning.check());
            out.writeStringField("file", warning.place().file());
            out.writeNumberField("line", warning.place().line());
            out.writeStringField("message", warning.message());
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    private static void enclosure(CatalogView.Housed enclosure, JsonGenerator out) throws IOException {
        out.writeStartObject();
        out.writeStringField("sku", enclosure.sku());
        out.writeStringField("name", enclosure.name());
        out.writeNumberField("bays", enclosure.bays());
        strings("takes", enclosure.takes(), out);
        out.writeArrayFieldStart("supplies");
        for (CatalogView.Feed feed : enclosure.feeds()) {
            out.writeStartObject();
            out.writeStringField("sku", feed.sku());
            out.writeNumberField("count", feed.count());
            out.writeNumberField("redundant", feed.redundant());
            out.writeNumberField("sleds_w", Numbers.decimal(feed.sledsW()));
            out.writeEndObject();
        }
        out.writeEndArray();
        out.writeEndObject();
    }

    private static void strings(String key, List<String> values, JsonGenerator out) throws IOException {
        out.writeArrayFieldStart(key);
        for (String value : values) {
            out.writeString(value);
        }
        out.writeEndArray();
    }
}
