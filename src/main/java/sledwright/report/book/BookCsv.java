package sledwright.report.book;

import java.util.List;
import sledwright.book.HistoryEntry;
import sledwright.book.SavedQuote;
import sledwright.report.text.Csv;

/** Quotes of the book as comma-separated values. */
public final class BookCsv {

    private BookCsv() {
    }

    public static String of(List<SavedQuote> quotes) {
        return Csv.write(List.of("number", "state", "customer", "request", "version", "option", "machines", "price", "currency", "made_on",
                "valid_until", "held_until", "note", "reason",
                "asked_price"), quotes.stream().map(BookCsv::row).toList());
    }

    private static List<Object> row(SavedQuote quote) {
        return List.of(quote.number().toString(), quote.state().label(), quote.customer(), quote.offered().name(),
                quote.offered().version(), quote.offered().chosen(), quote.offered().machines(), Csv.cell(quote.offered().price()),
                quote.offered().currency(), quote.days().madeOn().toString(), quote.days().validUntil().map(Object::toString).orElse(""),
                quote.days().heldUntil().map(Object::toString).orElse(""), quote.note(), quote.reason(),
                Csv.cell(quote.offered().pays()));
    }

    public static String history(List<HistoryEntry> entries) {
        return Csv.write(List.of("entry", "at", "by", "number", "version", "step", "detail"), entries.stream().map(entry ->
                List.<Object>of(entry.entry(), entry.at(), entry.who(), entry.number().toString(), entry.version(), entry.step(),
                entry.detail())).toList());
    }
}
