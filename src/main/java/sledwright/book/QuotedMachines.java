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
import sledwright.book.BookRefusal.Kind;
import sledwright.catalog.CatalogReader;
import sledwright.desk.Terms;
import sledwright.desk.view.SheetAnswer;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Lot;
import sledwright.domain.Request;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.planner.Judge;
import sledwright.planner.allot.LotName;
import sledwright.rules.Order;

/** The machines of a saved quote, from exactly the units that are kept for it, or else from those that it was answered with. */
public final class QuotedMachines {

    private QuotedMachines() {
    }

    /**
     * What the bench puts together.
     *
     * @param catalog the folder that parts are looked up in; empty: the one that the quote was answered from
     * @throws BookRefusal when it offers nothing, or its parts cannot be put together as the catalogue has them
     */
    public static SheetAnswer.Work of(Book book, QuoteNumber number, Optional<Path> catalog, Signature by, Terms terms) {
        SavedQuote quote = book.find(number, by);
        if (quote.price().isEmpty()) {
            throw new BookRefusal(Kind.STEP, "%s offers nothing, for no build was found".formatted(number));
        }
        Asked asked = book.asked(quote);
        Promised promised = book.rows(sql -> Promised.read(sql, quote));
        Catalog shop = CatalogReader.read(catalog.orElse(asked.catalog())).withToday(by.today());
        Map<LotName, Integer> units = promised.kept().isEmpty() ? picked(promised) : promised.kept();
        Request told = promised.promise(shop).request();
        Catalog kept = shop.withLots(lots(shop, promised, units, told));
        Optional<Order> order = new Search(kept).run(told, Deadline.in(terms.time()).or(terms.cancelled())).ranked().stream().findFirst();
        if (order.isEmpty() || !taken(order.get()).equals(units) || !new Judge().judge(order.get()).valid()) {
            throw new BookRefusal(Kind.VALUE, ("the parts of %s cannot be put together as this catalogue has them; name with --catalog"
                    + " the one that it was answered from, as it was then").formatted(number));
        }
        Order named = Order.of(order.get().machines(), order.get().picks(), told.withName("%s, %s".formatted(number, quote.name())), kept);
        return new SheetAnswer.Assembly(shop, named, OptionalInt.of(quote.chosen()));
    }

    private static Map<LotName, Integer> picked(Promised promised) {
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

    /** Only what is kept, and all of it here: whatever became of the lots since, these units are the quote's. */
    private static Map<String, List<Lot>> lots(Catalog shop, Promised promised, Map<LotName, Integer> units, Request told) {
        Condition condition = told.limit().conditions().stream().sorted().findFirst().orElse(Condition.USED);
        Map<String, List<Lot>> lots = new LinkedHashMap<>();
        units.forEach((name, count) -> {
            Optional<Lot> known = shop.lots(name.sku()).stream().filter(lot -> lot.lot().equals(name.lot())).findFirst();
            Optional<NewVersion.Taken> quoted = promised.picks().stream().filter(pick -> pick.sku().equals(name.sku())
                    && pick.lot().equals(name.lot())).findFirst();
            long price = quoted.map(NewVersion.Taken::unitPrice).or(() -> known.map(lot -> lot.breaks().get(0).unitPrice())).orElse(0L);
            String supplier = known.map(Lot::supplier).or(() -> quoted.map(NewVersion.Taken::supplier)).orElse("");
            lots.computeIfAbsent(name.sku(), sku -> new ArrayList<>()).add(new Lot(name.sku(), name.lot(), supplier,
                    known.map(Lot::condition).orElse(condition), count, 0,
                    List.of(new Lot.PriceBreak(1, price, OptionalLong.empty())), false));
        });
        return lots;
    }
}
