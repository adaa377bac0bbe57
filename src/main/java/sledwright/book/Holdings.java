package sledwright.book;

import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import sledwright.book.store.Sql;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.planner.allot.LotName;

/** Units that quotes keep from others, as rows. */
final class Holdings {

    private Holdings() {
    }

    /** What is kept on a day by all quotes but one. */
    static Reserved reserved(Sql sql, LocalDate today, Optional<QuoteNumber> but) throws SQLException {
        return new Reserved(sql.all("SELECT sku, lot, number, units, gone_on FROM holding WHERE number <> ?"
                + " AND (until IS NULL OR until >= ?)", row -> new Reserved.Kept(row.getString(1), row.getString(2),
                QuoteNumber.named(row.getString(3)).orElseThrow(), row.getInt(4),
                Optional.ofNullable(row.getString(5)).map(LocalDate::parse)), but.map(QuoteNumber::toString).orElse(""), today));
    }

    /**
     * Keeps what an option takes for a quote alone, in place of what it kept before.
     *
     * @param catalog what the shop has today
     * @param until   the last day; empty: for good
     * @return lots that have not enough; where there are any, nothing has changed
     */
    static List<Gone> take(Sql sql, SavedQuote quote, int option, Catalog catalog, Optional<LocalDate> until, LocalDate today)
            throws SQLException {
        List<NewVersion.Taken> picks = picks(sql, quote, option);
        for (NewVersion.Taken pick : picks) {
            // In one order for all, so that no two ever wait for each other.
            turn(sql, pick.sku(), pick.lot());
        }
        List<Gone> gone = gone(picks, catalog, reserved(sql, today, Optional.of(quote.number())));
        if (gone.isEmpty()) {
            put(sql, quote.number(), picks, until);
        }
        return gone;
    }

    /** Nobody else takes units of the lot until the transaction ends. */
    static void turn(Sql sql, String sku, String lot) throws SQLException {
        sql.change("INSERT INTO lot_turn (sku, lot, turn) VALUES (?, ?, 0) ON CONFLICT (sku, lot) DO NOTHING", sku, lot);
        sql.change("UPDATE lot_turn SET turn = turn + 1 WHERE sku = ? AND lot = ?", sku, lot);
    }

    /** Keeps units for a promise for good, in place of what was kept for it before. */
    static void give(Sql sql, QuoteNumber number, Map<LotName, Integer> units) throws SQLException {
        release(sql, number);
        sql.changeEach("INSERT INTO holding (number, sku, lot, units) VALUES (?, ?, ?, ?)", units.entrySet().stream().map(lot ->
                List.<Object>of(number, lot.getKey().sku(), lot.getKey().lot(), lot.getValue())).toList());
    }

    private static void put(Sql sql, QuoteNumber number, List<NewVersion.Taken> picks, Optional<LocalDate> until) throws SQLException {
        release(sql, number);
        List<List<Object>> rows = new ArrayList<>();
        picks.forEach(pick -> rows.add(Arrays.asList(number, pick.sku(), pick.lot(), pick.units(), until.orElse(null))));
        sql.changeEach("INSERT INTO holding (number, sku, lot, units, until) VALUES (?, ?, ?, ?, ?)", rows);
    }

    private static List<Gone> gone(List<NewVersion.Taken> picks, Catalog catalog, Reserved others) {
        List<Gone> gone = new ArrayList<>();
        for (NewVersion.Taken pick : picks) {
            int there = catalog.lots(pick.sku()).stream().filter(lot -> lot.lot().equals(pick.lot())).mapToInt(Lot::available).sum();
            List<Reserved.Kept> kept = others.of(pick.sku(), pick.lot(), catalog.pricedOn());
            int left = Math.max(0, there - kept.stream().mapToInt(Reserved.Kept::units).sum());
            if (left < pick.units()) {
                gone.add(new Gone(pick.sku(), pick.lot(), pick.units(), left, kept.stream().map(Reserved.Kept::number).sorted().toList()));
            }
        }
        return gone;
    }

    /** What an option takes, by part and lot. */
    static List<NewVersion.Taken> picks(Sql sql, SavedQuote quote, int option) throws SQLException {
        return sql.all("SELECT sku, lot, supplier, units, unit_price FROM quote_pick WHERE number = ? AND version = ? AND place = ?"
                + " ORDER BY sku, lot", row -> new NewVersion.Taken(row.getString(1), row.getString(2), row.getString(3), row.getInt(4),
                row.getLong(5)), quote.number(), quote.offered().version(), option);
    }

    /** Whether the quote keeps what that option takes, until a day that is not over. */
    static boolean holds(Sql sql, SavedQuote quote, int option, LocalDate today) throws SQLException {
        Map<String, Integer> kept = new TreeMap<>();
        sql.all("SELECT sku, lot, units FROM holding WHERE number = ? AND gone_on IS NULL AND (until IS NULL OR until >= ?)", row ->
                kept.put(row.getString(1) + "\n" + row.getString(2), row.getInt(3)), quote.number(), today);
        Map<String, Integer> taken = new TreeMap<>();
        picks(sql, quote, option).forEach(pick -> taken.put(pick.sku() + "\n" + pick.lot(), pick.units()));
        return kept.equals(taken);
    }

    /** From a hold to a promise: it ends no more. */
    static void promise(Sql sql, QuoteNumber number) throws SQLException {
        sql.change("UPDATE holding SET until = NULL WHERE number = ?", number);
    }

    static void pick(Sql sql, QuoteNumber number, LocalDate day) throws SQLException {
        sql.change("UPDATE holding SET gone_on = ? WHERE number = ?", day, number);
    }

    /** How many lots were given back. */
    static int release(Sql sql, QuoteNumber number) throws SQLException {
        return sql.change("DELETE FROM holding WHERE number = ?", number);
    }
}
