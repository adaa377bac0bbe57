package sledwright.book;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import sledwright.book.store.Sql;
import sledwright.domain.Discount;
import sledwright.request.CustomerName;

/** Quotes as rows. */
final class Quotes {

    /** Between keys that were said beside a request; no text of YAML holds it. */
    private static final String BETWEEN = "\u001f";
    private static final String SELECT = "SELECT q.number, c.name AS customer, q.state, q.version, q.chosen, v.name, v.machines, o.price,"
            + " v.currency, v.request, v.sets, q.made_on, q.valid_until, q.note, q.reason,"
            + " (SELECT MIN(h.until) FROM holding h WHERE h.number = q.number AND h.gone_on IS NULL) AS held_until"
            + " FROM quote q JOIN customer c ON c.id = q.customer"
            + " JOIN quote_version v ON v.number = q.number AND v.version = q.version"
            + " LEFT JOIN quote_option o ON o.number = q.number AND o.version = q.version AND o.place = q.chosen";

    private static final String HISTORY = "SELECT entry, at, who, number, version, step, detail FROM history";

    private Quotes() {
    }

    /** The next number of the year; no other quote gets it, and if this one comes to nothing, the next gets it. */
    static QuoteNumber next(Sql sql, int year) throws SQLException {
        return new QuoteNumber(year, Math.toIntExact(count(sql, quotesOf(year))));
    }

    /** The number that is next at the moment. */
    static QuoteNumber upcoming(Sql sql, int year) throws SQLException {
        int last = sql.first("SELECT value FROM counter WHERE name = ?", row -> row.getInt(1), quotesOf(year)).orElse(0);
        return new QuoteNumber(year, last + 1);
    }

    /** Gives a number to whoever asks, where it is the next; otherwise nothing changes. */
    static boolean take(Sql sql, QuoteNumber number) throws SQLException {
        String what = quotesOf(number.year());
        sql.change("INSERT INTO counter (name, value) VALUES (?, 0) ON CONFLICT (name) DO NOTHING", what);
        return sql.change("UPDATE counter SET value = value + 1 WHERE name = ? AND value = ?", what, (long) number.place() - 1) == 1;
    }

    private static String quotesOf(int year) {
        return "quotes of " + year;
    }

    /** One more than at the last time, from 1. Whoever counts has its turn until the transaction ends. */
    static long count(Sql sql, String what) throws SQLException {
        sql.change("INSERT INTO counter (name, value) VALUES (?, 0) ON CONFLICT (name) DO NOTHING", what);
        return sql.first("UPDATE counter SET value = value + 1 WHERE name = ? RETURNING value", row -> row.getLong(1), what).orElseThrow();
    }

    static long customer(Sql sql, String name) throws SQLException {
        Optional<Long> known = sql.first("SELECT id FROM customer WHERE name = ?", row -> row.getLong(1), name);
        if (known.isPresent()) {
            return known.get();
        }
        sql.change("INSERT INTO customer (id, name) VALUES (?, ?) ON CONFLICT (name) DO NOTHING", count(sql, "customers"), name);
        return sql.first("SELECT id FROM customer WHERE name = ?", row -> row.getLong(1), name).orElseThrow();
    }

    static void insert(Sql sql, QuoteNumber number, String customer, String note, NewVersion fresh, LocalDate today) throws SQLException {
        sql.change("INSERT INTO quote (number, customer, state, version, chosen, valid_until, note, reason, made_on, words)"
                + " VALUES (?, ?, ?, 1, 1, ?, ?, '', ?, ?)", number, customer(sql, customer), QuoteState.DRAFT.label(),
                fresh.head().validUntil().orElse(null), note, today, words(fresh, customer, note));
    }

    /** The words of a quote are those of its last version. */
    static void revise(Sql sql, SavedQuote old, int version, NewVersion fresh) throws SQLException {
        sql.change("UPDATE quote SET state = ?, version = ?, chosen = 1, valid_until = ?, reason = '', words = ? WHERE number = ?",
                QuoteState.DRAFT.label(), version, fresh.head().validUntil().orElse(null), words(fresh, old.customer(), old.note()),
                old.number());
    }

    private static String words(NewVersion fresh, String customer, String note) {
        List<String> words = new ArrayList<>(List.of(customer.toLowerCase(Locale.ROOT), note.toLowerCase(Locale.ROOT)));
        words.addAll(fresh.words());
        return String.join("\n", words);
    }

    static void insertVersion(Sql sql, QuoteNumber number, int version, NewVersion fresh, String program, Signature by)
            throws SQLException {
        NewVersion.From from = fresh.catalog();
        sql.change("INSERT INTO quote_version (number, version, made_on, made_by, name, request, sets, catalog, digest, program, priced_on,"
                + " currency, status, machines, valid_until) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", number, version,
                by.today(), by.who(), fresh.head().name(), fresh.asked().request(), String.join(BETWEEN, fresh.asked().sets()),
                fresh.asked().catalog(), from.digest(), program, from.pricedOn(), from.currency(), fresh.head().status(),
                fresh.head().machines(), fresh.head().validUntil().orElse(null));
        List<List<Object>> options = new ArrayList<>();
        List<List<Object>> picks = new ArrayList<>();
        for (NewVersion.Choice option : fresh.options()) {
            NewVersion.Told told = option.told();
            options.add(Arrays.asList(number, version, option.place(), option.price(), option.platform(), option.processor().orElse(""),
                    told.processors(), told.cores(), told.usableGb().toPlainString(), told.bandwidthGbs().toPlainString(),
                    told.throughput().toPlainString(), told.loadW().toPlainString(), option.leadDays()));
            option.picks().forEach(pick -> picks.add(List.of(number, version, option.place(), pick.sku(), pick.lot(), pick.supplier(),
                    pick.units(), pick.unitPrice())));
        }
        sql.changeEach("INSERT INTO quote_option (number, version, place, price, platform, processor, processors, cores, usable_gb,"
                + " bandwidth, throughput, load_w, lead_days) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", options);
        sql.changeEach("INSERT INTO quote_pick (number, version, place, sku, lot, supplier, units, unit_price)"
                + " VALUES (?, ?, ?, ?, ?, ?, ?, ?)", picks);
        sql.changeEach("INSERT INTO quote_document (number, version, kind, content) VALUES (?, ?, ?, ?)", fresh.papers().entrySet().stream()
                .sorted(Map.Entry.comparingByKey()).map(paper ->
                List.<Object>of(number, version, paper.getKey(), paper.getValue())).toList());
    }

    /** The quote with that number, as it stands on a day. */
    static Optional<SavedQuote> find(Sql sql, QuoteNumber number, LocalDate today) throws SQLException {
        return sql.first(SELECT + " WHERE q.number = ?", row -> read(row, today), number);
    }

    static List<SavedQuote> find(Sql sql, BookSearch search, LocalDate today) throws SQLException {
        List<String> where = new ArrayList<>();
        List<Object> values = new ArrayList<>();
        search.state().ifPresent(state -> states(state, today, where, values));
        search.words().ifPresent(words -> Arrays.stream(words.strip().toLowerCase(Locale.ROOT).split("\\s+")).forEach(word -> {
            where.add("q.words LIKE ? ESCAPE '!'");
            values.add("%" + word.replaceAll("([!%_])", "!$1") + "%");
        }));
        search.part().ifPresent(sku -> {
            where.add("EXISTS (SELECT 1 FROM quote_pick p WHERE p.number = q.number AND p.version = q.version AND p.place = q.chosen"
                    + " AND LOWER(p.sku) = LOWER(?))");
            values.add(sku);
        });
        search.since().ifPresent(day -> {
            where.add("q.made_on >= ?");
            values.add(day);
        });
        search.until().ifPresent(day -> {
            where.add("q.made_on <= ?");
            values.add(day);
        });
        String condition = where.isEmpty() ? "" : " WHERE " + String.join(" AND ", where);
        String customer = search.customer().map(name -> CustomerName.of(name).toLowerCase(Locale.ROOT)).orElse("");
        // Case is folded here: a database folds the letters of its own locale, or those of ASCII alone.
        return sql.all(SELECT + condition, row -> read(row, today), values.toArray()).stream()
                .filter(quote -> CustomerName.of(quote.customer()).toLowerCase(Locale.ROOT).contains(customer))
                .sorted(Comparator.comparing(SavedQuote::number)).toList();
    }

    private static void states(QuoteState state, LocalDate today, List<String> where, List<Object> values) {
        boolean expired = state == QuoteState.EXPIRED;
        where.add("q.state = ?");
        values.add((expired ? QuoteState.SENT : state).label());
        if (expired || state == QuoteState.SENT) {
            where.add(expired ? "q.valid_until < ?" : "(q.valid_until IS NULL OR q.valid_until >= ?)");
            values.add(today);
        }
    }

    private static SavedQuote read(ResultSet row, LocalDate today) throws SQLException {
        Optional<LocalDate> until = Optional.ofNullable(row.getString("valid_until")).map(LocalDate::parse);
        QuoteState stored = QuoteState.named(row.getString("state")).orElseThrow();
        QuoteState state = stored == QuoteState.SENT && until.isPresent() && until.get().isBefore(today) ? QuoteState.EXPIRED : stored;
        String currency = row.getString("currency");
        long price = row.getLong("price");
        Optional<Long> known = row.wasNull() ? Optional.empty() : Optional.of(price);
        int chosen = row.getInt("chosen");
        Discount discount = AskedPrice.of(row.getBytes("request"), sets(row.getString("sets")), currency).of(chosen);
        return new SavedQuote(QuoteNumber.named(row.getString("number")).orElseThrow(), row.getString("customer"), state,
                new SavedQuote.Offered(row.getInt("version"), chosen, row.getString("name"), row.getInt("machines"),
                known.map(minor -> amount(minor, currency)), known.map(minor -> amount(discount.net(minor), currency)), currency),
                new SavedQuote.Days(LocalDate.parse(row.getString("made_on")), until, held(row, today)), row.getString("note"),
                row.getString("reason"));
    }

    /** A hold that has run out counts no more. */
    private static Optional<LocalDate> held(ResultSet row, LocalDate today) throws SQLException {
        return Optional.ofNullable(row.getString("held_until")).map(LocalDate::parse).filter(day -> !day.isBefore(today));
    }

    static BigDecimal amount(long minor, String currency) {
        return BigDecimal.valueOf(minor, Math.max(0, Currency.getInstance(currency).getDefaultFractionDigits()));
    }

    /** @throws BookRefusal where an amount is of less than a coin */
    static void requireWholeCoins(BigDecimal amount, String currency) {
        int decimals = amount(0, currency).scale();
        if (amount.stripTrailingZeros().scale() > decimals) {
            throw new BookRefusal(BookRefusal.Kind.VALUE, "%s has more decimals than the %s of %s".formatted(amount.toPlainString(),
                    decimals, currency));
        }
    }

    /** To the nearest coin. */
    static long minor(BigDecimal amount, String currency) {
        return amount.movePointRight(Math.max(0, Currency.getInstance(currency).getDefaultFractionDigits()))
                .setScale(0, RoundingMode.HALF_UP).longValueExact();
    }

    /** What a version of a quote answers. */
    static Optional<Asked> asked(Sql sql, QuoteNumber number, int version) throws SQLException {
        return sql.first("SELECT name, request, sets, catalog FROM quote_version WHERE number = ? AND version = ?", row ->
                new Asked(row.getString(1), row.getBytes(2),
                sets(row.getString(3)), Path.of(row.getString(4))), number, version);
    }

    private static List<String> sets(String kept) {
        return kept.isEmpty() ? List.of() : List.of(kept.split(BETWEEN));
    }

    /** Puts what was asked in another way; what was answered stays. */
    static void rewrite(Sql sql, QuoteNumber number, int version, Asked asked) throws SQLException {
        sql.change("UPDATE quote_version SET request = ?, sets = ? WHERE number = ? AND version = ?", asked.request(),
                String.join(BETWEEN, asked.sets()), number, version);
    }

    static Optional<byte[]> paper(Sql sql, QuoteNumber number, int version, String kind) throws SQLException {
        return sql.first("SELECT content FROM quote_document WHERE number = ? AND version = ? AND kind = ?",
                row -> Packed.plain(row.getBytes(1)), number, version, kind);
    }

    /** Says why a version offers nothing: an order may well have found some of its machines. */
    static String nothing(Sql sql, QuoteNumber number, int version) throws SQLException {
        return "%s offers nothing, for %s was found".formatted(number,
                paper(sql, number, version, KeptMachines.PAPER).isPresent() ? "not all that was asked for" : "no build");
    }

    /** Says why a document is not there. */
    static byte[] noPaper(Sql sql, QuoteNumber number, int version, String kind) throws SQLException {
        List<String> kept = sql.all("SELECT kind FROM quote_document WHERE number = ? AND version = ? AND kind LIKE '%.%' ORDER BY kind",
                row -> row.getString(1).replaceAll("\\..*", ""), number, version).stream().distinct().toList();
        throw kept.isEmpty()
                ? new BookRefusal(BookRefusal.Kind.UNKNOWN, "%s has no documents any more, for its customer was erased".formatted(number))
                : new BookRefusal(BookRefusal.Kind.VALUE, "%s is not kept as %s; it is kept as %s".formatted(number,
                kind.replaceAll("\\..*", ""), String.join(", ", kept)));
    }

    /** Which option a step is about: what was taken is of one, and stays so. */
    static int chosen(Sql sql, SavedQuote now, QuoteStep step, Optional<Integer> choice) throws SQLException {
        int options = options(sql, now.number(), now.offered().version());
        if (options == 0 && (step == QuoteStep.SEND || step == QuoteStep.ACCEPT)) {
            throw new BookRefusal(BookRefusal.Kind.STEP, nothing(sql, now.number(), now.offered().version()) + "; revise it");
        }
        int chosen = choice.orElse(now.offered().chosen());
        if (choice.isPresent() && (chosen < 1 || chosen > options)) {
            throw new BookRefusal(BookRefusal.Kind.VALUE, "%s has no option %s; it has %s".formatted(now.number(), chosen, options));
        }
        if (chosen != now.offered().chosen() && (now.state() == QuoteState.ACCEPTED || now.state() == QuoteState.PICKED)) {
            throw new BookRefusal(BookRefusal.Kind.STEP, "%s was taken with option %s and stays so; copy it for another"
                    .formatted(now.number(), now.offered().chosen()));
        }
        return chosen;
    }

    /** What an option costs, in minor units; empty: there is none. */
    static Optional<Long> price(Sql sql, QuoteNumber number, int version, int place) throws SQLException {
        return sql.first("SELECT price FROM quote_option WHERE number = ? AND version = ? AND place = ?", row -> row.getLong(1), number,
                version, place);
    }

    static int options(Sql sql, QuoteNumber number, int version) throws SQLException {
        return sql.first("SELECT COUNT(*) FROM quote_option WHERE number = ? AND version = ?", row -> row.getInt(1), number,
                version).orElseThrow();
    }

    static void note(Sql sql, QuoteNumber number, int version, String step, String detail, Signature by) throws SQLException {
        sql.change("INSERT INTO history (entry, at, who, number, version, step, detail) VALUES (?, ?, ?, ?, ?, ?, ?)",
                count(sql, "history"), by.at(), by.who(), number, version, step, detail);
    }

    /**
     * Whoever says that it is another day may not say one before the last step: units that were sold would be counted as if they were not.
     *
     * @throws BookRefusal when something was done with the quote on a later day
     */
    static void requireInTime(Sql sql, QuoteNumber number, String step, Signature by) throws SQLException {
        Optional<HistoryEntry> last = history(sql, number).stream().max(Comparator.comparing(HistoryEntry::day));
        if (last.isPresent() && last.get().day().isAfter(by.today())) {
            throw new BookRefusal(BookRefusal.Kind.STEP, "%s of %s is dated %s; %s comes after it and cannot be dated %s"
                    .formatted(last.get().step(), number, last.get().day(), step, by.today()));
        }
    }

    /** Today or, where something was done with any quote on a later day, that day. */
    static LocalDate latest(Sql sql, LocalDate today) throws SQLException {
        LocalDate last = sql.first(HISTORY + " ORDER BY at DESC, entry DESC LIMIT 1", Quotes::entry).map(HistoryEntry::day).orElse(today);
        return last.isAfter(today) ? last : today;
    }

    static List<HistoryEntry> history(Sql sql, QuoteNumber number) throws SQLException {
        return sql.all(HISTORY + " WHERE number = ? ORDER BY entry", Quotes::entry, number);
    }

    static List<HistoryEntry> history(Sql sql) throws SQLException {
        return sql.all(HISTORY + " ORDER BY entry", Quotes::entry);
    }

    private static HistoryEntry entry(ResultSet row) throws SQLException {
        return new HistoryEntry(row.getLong(1), row.getString(2), row.getString(3), QuoteNumber.named(row.getString(4)).orElseThrow(),
                row.getInt(5), row.getString(6), row.getString(7));
    }
}
