package sledwright.report.book;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import sledwright.book.CustomerFile;
import sledwright.book.CustomerLink;
import sledwright.book.HistoryEntry;
import sledwright.book.Leeway;
import sledwright.book.SavedQuote;
import sledwright.report.text.Json;

/** Quotes of the book as JSON. */
public record BookJson(List<Quote> quotes) {

    /** One quote. */
    public record Quote(@JsonUnwrapped Subject subject, @JsonUnwrapped Extent extent, @JsonUnwrapped Days days, String note,
                        String reason) {

        private static Quote of(SavedQuote quote) {
            return new Quote(new Subject(quote.number().toString(), quote.state().label(), quote.customer(), quote.offered().name()),
                    new Extent(quote.offered().version(), quote.offered().chosen(), quote.offered().machines(),
                    quote.offered().price().orElse(null), quote.offered().pays().orElse(null), quote.offered().currency()),
                    new Days(quote.days().madeOn().toString(), day(quote.days().validUntil()), day(quote.days().heldUntil())), quote.note(),
                    quote.reason());
        }

        private static String day(Optional<LocalDate> day) {
            return day.map(LocalDate::toString).orElse(null);
        }
    }

    /** Whose it is, and what becomes of it. */
    public record Subject(String number, String state, String customer, String request) {
    }

    /** What becomes of a quote, for those who see no more of it. */
    public record State(String number, String state) {
    }

    /**
     * What is offered.
     *
     * @param price      what all machines come to; null where nothing was found
     * @param askedPrice what the customer is asked to pay in its place, before tax
     */
    public record Extent(int version, int option, int machines, BigDecimal price, BigDecimal askedPrice, String currency) {
    }

    /** The last two are null where there is no such day. */
    public record Days(String madeOn, String validUntil, String heldUntil) {
    }

    /** What was done to a quote. */
    public record Entry(long entry, String at, String day, String by, int version, String step, String detail) {

        private static List<Entry> all(List<HistoryEntry> entries) {
            return entries.stream().map(one -> new Entry(one.entry(), one.at(), one.day().toString(), one.who(), one.version(), one.step(),
                    one.detail())).toList();
        }
    }

    /** A quote and all that was done to it. */
    public record History(@JsonUnwrapped Quote quote, List<Entry> history) {
    }

    /** All that is kept of a customer. */
    public record Customer(String customer, List<Kept> quotes, List<Link> links) {
    }

    /** An address by which a request may be looked at and changed within limits. */
    public record Link(String id, String name, String until, String madeBy, String madeAt, List<String> may, String request) {

        private static Link of(CustomerLink link) {
            return new Link(link.id(), link.name(), link.until().toString(), link.made().by(), link.made().at().toString(),
                    link.may().stream().map(Leeway::toString).toList(), link.request());
        }
    }

    /** A quote, all that was done to it, and its requests, one for each version. */
    public record Kept(@JsonUnwrapped Quote quote, List<Entry> history, List<String> requests) {

        private static Kept of(CustomerFile.Kept kept) {
            return new Kept(Quote.of(kept.quote()), Entry.all(kept.history()), kept.requests());
        }
    }

    public static String of(List<SavedQuote> quotes) {
        return Json.of(new BookJson(quotes.stream().map(Quote::of).toList()));
    }

    /** One quote. */
    public static String of(SavedQuote quote) {
        return Json.of(Quote.of(quote));
    }

    /** What becomes of one, without whose it is and what it costs. */
    public static String state(SavedQuote quote) {
        return Json.of(new State(quote.number().toString(), quote.state().label()));
    }

    public static String history(SavedQuote quote, List<HistoryEntry> entries) {
        return Json.of(new History(Quote.of(quote), Entry.all(entries)));
    }

    /** All that is kept of a customer. */
    public static String of(CustomerFile file) {
        return Json.of(new Customer(file.customer(), file.kept().stream().map(Kept::of).toList(),
                file.links().stream().map(Link::of).toList()));
    }
}
