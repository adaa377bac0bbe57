package sledwright.book;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import sledwright.catalog.CatalogReader;
import sledwright.desk.Reply;
import sledwright.desk.Terms;
import sledwright.domain.Catalog;
import sledwright.words.Numbers;

/**
 * Takes a quote further where parts may have to be kept for it: reads what the shop has today, and says what the quote costs now where
 * someone was first.
 */
public final class Reserving {

    private static final Set<QuoteStep> TAKING = EnumSet.of(QuoteStep.SEND, QuoteStep.ACCEPT);

    private final Book book;
    private final Optional<Path> catalog;
    private final Terms terms;

    /** @param catalog the folder of today's catalogue; empty: the one that each quote was answered from */
    public Reserving(Book book, Optional<Path> catalog, Terms terms) {
        this.book = book;
        this.catalog = catalog;
        this.terms = terms;
    }

    /** As {@link Book#hold} does. */
    public SavedQuote hold(QuoteNumber number, Optional<Integer> choice, Optional<LocalDate> until, Signature by) {
        return first(number, by, today -> book.hold(number, choice, until, today.orElseThrow(), by), true);
    }

    /**
     * As {@link Book#step} does; a customer is sent no prices that are older than the shop offers them.
     *
     * @param stale whether such prices are sent, too
     */
    public SavedQuote step(QuoteNumber number, QuoteStep step, Optional<Integer> choice, boolean hold, boolean stale, String reason,
                           Signature by) {
        return first(number, by, today -> {
            if (step == QuoteStep.SEND && !stale) {
                requireFresh(number, today.orElseThrow(), by);
            }
            return book.step(number, step, choice, hold, today, reason, by);
        }, TAKING.contains(step));
    }

    private void requireFresh(QuoteNumber number, Catalog shop, Signature by) {
        SavedQuote quote = book.find(number, by);
        LocalDate priced = book.rows(sql -> sql.first("SELECT priced_on FROM quote_version WHERE number = ? AND version = ?", row ->
                LocalDate.parse(row.getString(1)), number, quote.offered().version()).orElseThrow());
        long age = ChronoUnit.DAYS.between(priced, by.today());
        OptionalInt most = shop.house().staleAfterDays();
        if (most.isPresent() && age > most.getAsInt()) {
            throw new BookRefusal(BookRefusal.Kind.STALE, ("the prices of %s are of %s, %s ago; the shop offers none older than %s.\n"
                    + "Maybe revise it, or allow them with --stale-prices.").formatted(number, priced, Numbers.counted((int) age, "day"),
                    Numbers.counted(most.getAsInt(), "day")));
        }
    }

    private SavedQuote first(QuoteNumber number, Signature by, Function<Optional<Catalog>, SavedQuote> take, boolean taking) {
        if (!taking) {
            return take.apply(Optional.empty());
        }
        SavedQuote quote = book.find(number, by);
        Path folder = catalog.orElseGet(() -> book.asked(quote).catalog());
        try {
            return take.apply(Optional.of(CatalogReader.read(folder)));
        } catch (BookRefusal refused) {
            throw refused.kind() == BookRefusal.Kind.TAKEN ? refused.and(now(quote, by)) : refused;
        }
    }

    /** What the request costs with what is left; searched when nobody waits any more. */
    private String now(SavedQuote quote, Signature by) {
        Reply<Answered> reply = new AskingAgain(book, catalog, terms).of(quote, List.of(), Optional.of(quote.number()), by);
        if (!(reply instanceof Reply.Answered<Answered> found)) {
            return "What it costs now is not known, for its request cannot be answered today.";
        }
        Optional<BigDecimal> price = found.answer().answer().pays();
        if (price.isEmpty()) {
            return "With what is left, its request cannot be met.";
        }
        String currency = found.answer().answer().shop().currency().getCurrencyCode();
        BigDecimal more = price.get().subtract(quote.offered().pays().orElse(BigDecimal.ZERO));
        String change = !currency.equals(quote.offered().currency())
                ? "%s %s before".formatted(quote.offered().pays().map(Object::toString).orElse("none"), quote.offered().currency())
                : more.signum() == 0 ? "as much as before" : "%s %s".formatted(more.abs(), more.signum() > 0 ? "more" : "less");
        String list = found.answer().answer().price().filter(total -> total.compareTo(price.get()) != 0)
                .map(" (%s by the list)"::formatted).orElse("");
        return "It costs %s %s now%s, %s; revise it to offer that.".formatted(price.get(), currency, list, change);
    }
}
