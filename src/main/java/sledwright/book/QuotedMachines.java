package sledwright.book;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sledwright.book.BookRefusal.Kind;
import sledwright.catalog.CatalogReader;
import sledwright.desk.Terms;
import sledwright.desk.view.KeptAs;
import sledwright.desk.view.OrderAnswer;
import sledwright.desk.view.SheetAnswer;
import sledwright.domain.Availability;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Lot;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.planner.Judge;
import sledwright.planner.allot.LotName;
import sledwright.request.Job;
import sledwright.rules.Order;

/** The machines of a saved quote, from exactly the units that are kept for it, or else from those that it was answered with. */
public final class QuotedMachines {

    private final SavedQuote quote;
    private final Promised promised;
    private final Catalog shop;
    private final Terms terms;

    /** @param whole whether a promise of several machines must have the parts of them all */
    private QuotedMachines(Book book, QuoteNumber number, Optional<Path> catalog, Signature by, Terms terms, boolean whole) {
        this.terms = terms;
        quote = book.find(number, by);
        if (quote.offered().price().isEmpty()) {
            throw new BookRefusal(Kind.STEP, book.rows(sql -> Quotes.nothing(sql, number, quote.offered().version())));
        }
        Asked asked = book.asked(quote);
        promised = book.rows(sql -> {
            if (quote.state() == QuoteState.ACCEPTED && whole) {
                Applying.requireKept(sql, quote);
            } else if (quote.state() == QuoteState.ACCEPTED) {
                Applying.requireSome(sql, quote);
            }
            return Promised.read(sql, quote);
        });
        shop = CatalogReader.read(catalog.orElse(asked.catalog())).withToday(by.today());
    }

    /**
     * What the bench puts together.
     *
     * @param catalog the folder that parts are looked up in; empty: the one that the quote was answered from
     * @throws BookRefusal when it offers nothing, not all that was promised is kept for it, or its parts cannot be put together as the
     *                     catalogue has them
     */
    public static SheetAnswer.Work of(Book book, QuoteNumber number, Optional<Path> catalog, Signature by, Terms terms) {
        QuotedMachines machines = new QuotedMachines(book, number, catalog, by, terms, true);
        return machines.promised.order().isPresent() ? new SheetAnswer.Machines(machines.shop, machines.order())
                : new SheetAnswer.Assembly(machines.shop, machines.named(), OptionalInt.of(machines.quote.offered().chosen()));
    }

    /**
     * The same machines as an order: what they are, what each takes from which lot, and what comes from which supplier.
     *
     * @param catalog the folder that parts are looked up in; empty: the one that the quote was answered from
     * @throws BookRefusal when it offers nothing, nothing is kept for it any more, or its parts cannot be put together as the catalogue has
     *                     them
     */
    public static OrderAnswer order(Book book, QuoteNumber number, Optional<Path> catalog, Signature by, Terms terms) {
        QuotedMachines machines = new QuotedMachines(book, number, catalog, by, terms, false);
        OrderAnswer answer = machines.promised.order().isPresent() ? machines.order()
                : QuotedOrder.of(machines.coming(machines.assembly()), machines.name());
        return answer.keptAs(new KeptAs(number.toString(), machines.quote.offered().version()));
    }

    private String name() {
        return "%s, version %s, %s".formatted(quote.number(), quote.offered().version(), quote.offered().name());
    }

    private OrderAnswer order() {
        KeptMachines kept = promised.order().orElseThrow().now();
        Job.Order job = (Job.Order) promised.asked().job(quote.number().toString(), shop);
        Condition condition = job.order().lines().stream().flatMap(line -> line.request().limit().conditions().stream()).sorted()
                .findFirst().orElse(Condition.USED);
        Map<LotName, Lot> lots = lots(kept.units(), condition);
        kept.all().filter(KeptMachines.Unit::own).forEach(unit -> lots.put(unit.name(), new Lot(unit.sku(), unit.lot(), "", condition,
                new Availability(Integer.MAX_VALUE, 0), List.of(new Lot.PriceBreak(1, 0, OptionalLong.empty())), true)));
        return QuotedOrder.of(kept, job, job.order().withName(name()), lots);
    }

    private Order assembly() {
        Map<LotName, Integer> units = promised.kept().isEmpty() ? picked() : promised.kept();
        Request told = promised.promise(shop).request();
        Condition condition = told.limit().conditions().stream().sorted().findFirst().orElse(Condition.USED);
        // Only what is kept, and all of it here: whatever became of the lots since, these units are the quote's.
        Catalog kept = shop.withLots(lots(units, condition).values().stream().map(QuotedMachines::here)
                .collect(Collectors.groupingBy(Lot::sku, LinkedHashMap::new, Collectors.toCollection(ArrayList::new))));
        Optional<Order> order = new Search(kept).run(told, Deadline.in(terms.time()).or(terms.cancelled())).ranked().stream().findFirst();
        if (order.isEmpty() || !taken(order.get()).equals(units) || !new Judge().judge(order.get()).valid()) {
            throw new BookRefusal(Kind.VALUE, ("the parts of %s cannot be put together as this catalogue has them; name with --catalog"
                    + " the one that it was answered from, as it was then").formatted(quote.number()));
        }
        return Order.of(order.get().machines(), order.get().picks(), told.withName(quote.offered().name()), kept);
    }

    private Order named() {
        Order order = assembly();
        return Order.of(order.machines(), order.picks(), order.request().withName(name()), order.catalog());
    }

    private Map<LotName, Integer> picked() {
        Map<LotName, Integer> units = new TreeMap<>();
        promised.picks().forEach(pick -> units.put(new LotName(pick.sku(), pick.lot()), pick.units()));
        return units;
    }

    private static Map<LotName, Integer> taken(Order order) {
        Map<LotName, Integer> units = new TreeMap<>();
        order.picks().stream().filter(pick -> !pick.lot().onHand()).forEach(pick ->
                units.merge(new LotName(pick.sku(), pick.lot().lot()), pick.quantity(), Integer::sum));
        return units;
    }

    /** The lots as they were quoted, or as the shop has them; what becomes of them later counts no more. */
    private Map<LotName, Lot> lots(Map<LotName, Integer> units, Condition condition) {
        Map<LotName, Lot> lots = new TreeMap<>();
        units.forEach((name, count) -> {
            Optional<Lot> known = shop.lots(name.sku()).stream().filter(lot -> lot.lot().equals(name.lot())).findFirst();
            Optional<NewVersion.Taken> quoted = promised.picks().stream().filter(pick -> pick.sku().equals(name.sku())
                    && pick.lot().equals(name.lot())).findFirst();
            long price = quoted.map(NewVersion.Taken::unitPrice).or(() -> known.map(lot -> lot.breaks().get(0).unitPrice())).orElse(0L);
            OptionalLong cost = known.map(lot -> lot.breakFor(count).unitCost()).orElse(OptionalLong.empty());
            String supplier = known.map(Lot::supplier).or(() -> quoted.map(NewVersion.Taken::supplier)).orElse("");
            lots.put(name, new Lot(name.sku(), name.lot(), supplier, known.map(Lot::condition).orElse(condition),
                    new Availability(count, known.map(Lot::leadDays).orElse(0)), List.of(new Lot.PriceBreak(1, price, cost)), false));
        });
        return lots;
    }

    private static Lot here(Lot lot) {
        return new Lot(lot.sku(), lot.lot(), lot.supplier(), lot.condition(), new Availability(lot.available(), 0), lot.breaks(), false);
    }

    /** The same from lots that come when the shop's do. */
    private Order coming(Order order) {
        Map<LotName, Lot> lots = lots(taken(order), Condition.USED);
        List<Pick> picks = order.picks().stream().map(pick -> pick.lot().onHand() ? pick
                : new Pick(lots.get(new LotName(pick.sku(), pick.lot().lot())), pick.quantity())).toList();
        return Order.of(order.machines(), picks, order.request(), order.catalog());
    }
}
