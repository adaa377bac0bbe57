package sledwright.book;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import sledwright.book.store.Sql;
import sledwright.domain.Catalog;
import sledwright.domain.Request;
import sledwright.planner.allot.LotName;
import sledwright.planner.allot.Promise;
import sledwright.request.Job;

/**
 * A quote that was accepted, with all that its customer was told.
 *
 * @param picks what the chosen option took when it was answered
 * @param kept  what is kept for it today
 * @param order its machines where it is an order; empty: it is of one request
 */
record Promised(SavedQuote quote, Asked asked, Told told, List<NewVersion.Taken> picks, Map<LotName, Integer> kept,
                Optional<Machines> order) {

    private static final ObjectMapper JSON = new ObjectMapper();

    private static final byte[] NOTHING = {'{', '}'};

    /**
     * What was told.
     *
     * @param figures of each machine; of an order of all together
     * @param days    when what was told
     * @param shown   the answer as it was saved; empty where it is not there
     */
    record Told(NewVersion.Told figures, int leadDays, Days days, Optional<byte[]> shown) {
    }

    /** When it was answered, and when it was accepted, which is the first where it was not. */
    record Days(LocalDate answered, LocalDate accepted) {

        /** The day on which something is to be there that takes so long: whoever takes an offer later can only count from then. */
        LocalDate readyOn(int leadDays) {
            LocalDate printed = answered.plusDays(leadDays);
            return printed.isAfter(accepted) ? printed : accepted.plusDays(leadDays);
        }
    }

    /**
     * The machines of an order.
     *
     * @param told with which it was answered
     * @param now  that it has
     */
    record Machines(KeptMachines told, KeptMachines now) {

        /** Whether all machines have their parts, and all sleds their enclosures. */
        boolean isWhole() {
            return now.machines() == told.machines() && now.frames().size() == told.frames().size();
        }
    }

    /** Every quote that is accepted or picked, by its number. */
    static List<Promised> all(Sql sql, LocalDate today) throws SQLException {
        List<Promised> all = new ArrayList<>();
        for (QuoteState state : List.of(QuoteState.ACCEPTED, QuoteState.PICKED)) {
            for (SavedQuote quote : Quotes.find(sql, BookSearch.of(state), today)) {
                all.add(read(sql, quote));
            }
        }
        return all;
    }

    static Promised read(Sql sql, SavedQuote quote) throws SQLException {
        record Row(NewVersion.Told told, int leadDays) {
        }
        Row row = sql.first("SELECT processors, cores, usable_gb, bandwidth, throughput, load_w, lead_days FROM quote_option"
                + " WHERE number = ? AND version = ? AND place = ?", one -> new Row(new NewVersion.Told(one.getInt(1), one.getInt(2),
                new BigDecimal(one.getString(3)), new BigDecimal(one.getString(4)), new BigDecimal(one.getString(5)),
                new BigDecimal(one.getString(6))), one.getInt(7)), quote.number(), quote.offered().version(), quote.offered().chosen())
                .orElseThrow();
        LocalDate answered = sql.first("SELECT made_on FROM quote_version WHERE number = ? AND version = ?", one ->
                LocalDate.parse(one.getString(1)), quote.number(), quote.offered().version()).orElseThrow();
        LocalDate accepted = sql.first("SELECT at FROM history WHERE number = ? AND step = ? ORDER BY entry DESC", one ->
                LocalDate.parse(one.getString(1).substring(0, 10)), quote.number(), QuoteStep.ACCEPT.label()).orElse(answered);
        Map<LotName, Integer> kept = new TreeMap<>();
        sql.all("SELECT sku, lot, units FROM holding WHERE number = ?", one ->
                kept.put(new LotName(one.getString(1), one.getString(2)), one.getInt(3)), quote.number());
        return new Promised(quote, Quotes.asked(sql, quote.number(), quote.offered().version()).orElseThrow(),
                new Told(row.told(), row.leadDays(), new Days(answered, accepted),
                Quotes.paper(sql, quote.number(), quote.offered().version(), "json.shop")),
                Holdings.picks(sql, quote, quote.offered().chosen()), kept, machines(sql, quote));
    }

    /** The machines of an order; empty: it is of one request. */
    static Optional<Machines> machines(Sql sql, SavedQuote quote) throws SQLException {
        Optional<KeptMachines> told = Quotes.paper(sql, quote.number(), quote.offered().version(), KeptMachines.PAPER)
                .map(KeptMachines::read);
        Optional<KeptMachines> given = sql.first("SELECT machines FROM given_machines WHERE number = ? AND version = ?",
                one -> KeptMachines.read(Packed.plain(one.getBytes(1))), quote.number(), quote.offered().version());
        return told.map(first -> new Machines(first, given.orElse(first)));
    }

    LocalDate readyOn() {
        return told.days().readyOn(told.leadDays());
    }

    /**
     * What has to be kept, as requests to a shop: the figures that the customer was told, on the day, at whatever it costs the shop. An
     * order is as many promises as it has kinds of machines.
     *
     * @throws sledwright.input.FaultsException when the request cannot be read with the shop of today
     */
    List<Promise> promises(Catalog shop) {
        Optional<PromisedOrder> lines = lines(shop);
        return lines.isPresent() ? lines.get().promises() : List.of(promise(shop));
    }

    /** The same as an order, where it is one. */
    Optional<PromisedOrder> lines(Catalog shop) {
        return order.map(machines -> new PromisedOrder(this, machines, ((Job.Order) job(shop)).order(), shop.today()));
    }

    private Job job(Catalog shop) {
        return asked.job(quote.number().toString(), shop);
    }

    /** What has to be kept of a quote of one request. */
    Promise promise(Catalog shop) {
        Map<String, Integer> parts = new TreeMap<>();
        picks.forEach(pick -> parts.merge(pick.sku(), pick.units(), Integer::sum));
        JsonNode option = option();
        Map<String, Double> volumes = new TreeMap<>();
        option.path("volumes").forEach(shown -> volumes.put(shown.path("name").asText(), shown.path("usable_gb").asDouble(0)));
        Request request = new ToldFigures(told.figures(), option.path("work").asDouble(0), volumes)
                .of(((Job.Quote) job(shop)).request(), readyOn(), shop.today());
        return new Promise(quote.number().toString(), request, parts, kept, false);
    }

    /** The parts are picked: nothing is decided about them any more. */
    Promise pinned(boolean counted) {
        return new Promise(quote.number().toString(), Request.named(ToldFigures.REQUEST).withMachines(quote.offered().machines()), Map.of(),
                counted ? kept : Map.of(), true);
    }

    private JsonNode option() {
        try {
            return JSON.readTree(told.shown().orElse(NOTHING)).path("alternatives").path(quote.offered().chosen() - 1);
        } catch (IOException damaged) {
            throw new UncheckedIOException(damaged);
        }
    }
}
