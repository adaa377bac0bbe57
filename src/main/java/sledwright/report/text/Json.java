package sledwright.report.text;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.regex.Pattern;

/** Documents in JSON; docs/json.md describes every key. Money has the currency's digits, figures have no trailing zeros. */
public final class Json {

    private static final Pattern LINE_FEEDS = Pattern.compile("\n *");

    private Json() {
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

    /** The same document on one line. No text of it holds a line feed: there they are written as two letters. */
    public static String onOneLine(String document) {
        return LINE_FEEDS.matcher(document.strip()).replaceAll("") + "\n";
    }
}
