package sledwright.book;

import java.sql.SQLException;
import java.util.Optional;
import java.util.function.Function;
import sledwright.book.BookRefusal.Kind;
import sledwright.book.store.Database;
import sledwright.book.store.Sql;
import sledwright.desk.view.KeptAs;
import sledwright.request.CustomerName;

/**
 * Puts new quotes into the book. Their papers bear their number, which is known only to whoever is next: so they are made for the number
 * that is next now, and made again where another quote took it meanwhile.
 */
final class Saving {

    /** Whoever was overtaken so often makes the papers while all others wait. */
    private static final int TRIES = 3;
    /** As in a request, which names the customer, too. */
    private static final int LONGEST_NAME = 200;

    private final Database database;
    private final String program;

    Saving(Database database, String program) {
        this.database = database;
        this.program = program;
    }

    /** @param detail what its history says beside that it was saved */
    SavedQuote save(Answered answered, Papers papers, String customer, String note, String detail, Signature by) {
        String name = named(customer);
        Answered addressed = Addressing.of(answered, name);
        Function<QuoteNumber, NewVersion> made = number -> NewVersion.of(addressed, papers, new KeptAs(number.toString(), 1));
        int year = by.today().getYear();
        for (int tries = 0; tries < TRIES; tries++) {
            QuoteNumber next = database.read(sql -> Quotes.upcoming(sql, year));
            NewVersion fresh = made.apply(next);
            Optional<SavedQuote> saved = database.write(sql -> Quotes.take(sql, next)
                    ? Optional.of(insert(sql, next, fresh, name, note, detail, by)) : Optional.empty());
            if (saved.isPresent()) {
                return saved.get();
            }
        }
        return database.write(sql -> {
            QuoteNumber next = Quotes.next(sql, year);
            return insert(sql, next, made.apply(next), name, note, detail, by);
        });
    }

    /** What bears no number. */
    SavedQuote save(NewVersion fresh, String customer, String note, Signature by) {
        String name = named(customer);
        return database.write(sql -> insert(sql, Quotes.next(sql, by.today().getYear()), fresh, name, note, "", by));
    }

    private SavedQuote insert(Sql sql, QuoteNumber number, NewVersion fresh, String customer, String note, String detail, Signature by)
            throws SQLException {
        Quotes.insert(sql, number, customer, note, fresh, by.today());
        Quotes.insertVersion(sql, number, 1, fresh, program, by);
        Quotes.note(sql, number, 1, "save", detail, by);
        return Quotes.find(sql, number, by.today()).orElseThrow();
    }

    private static String named(String customer) {
        String name = CustomerName.of(customer);
        if (name.isEmpty()) {
            throw new BookRefusal(Kind.VALUE, "the customer has no name");
        }
        if (name.length() > LONGEST_NAME) {
            throw new BookRefusal(Kind.VALUE, "the customer's name is longer than %s characters".formatted(LONGEST_NAME));
        }
        return name;
    }
}
