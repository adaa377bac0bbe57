package sledwright.book;

import java.sql.SQLException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import sledwright.book.BookRefusal.Kind;
import sledwright.book.store.Sql;
import sledwright.request.Addressee;
import sledwright.request.CustomerName;

/** Takes a customer out of the book: name, notes, reasons, requests, documents and links go; prices, figures, parts and days stay. */
final class Erasure {

    private Erasure() {
    }

    /** What was theirs. */
    static Erased erase(Sql sql, String customer, Signature by) throws SQLException {
        List<SavedQuote> quotes = quotes(sql, customer, by);
        Optional<SavedQuote> bound = quotes.stream().filter(quote -> quote.state() == QuoteState.ACCEPTED
                || quote.state() == QuoteState.PICKED).findFirst();
        if (bound.isPresent()) {
            throw new BookRefusal(Kind.STEP, "%s is %s; its customer is erased when it is delivered or declined"
                    .formatted(bound.get().number(), bound.get().state().label()));
        }
        int links = CustomerLinks.erase(sql, customer);
        for (String name : names(sql, customer)) {
            sql.change("UPDATE customer SET name = 'erased ' || id, erased = 1 WHERE name = ?", name);
        }
        for (SavedQuote quote : quotes) {
            sql.change("UPDATE quote SET note = '', reason = '', words = '' WHERE number = ?", quote.number());
            eraseRequests(sql, quote);
            sql.change("DELETE FROM quote_document WHERE number = ?", quote.number());
            sql.change("DELETE FROM given_machines WHERE number = ?", quote.number());
            if (quote.state().isOpen()) {
                Holdings.release(sql, quote.number());
                sql.change("UPDATE quote SET state = ? WHERE number = ?", QuoteState.WITHDRAWN.label(), quote.number());
            }
            Quotes.note(sql, quote.number(), quote.offered().version(), "erase", "", by);
        }
        readdress(sql, customer, by);
        return new Erased(quotes.size(), links);
    }

    /** What was taken off the prices is one of the figures that stay. */
    private static void eraseRequests(Sql sql, SavedQuote quote) throws SQLException {
        String currency = quote.offered().currency();
        for (int version = 1; version <= quote.offered().version(); version++) {
            Asked asked = Quotes.asked(sql, quote.number(), version).orElseThrow();
            String left = AskedPrice.set(AskedPrice.of(asked.request(), asked.sets(), currency), currency).orElse("");
            sql.change("UPDATE quote_version SET name = 'erased', request = ?, sets = ? WHERE number = ? AND version = ?",
                    new byte[0], left, quote.number(), version);
        }
    }

    /** Quotes of others that are addressed to the customer, as they were made by versions before: their figures stay as they are told. */
    private static void readdress(Sql sql, String customer, Signature by) throws SQLException {
        for (SavedQuote quote : Quotes.find(sql, BookSearch.everything(), by.today())) {
            for (int version = 1; version <= quote.offered().version(); version++) {
                Asked asked = Quotes.asked(sql, quote.number(), version).orElseThrow();
                Addressee addressee = new Addressee(asked.request(), asked.sets());
                if (asked.request().length > 0 && addressee.names(customer)) {
                    Quotes.rewrite(sql, quote.number(), version, Addressing.of(asked, quote.customer()));
                    sql.change("DELETE FROM quote_document WHERE number = ? AND version = ? AND kind LIKE '%.%' AND kind NOT LIKE 'json.%'"
                            + " AND kind NOT LIKE 'csv.%' AND kind <> 'text.shop'", quote.number(), version);
                    String lines = String.join("\n", addressee.lines()).toLowerCase(Locale.ROOT);
                    sql.change("UPDATE quote SET words = REPLACE(words, ?, '') WHERE number = ?", lines, quote.number());
                    Quotes.note(sql, quote.number(), version, "erase", "papers that were addressed to another", by);
                }
            }
        }
    }

    /** All quotes of a customer who is named in full. */
    static List<SavedQuote> quotes(Sql sql, String customer, Signature by) throws SQLException {
        requireKnown(sql, customer);
        return Quotes.find(sql, BookSearch.everything(), by.today()).stream()
                .filter(quote -> CustomerName.of(quote.customer()).equals(CustomerName.of(customer))).toList();
    }

    /** Versions before kept one name in several spellings that look the same. */
    private static List<String> names(Sql sql, String customer) throws SQLException {
        return sql.all("SELECT name FROM customer", row -> row.getString(1)).stream()
                .filter(name -> CustomerName.of(name).equals(CustomerName.of(customer))).toList();
    }

    /** Whoever has a link alone is known as well. */
    private static void requireKnown(Sql sql, String customer) throws SQLException {
        if (names(sql, customer).isEmpty() && CustomerLinks.of(sql, customer).isEmpty()) {
            throw new BookRefusal(Kind.UNKNOWN, "there is no customer %s in the book; name one in full".formatted(customer));
        }
    }
}
