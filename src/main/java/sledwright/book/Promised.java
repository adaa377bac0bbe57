package sledwright.book;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import sledwright.book.store.Sql;
import sledwright.catalog.CatalogSource;
import sledwright.domain.Catalog;
import sledwright.domain.DeliverBy;
import sledwright.domain.Equipment;
import sledwright.domain.Goal;
import sledwright.domain.Limits;
import sledwright.domain.MemoryNeeds;
import sledwright.domain.PartChoice;
import sledwright.domain.ProcessorNeeds;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Shortlist;
import sledwright.domain.VolumeWish;
import sledwright.domain.WorkWish;
import sledwright.input.Source;
import sledwright.planner.allot.LotName;
import sledwright.planner.allot.Promise;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;

/**
 * A quote that was accepted, with all that its customer was told.
 *
 * @param told       figures of each machine
 * @param readyOn    the day on which the machines were to be there
 * @param picks      what the chosen option took when it was answered
 * @param kept       what is kept for it today
 * @param shown      the answer as it was saved; empty where it is not there
 */
record Promised(SavedQuote quote, Asked asked, NewVersion.Told told, LocalDate readyOn, List<NewVersion.Taken> picks,
                Map<LotName, Integer> kept, Optional<byte[]> shown) {

    /** What any two promises call their request, so that alike requests are the same. */
    private static final String REQUEST = "promise";

    private static final ObjectMapper JSON = new ObjectMapper();

    private static final byte[] NOTHING = {'{', '}'};

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
                new BigDecimal(one.getString(6))), one.getInt(7)), quote.number(), quote.version(), quote.chosen()).orElseThrow();
        LocalDate answered = sql.first("SELECT made_on FROM quote_version WHERE number = ? AND version = ?", one ->
                LocalDate.parse(one.getString(1)), quote.number(), quote.version()).orElseThrow();
        LocalDate accepted = sql.first("SELECT at FROM history WHERE number = ? AND step = ? ORDER BY entry DESC", one ->
                LocalDate.parse(one.getString(1).substring(0, 10)), quote.number(), QuoteStep.ACCEPT.label()).orElse(answered);
        Map<LotName, Integer> kept = new TreeMap<>();
        sql.all("SELECT sku, lot, units FROM holding WHERE number = ?", one ->
                kept.put(new LotName(one.getString(1), one.getString(2)), one.getInt(3)), quote.number());
        LocalDate printed = answered.plusDays(row.leadDays());
        // Whoever takes an offer after that day can only count from the day on which it was taken.
        LocalDate ready = printed.isAfter(accepted) ? printed : accepted.plusDays(row.leadDays());
        return new Promised(quote, Quotes.asked(sql, quote.number(), quote.version()).orElseThrow(), row.told(), ready,
                Holdings.picks(sql, quote, quote.chosen()), kept, Quotes.paper(sql, quote.number(), quote.version(), "json.shop"));
    }

    /**
     * What has to be kept, as a request to a shop: the figures that the customer was told, on the day, at whatever it costs the shop.
     *
     * @throws sledwright.input.FaultsException when the request cannot be read with the shop of today
     */
    Promise promise(Catalog shop) {
        Request asked = request(shop);
        Map<String, Integer> parts = new TreeMap<>();
        picks.forEach(pick -> parts.merge(pick.sku(), pick.units(), Integer::sum));
        return new Promise(quote.number().toString(), told(asked, shop.today()), parts, kept, false);
    }

    /** The parts are picked: nothing is decided about them any more. */
    Promise pinned(boolean counted) {
        return new Promise(quote.number().toString(), Request.named(REQUEST).withMachines(quote.machines()), Map.of(),
                counted ? kept : Map.of(), true);
    }

    private Request request(Catalog shop) {
        return ((Job.Quote) RequestReader.read(Source.named(quote.number().toString(), asked.name(), asked.request()), asked.sets(),
                Optional.of(CatalogSource.of(shop)), Set.of(Kind.QUOTE))).request();
    }

    private Request told(Request asked, LocalDate today) {
        JsonNode option = option();
        Requirements least = asked.require();
        WorkWish work = new WorkWish(Math.max(least.work().least(), option.path("work").asDouble(0)), least.work().workload());
        Requirements require = new Requirements(
                new ProcessorNeeds(least.processors(), Math.max(least.cores(), told.cores()),
                        Math.max(least.throughput(), told.throughput().doubleValue()), least.baseGhz(), least.allCoreGhz()),
                new MemoryNeeds(Math.max(least.memoryGb(), told.usableGb().doubleValue()),
                        Math.max(least.bandwidthGbs(), told.bandwidthGbs().doubleValue()), least.gbPerCore(), least.gbsPerCore(),
                        least.spareSlots(), least.mode(), least.populated()),
                work);
        Equipment wanted = asked.equipment();
        Equipment equipment = new Equipment(wanted.volumes().stream().map(volume -> told(volume, option)).toList(), wanted.cards(),
                wanted.extras(), wanted.enclosure());
        return new Request(REQUEST, asked.machines(), require, limits(asked.limit(), today), Goal.CHEAPEST,
                new Shortlist(1, Shortlist.PLAIN.step()),
                new PartChoice(asked.platforms(), asked.forbid(), asked.use(), asked.onHand(), equipment));
    }

    private Limits limits(Limits asked, LocalDate today) {
        LocalDate day = asked.by().map(DeliverBy::day).filter(last -> last.isBefore(readyOn)).orElse(readyOn);
        int left = (int) Math.max(0, ChronoUnit.DAYS.between(today, day));
        double most = Math.min(asked.powerW().orElse(Double.POSITIVE_INFINITY), told.loadW().doubleValue());
        return asked.waiting().withLeadDays(OptionalInt.of(left)).withPrice(OptionalLong.empty()).withPowerW(OptionalDouble.of(most));
    }

    private static VolumeWish told(VolumeWish volume, JsonNode option) {
        double usable = volume.usableGb();
        for (JsonNode shown : option.path("volumes")) {
            usable = shown.path("name").asText().equals(volume.name()) ? Math.max(usable, shown.path("usable_gb").asDouble(0)) : usable;
        }
        return volume.with(usable);
    }

    private JsonNode option() {
        try {
            return JSON.readTree(shown.orElse(NOTHING)).path("alternatives").path(quote.chosen() - 1);
        } catch (IOException damaged) {
            throw new UncheckedIOException(damaged);
        }
    }
}
