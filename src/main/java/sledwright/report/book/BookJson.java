package sledwright.report.book;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import sledwright.book.CustomerFile;
import sledwright.book.HistoryEntry;
import sledwright.book.SavedQuote;
import sledwright.report.text.Json;

/** Quotes of the book as JSON. */
public final class BookJson {

    private BookJson() {
    }

    public static String of(List<SavedQuote> quotes) {
        return Json.document(out -> {
            out.writeArrayFieldStart("quotes");
            for (SavedQuote quote : quotes) {
                out.writeStartObject();
                write(quote, out);
                out.writeEndObject();
            }
            out.writeEndArray();
        });
    }

    /** One quote. */
    public static String of(SavedQuote quote) {
        return Json.document(out -> write(quote, out));
    }

    public static String history(SavedQuote quote, List<HistoryEntry> entries) {
        return Json.document(out -> {
            write(quote, out);
            history(entries, out);
        });
    }

    /** All that is kept of a customer. */
    public static String of(CustomerFile file) {
        return Json.document(out -> {
            out.writeStringField("customer", file.customer());
            out.writeArrayFieldStart("quotes");
            for (CustomerFile.Kept kept : file.kept()) {
                out.writeStartObject();
                write(kept.quote(), out);
                history(kept.history(), out);
                out.writeArrayFieldStart("requests");
                for (String request : kept.requests()) {
                    out.writeString(request);
                }
                out.writeEndArray();
                out.writeEndObject();
            }
            out.writeEndArray();
        });
    }

    private static void history(List<HistoryEntry> entries, JsonGenerator out) throws IOException {
        out.writeArrayFieldStart("history");
        for (HistoryEntry entry : entries) {
            out.writeStartObject();
            out.writeNumberField("entry", entry.entry());
            out.writeStringField("at", entry.at());
            out.writeStringField("by", entry.who());
            out.writeNumberField("version", entry.version());
            out.writeStringField("step", entry.step());
            out.writeStringField("detail", entry.detail());
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    static void amount(String key, Optional<BigDecimal> amount, JsonGenerator out) throws IOException {
        if (amount.isPresent()) {
            out.writeNumberField(key, amount.get());
        } else {
            out.writeNullField(key);
        }
    }

    private static void write(SavedQuote quote, JsonGenerator out) throws IOException {
        out.writeStringField("number", quote.number().toString());
        out.writeStringField("state", quote.state().label());
        out.writeStringField("customer", quote.customer());
        out.writeStringField("request", quote.name());
        out.writeNumberField("version", quote.version());
        out.writeNumberField("option", quote.chosen());
        out.writeNumberField("machines", quote.machines());
        amount("price", quote.price(), out);
        out.writeStringField("currency", quote.currency());
        out.writeStringField("made_on", quote.madeOn().toString());
        if (quote.validUntil().isPresent()) {
            out.writeStringField("valid_until", quote.validUntil().get().toString());
        } else {
            out.writeNullField("valid_until");
        }
        if (quote.heldUntil().isPresent()) {
            out.writeStringField("held_until", quote.heldUntil().get().toString());
        } else {
            out.writeNullField("held_until");
        }
        out.writeStringField("note", quote.note());
        out.writeStringField("reason", quote.reason());
    }
}
