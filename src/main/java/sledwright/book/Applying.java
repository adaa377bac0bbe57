package sledwright.book;

import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import sledwright.book.Allocated.Drawn;
import sledwright.book.Allocated.Fate;
import sledwright.book.BookRefusal.Kind;
import sledwright.book.store.Sql;
import sledwright.planner.allot.LotName;

/** Writes an allocation into the book: all of it, or nothing where the book has moved on since. */
final class Applying {

    static final String STEP = "allocate";

    private Applying() {
    }

    /** @return how many quotes keep something else than before */
    static int apply(Sql sql, Allocated allocated, Signature by) throws SQLException {
        List<Drawn> changing = allocated.promises().stream().filter(one -> !one.lots().fresh().isEmpty() || !one.lots().given().isEmpty())
                .toList();
        for (Drawn one : changing) {
            sql.change("UPDATE quote SET state = state WHERE number = ?", one.quote().number());
        }
        for (Map.Entry<String, SortedSet<String>> part : lots(changing).entrySet()) {
            for (String lot : part.getValue()) {
                Holdings.turn(sql, part.getKey(), lot);
            }
        }
        if (!BookStand.read(sql, by.today()).isLike(allocated.basis().stand())) {
            throw new BookRefusal(Kind.TAKEN, "the book has moved on since stock was drawn; nothing was changed. Allocate again");
        }
        for (Drawn one : changing) {
            Quotes.requireInTime(sql, one.quote().number(), STEP, by);
            Holdings.give(sql, one.quote().number(), one.lots().units());
            if (one.order().isPresent()) {
                give(sql, one.quote(), one.order().get());
            }
            Quotes.note(sql, one.quote().number(), one.quote().offered().version(), STEP, one.fate() != Fate.BROKEN ? detail(one)
                    : one.lots().units().isEmpty() ? "nothing is left for it" : "not all of it is left", by);
        }
        return changing.size();
    }

    private static void give(Sql sql, SavedQuote quote, KeptMachines machines) throws SQLException {
        sql.change("DELETE FROM given_machines WHERE number = ?", quote.number());
        sql.change("INSERT INTO given_machines (number, version, machines) VALUES (?, ?, ?)", quote.number(), quote.offered().version(),
                Packed.of(machines.json()));
    }

    private static String detail(Drawn one) {
        int units = one.lots().fresh().values().stream().mapToInt(Integer::intValue).sum();
        return (one.fate() == Fate.CHANGED ? "other parts, " : "") + "units from other lots: " + units;
    }

    /** Every lot that units come from or go back to; in one order for all who take, so that no two ever wait for each other. */
    private static Map<String, SortedSet<String>> lots(List<Drawn> changing) {
        Map<String, SortedSet<String>> lots = new TreeMap<>();
        changing.forEach(one -> List.of(one.lots().fresh(), one.lots().given()).forEach(some -> some.keySet().forEach((LotName lot) ->
                lots.computeIfAbsent(lot.sku(), sku -> new TreeSet<>()).add(lot.lot()))));
        return lots;
    }

    /** A promise that was left without its parts is not picked before it is allotted some. */
    static void requireKept(Sql sql, SavedQuote quote) throws SQLException {
        requireSome(sql, quote);
        Optional<Promised.Machines> order = Promised.machines(sql, quote);
        if (order.isPresent() && !order.get().isWhole()) {
            throw new BookRefusal(Kind.STEP, "not all machines of %s have their parts; allocate again, or have it declined"
                    .formatted(quote.number()));
        }
    }

    /** What was given back is nothing to be picked or ordered for it. */
    static void requireSome(Sql sql, SavedQuote quote) throws SQLException {
        boolean takes = !Holdings.picks(sql, quote, quote.offered().chosen()).isEmpty();
        if (takes && sql.first("SELECT units FROM holding WHERE number = ?", row -> row.getInt(1), quote.number()).isEmpty()) {
            throw new BookRefusal(Kind.STEP, "nothing is kept for %s, since nothing was left for it; allocate again, or have it declined"
                    .formatted(quote.number()));
        }
    }
}
