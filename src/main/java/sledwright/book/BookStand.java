package sledwright.book;

import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Stream;
import sledwright.book.store.Sql;

/**
 * What the book keeps for whom at one moment: where it is the same, nothing that an allocation rests on has changed.
 *
 * @param entry    the last entry of the history
 * @param promises state of each quote that is accepted or picked
 * @param kept     what is kept
 */
record BookStand(long entry, Map<QuoteNumber, QuoteState> promises, Reserved kept) {

    static BookStand read(Sql sql, LocalDate today) throws SQLException {
        Map<QuoteNumber, QuoteState> promises = new TreeMap<>();
        sql.all("SELECT number, state FROM quote WHERE state = ? OR state = ?", row -> promises.put(
                QuoteNumber.named(row.getString(1)).orElseThrow(), QuoteState.named(row.getString(2)).orElseThrow()),
                QuoteState.ACCEPTED.label(), QuoteState.PICKED.label());
        return new BookStand(entry(sql), promises, Holdings.reserved(sql, today, Optional.empty()));
    }

    static long entry(Sql sql) throws SQLException {
        return sql.first("SELECT MAX(entry) FROM history", row -> row.getLong(1)).orElse(0L);
    }

    /** Whether nothing but what does not matter has happened. */
    boolean isLike(BookStand other) {
        return promises.equals(other.promises) && sorted(one -> true).equals(other.sorted(one -> true));
    }

    /** Whether what is accepted in both keeps the same. Only an allocation gives it anything else. */
    boolean givesLike(BookStand other) {
        Predicate<Reserved.Kept> accepted = one -> Stream.of(this, other)
                .allMatch(stand -> stand.promises.get(one.number()) == QuoteState.ACCEPTED);
        return sorted(accepted).equals(other.sorted(accepted));
    }

    private List<Reserved.Kept> sorted(Predicate<Reserved.Kept> some) {
        return kept.lots().stream().filter(some).sorted(Comparator.comparing((Reserved.Kept one) -> one.number())
                .thenComparing(Reserved.Kept::sku).thenComparing(Reserved.Kept::lot)).toList();
    }
}
