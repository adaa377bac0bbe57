package sledwright.book;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sledwright.desk.view.OrderAnswer;
import sledwright.desk.view.OrderView;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Discount;
import sledwright.domain.Enclosure;
import sledwright.domain.FilledEnclosure;
import sledwright.domain.Lot;
import sledwright.domain.LotPiles;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Pick;
import sledwright.domain.Supply;
import sledwright.generator.Doubts;
import sledwright.metrics.Figures;
import sledwright.metrics.OrderPrice;
import sledwright.planner.allot.LotName;
import sledwright.planner.order.OrderOutcome;
import sledwright.planner.order.OrderOutcome.Fill;
import sledwright.planner.order.OrderOutcome.LineFill;
import sledwright.planner.order.OrderStatus;
import sledwright.request.Job;
import sledwright.rules.Order;

/** An order put together from machines that are known, at the prices of the lots as they are given. */
final class QuotedOrder {

    private final Catalog shop;
    private final OrderRequest asked;

    private QuotedOrder(Catalog shop, OrderRequest asked) {
        this.shop = shop;
        this.asked = asked;
    }

    /**
     * The machines that are kept for an order.
     *
     * @param lots what they take from the shop, by part and lot
     * @throws sledwright.input.FaultsException when the shop's catalogue does not have their parts any more
     */
    static OrderAnswer of(KeptMachines kept, Job.Order job, OrderRequest named, Map<LotName, Lot> lots) {
        QuotedOrder made = new QuotedOrder(job.catalog(), named);
        Map<String, List<Fill>> fills = new LinkedHashMap<>();
        List<Build> builds = new ArrayList<>();
        for (KeptMachines.Group group : kept.groups()) {
            OrderLine line = named.lines().stream().filter(one -> one.name().equals(group.line())).findFirst().orElseThrow();
            Build build = MachineFile.read(named.name(), group.build(), made.shop);
            builds.add(build);
            fills.computeIfAbsent(group.line(), name -> new ArrayList<>()).add(made.fill(build, line, group.machines().stream()
                    .map(units -> picks(units, lots)).toList()));
        }
        List<FilledEnclosure> enclosures = kept.frames().stream().map(frame -> made.enclosure(frame, builds)).toList();
        return made.answer(fills, enclosures, picks(kept.all().toList(), lots), job);
    }

    /** Machines of one request as an order of one line. */
    static OrderAnswer of(Order order, String name) {
        OrderLine line = new OrderLine(order.request().name(), order.request(), OrderLine.LEAST_PRIORITY, false);
        OrderRequest asked = new OrderRequest(name, List.of(line), OptionalInt.empty(), 0, 0, order.request().onHand());
        QuotedOrder made = new QuotedOrder(order.catalog(), asked);
        LotPiles piles = new LotPiles(order.picks());
        Map<Build, List<List<Pick>>> dealt = new LinkedHashMap<>();
        order.machines().forEach(build -> dealt.computeIfAbsent(build, same -> new ArrayList<>()).add(piles.taken(build.partCounts())));
        List<Fill> fills = dealt.entrySet().stream().map(one -> made.fill(one.getKey(), line, one.getValue())).toList();
        return made.answer(Map.of(line.name(), fills), order.housings().stream().map(housing -> housing.filled()).toList(), order.picks(),
                new Job.Order(order.catalog(), asked, List.of(), Discount.NONE));
    }

    private Fill fill(Build build, OrderLine line, List<List<Pick>> machines) {
        return new Fill(build, Figures.of(build, line.request(), shop.throughputFactors()), machines);
    }

    private FilledEnclosure enclosure(KeptMachines.Frame frame, List<Build> builds) {
        Enclosure enclosure = shop.enclosure(frame.enclosure()).orElseThrow(() -> gone(frame.enclosure()));
        Supply supply = enclosure.supplies().stream().filter(one -> one.sku().equals(frame.supply())).findFirst()
                .orElseThrow(() -> gone(frame.supply()));
        return new FilledEnclosure(enclosure, supply, frame.sleds().stream().map(builds::get).toList());
    }

    private BookRefusal gone(String sku) {
        return new BookRefusal(BookRefusal.Kind.VALUE, ("%s of %s is not in this catalogue any more; name with --catalog the one that it"
                + " was answered from, as it was then").formatted(sku, asked.name()));
    }

    private static List<Pick> picks(List<KeptMachines.Unit> units, Map<LotName, Lot> lots) {
        Map<Lot, Integer> picks = new LinkedHashMap<>();
        units.forEach(unit -> picks.merge(lots.get(unit.name()), unit.units(), Integer::sum));
        return picks.entrySet().stream().map(pick -> new Pick(pick.getKey(), pick.getValue())).toList();
    }

    private OrderAnswer answer(Map<String, List<Fill>> fills, List<FilledEnclosure> enclosures, List<Pick> picks, Job.Order job) {
        List<LineFill> lines = asked.lines().stream().map(line -> {
            List<Fill> some = fills.getOrDefault(line.name(), List.of());
            return new LineFill(line, some, line.machines() - some.stream().mapToInt(Fill::machines).sum());
        }).toList();
        Set<String> suppliers = picks.stream().map(Pick::lot).filter(lot -> !lot.onHand() && !shop.suppliers().isOwn(lot.supplier()))
                .map(Lot::supplier).collect(Collectors.toCollection(TreeSet::new));
        OrderOutcome.Price price = price(lines, picks, suppliers.size());
        boolean whole = lines.stream().allMatch(line -> line.missing() == 0);
        OrderOutcome outcome = new OrderOutcome(asked, shop, whole ? OrderStatus.BEST_FOUND : OrderStatus.SHORT,
                new OrderOutcome.Proof(price.total(), Double.NaN, OrderOutcome.End.KEPT, Doubts.NONE),
                new OrderOutcome.Filled(price, lines, enclosures, picks, suppliers), List.of(), OrderOutcome.Shortages.NONE);
        return new OrderAnswer(OrderView.of(outcome, Map.of(), job.discount()), job, outcome, Optional.empty());
    }

    private OrderOutcome.Price price(List<LineFill> lines, List<Pick> picks, int suppliers) {
        long labour = 0;
        long licence = 0;
        for (LineFill line : lines) {
            for (Fill fill : line.fills()) {
                OrderPrice beside = OrderPrice.of(List.of(fill.build()), List.of(), shop.labour(), line.line().request().licence());
                labour += beside.labour() * fill.machines();
                licence += beside.licence() * fill.machines();
            }
        }
        return new OrderOutcome.Price(picks.stream().mapToLong(Pick::total).sum(), labour, licence, asked.deliveryCharge() * suppliers);
    }
}
