package sledwright.report.book;

import java.math.BigDecimal;
import java.util.List;
import sledwright.book.HistoryEntry;
import sledwright.book.SavedQuote;
import sledwright.report.text.Page;
import sledwright.report.text.Screen;
import sledwright.report.text.TextTable;
import sledwright.report.text.TextTable.Fit;
import sledwright.words.Numbers;

/** Quotes of the book, for people. */
public final class BookText {

    private BookText() {
    }

    /** A line for each quote. */
    public static String of(List<SavedQuote> quotes, Screen screen) {
        Page page = new Page(screen);
        if (quotes.isEmpty()) {
            return page.text("No quote of the book is like that.").toString();
        }
        TextTable table = new TextTable().column("number", Fit.LEFT).column("state", Fit.LEFT).column("customer", Fit.FLEXIBLE)
                .column("request", Fit.FLEXIBLE).column("machines", Fit.RIGHT).column("price", Fit.RIGHT).column("", Fit.LEFT)
                .column("until", Fit.LEFT);
        quotes.forEach(quote -> table.row(quote.number(), quote.state().label(), quote.customer(), quote.offered().name(),
                quote.offered().machines(), quote.offered().pays().map(Object::toString).orElse("none"), quote.offered().currency(),
                quote.days().validUntil().map(Object::toString).orElse("")));
        return page.table(table).gap().text(Numbers.counted(quotes.size(), "quote")).toString();
    }

    /** An amount beside others that are in the shop's currency; in another it has its name. */
    static String amount(BigDecimal amount, String currency, String shops) {
        return amount.toPlainString() + (currency.equals(shops) ? "" : " " + currency);
    }

    /** What was done with a quote, by day. */
    public static String history(SavedQuote quote, List<HistoryEntry> entries, Screen screen) {
        Page page = new Page(screen).text("%s for %s: %s".formatted(quote.number(), quote.customer(), quote.state().label()));
        if (!quote.note().isEmpty()) {
            page.text("Note: " + quote.note());
        }
        if (!quote.reason().isEmpty()) {
            page.text("Reason: " + quote.reason());
        }
        TextTable table = new TextTable().column("day", Fit.LEFT).column("version", Fit.RIGHT).column("step", Fit.LEFT)
                .column("by", Fit.LEFT).column("", Fit.FLEXIBLE);
        entries.forEach(entry -> table.row(entry.day(), entry.version(), entry.step(), entry.who(),
                entry.detail()));
        return page.gap().table(table).toString();
    }

    /** What a step has made of a quote. */
    public static String after(SavedQuote quote, Screen screen) {
        return new Page(screen).text("%s: %s".formatted(quote.number(), quote.state().label())
                + quote.days().heldUntil().map(day -> ", held until " + day).orElse("")).toString();
    }
}
