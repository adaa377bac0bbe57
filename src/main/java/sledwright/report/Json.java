package sledwright.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import sledwright.desk.view.CatalogView;
import sledwright.desk.view.CheckView;
import sledwright.desk.view.CompareView;
import sledwright.desk.view.LabelView;
import sledwright.desk.view.OrderView;
import sledwright.desk.view.QuoteView;
import sledwright.desk.view.RestockView;
import sledwright.desk.view.UpgradeView;

/** Views as JSON; docs/json.md describes every key. Money has the currency's digits, figures have no trailing zeros. */
public final class Json {

    private Json() {
    }

    public static String of(QuoteView view) {
        return document(out -> QuoteJson.write(view, out));
    }

    public static String of(CheckView view) {
        return document(out -> check(view, out));
    }

    public static String of(UpgradeView view) {
        return document(out -> UpgradeJson.write(view, out));
    }

    public static String of(RestockView view) {
        return document(out -> RestockJson.write(view, out));
    }

    public static String of(CompareView view) {
        return document(out -> CompareJson.write(view, out));
    }

    public static String of(OrderView view) {
        return document(out -> OrderJson.write(view, out));
    }

    public static String of(CatalogView view) {
        return document(out -> CatalogJson.write(view, out));
    }

    public static String of(LabelView view) {
        return document(out -> LabelJson.write(view, out));
    }

    /** What another class writes into a document. */
    public interface Body {
        void write(JsonGenerator out) throws IOException;
    }

    /** A document whose keys another class writes, in the form of all documents. */
    public static String document(Body body) {
        StringWriter text = new StringWriter();
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter(Separators.createDefaultInstance()
                .withObjectFieldValueSpacing(Separators.Spacing.AFTER).withArrayEmptySeparator("").withObjectEmptySeparator(""))
                .withObjectIndenter(lines).withArrayIndenter(lines);
        try (JsonGenerator out = new JsonFactory().createGenerator(text)) {
            out.setPrettyPrinter(printer);
            out.enable(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN);
            out.writeStartObject();
            body.write(out);
            out.writeEndObject();
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.append('\n').toString();
    }

    private static void check(CheckView view, JsonGenerator out) throws IOException {
        JsonParts parts = new JsonParts(out);
        out.writeStringField("build", view.name());
        out.writeStringField("currency", view.currency());
        out.writeBooleanField("valid", view.valid());
        parts.violations("violations", view.violations());
        parts.build(view.build());
    }
}
