package sledwright.book;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sledwright.book.store.Sql;

/** The rows of a review: who works on which quote, and how it came out. */
final class ReviewRows {

    /** Whoever has been silent for so long is taken for dead. */
    static final long SILENCE_MS = 60_000;

    private static final String OPEN = " WHERE (state = 'draft' OR state = 'sent' AND (valid_until IS NULL OR valid_until >= ?))";

    private ReviewRows() {
    }

    /** How far a review is. */
    record Progress(int done, int all) {
    }

    /** How one quote came out; the price, and what none is below, are in minor units. */
    record Row(QuoteNumber number, int version, Reviewed.Outcome outcome, Optional<Long> price, Optional<Long> least, String detail) {
    }

    /**
     * Puts down every open quote that is not in the review yet, or that time was too short for; reviews of other days are forgotten, and on
     * demand this one, too.
     */
    static void begin(Sql sql, String run, boolean again, LocalDate today) throws SQLException {
        sql.change("DELETE FROM review WHERE run < ?", today);
        if (again) {
            sql.change("DELETE FROM review WHERE run = ?", run);
        }
        sql.change("DELETE FROM review WHERE run = ? AND outcome = ?", run, Reviewed.Outcome.UNDECIDED.label());
        // A quote that was revised since then is another one, and one that was decided is no longer open.
        sql.change("DELETE FROM review WHERE run = ? AND NOT EXISTS (SELECT 1 FROM quote q" + OPEN
                + " AND q.number = review.number AND q.version = review.version)", run, today);
        sql.change("INSERT INTO review (run, number, version, taken_at, detail) SELECT ?, number, version, 0, '' FROM quote"
                + OPEN + " ON CONFLICT (run, number) DO NOTHING", run, today);
    }

    /** Some quotes that nobody else works on, for whoever asks; none: there are none left. */
    static List<QuoteNumber> take(Sql sql, String run, int most, long now) throws SQLException {
        List<String> free = sql.all("SELECT number FROM review WHERE run = ? AND outcome IS NULL AND taken_at < " + (now - SILENCE_MS)
                + " ORDER BY number LIMIT " + most, row -> row.getString(1), run);
        List<QuoteNumber> taken = new ArrayList<>();
        for (String number : free) {
            // Somebody else may have it by now: the row is looked at again when it is this one's turn.
            if (sql.change("UPDATE review SET taken_at = ? WHERE run = ? AND number = ? AND outcome IS NULL AND taken_at < ?", now, run,
                    number, now - SILENCE_MS) == 1) {
                taken.add(QuoteNumber.named(number).orElseThrow());
            }
        }
        return taken;
    }

    static void put(Sql sql, String run, List<Row> rows) throws SQLException {
        for (Row row : rows) {
            // A price that there is none of stays as it is: none.
            sql.change("UPDATE review SET outcome = ?, detail = ? WHERE run = ? AND number = ? AND version = ?", row.outcome().label(),
                    row.detail(), run, row.number(), row.version());
            if (row.price().isPresent()) {
                sql.change("UPDATE review SET price = ? WHERE run = ? AND number = ?", row.price().get(), run, row.number());
            }
            if (row.least().isPresent()) {
                sql.change("UPDATE review SET least = ? WHERE run = ? AND number = ?", row.least().get(), run, row.number());
            }
        }
    }

    static Progress progress(Sql sql, String run) throws SQLException {
        return sql.first("SELECT COUNT(outcome), COUNT(*) FROM review WHERE run = ?", row ->
                new Progress(row.getInt(1), row.getInt(2)), run).orElseThrow();
    }

    static List<Row> all(Sql sql, String run) throws SQLException {
        return sql.all("SELECT number, version, outcome, price, least, detail FROM review WHERE run = ? AND outcome IS NOT NULL"
                + " ORDER BY number", row -> new Row(QuoteNumber.named(row.getString(1)).orElseThrow(), row.getInt(2),
                Reviewed.Outcome.named(row.getString(3)), figure(row, 4), figure(row, 5), row.getString(6)), run);
    }

    private static Optional<Long> figure(ResultSet row, int column) throws SQLException {
        long figure = row.getLong(column);
        return row.wasNull() ? Optional.empty() : Optional.of(figure);
    }
}
