package sledwright.desk.view;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sledwright.desk.view.OrderView.Cause;
import sledwright.desk.view.OrderView.Contents;
import sledwright.desk.view.OrderView.Cost;
import sledwright.desk.view.OrderView.Delivery;
import sledwright.desk.view.OrderView.Filled;
import sledwright.desk.view.OrderView.Group;
import sledwright.desk.view.OrderView.Housed;
import sledwright.desk.view.OrderView.Lack;
import sledwright.desk.view.OrderView.Later;
import sledwright.desk.view.OrderView.OrderProof;
import sledwright.desk.view.OrderView.Picked;
import sledwright.desk.view.OrderView.Scarce;
import sledwright.desk.view.OrderView.Shortage;
import sledwright.desk.view.OrderView.Sled;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Discount;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.FilledEnclosure;
import sledwright.domain.Lot;
import sledwright.domain.Lot.PriceBreak;
import sledwright.domain.MemoryModule;
import sledwright.domain.Objective;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.explain.Explanation;
import sledwright.metrics.OrderPrice;
import sledwright.metrics.Quantity;
import sledwright.metrics.SurplusWorth;
import sledwright.planner.order.OrderOutcome;
import sledwright.planner.order.OrderOutcome.Fill;
import sledwright.planner.order.OrderOutcome.LightestSled;
import sledwright.planner.order.OrderOutcome.LineFill;
import sledwright.planner.order.OrderOutcome.Price;
import sledwright.planner.order.OrderOutcome.Shortages;
import sledwright.planner.order.OrderOutcome.TooFewBays;
import sledwright.planner.order.OrderOutcome.TooFewSuppliers;
import sledwright.planner.order.OrderOutcome.Unfed;
import sledwright.planner.order.OrderOutcome.Unhoused;
import sledwright.planner.order.OrderStatus;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/** Makes the view of one outcome: numbers its machines, gives each sled its bay, and shares out what lots cost. */
final class OrderViews {

    private final OrderOutcome outcome;
    private final Catalog catalog;
    private final Map<String, Explanation> why;
    private final Discount discount;
    private final Map<Lot, PriceBreak> breaks = new HashMap<>();
    private final Map<Lot, Integer> left = new LinkedHashMap<>();
    private final Map<Build, Deque<Sled>> unhoused = new HashMap<>();

    OrderViews(OrderOutcome outcome, Map<String, Explanation> why, Discount discount) {
        this.outcome = outcome;
        this.discount = discount;
        this.why = why;
        catalog = outcome.catalog();
        outcome.picks().forEach(pick -> {
            breaks.put(pick.lot(), pick.priceBreak());
            left.merge(pick.lot(), pick.quantity(), Integer::sum);
        });
    }

    OrderView make() {
        List<Filled> lines = outcome.lines().stream().map(this::line).toList();
        Payment pays = Payment.of(outcome.price().total(), outcome.missing() == 0 ? discount : discount.ofOthers(), catalog);
        List<Line> picks = parts(outcome.picks());
        Earnings earned = Earnings.of(picks, pays, catalog.house().marginFloor());
        List<Sentence> warnings = new ArrayList<>(earned.warning("The order", catalog.currency().getCurrencyCode()).stream().toList());
        if (discount.agreed().isPresent() && outcome.missing() > 0) {
            warnings.add(Sentence.plain("The agreed price is that of all machines; what can be delivered is at its own price."));
        }
        return new OrderView(new Topic(outcome.order().name(), outcome.order().machines(), catalog.currency().getCurrencyCode()), proof(),
                cost(outcome.price()), new Sale(pays, Optional.of(earned)), new Contents(lines, enclosures(), picks, suppliers(),
                outcome.scarce().stream().map(scarce -> new Scarce(scarce.sku(), catalog.amount(scarce.saves()))).toList()),
                outcome.missing() == 0 ? Optional.empty() : Optional.of(shortage(outcome.shortages())),
                AnswerDay.of(catalog, outcome.picks().stream()).warning(warnings));
    }

    private OrderProof proof() {
        boolean nothing = outcome.delivered() == 0;
        return new OrderProof(status(), nothing ? Optional.empty() : amount(outcome.best()), nothing ? Optional.empty()
                : amount(outcome.bound()), gapPercent(), outcome.proof().ended(), outcome.proof().doubts());
    }

    /** Nothing delivered is impossible only where it is proved that nothing can be. */
    private OrderStatus status() {
        return outcome.status() == OrderStatus.IMPOSSIBLE && !outcome.shortages().most() ? OrderStatus.SHORT : outcome.status();
    }

    private Optional<BigDecimal> amount(double figure) {
        return Double.isFinite(figure) ? Optional.of(catalog.amount(Math.round(figure))) : Optional.empty();
    }

    private Optional<BigDecimal> gapPercent() {
        double gap = outcome.gap();
        return Double.isFinite(gap) ? Optional.of(BigDecimal.valueOf(Math.max(0, gap) * 100).setScale(3, RoundingMode.UP))
                : Optional.empty();
    }

    /** What further part numbers of memory module count, minor units. */
    private long charge() {
        return outcome.lines().stream().flatMap(line -> line.fills().stream())
                .mapToLong(fill -> fill.machines() * outcome.order().modulePartCharge()
                * Math.max(0, fill.build().modules().values().stream().map(MemoryModule::sku).distinct().count() - 1)).sum();
    }

    /** What surplus is worth, minor units. */
    private long worth() {
        double worth = 0;
        for (LineFill line : outcome.lines()) {
            if (line.line().request().objective() == Objective.BEST_VALUE) {
                Request one = line.line().request().withMachines(1);
                for (Fill fill : line.fills()) {
                    worth += fill.machines() * SurplusWorth.of(one, fill.figures());
                }
            }
        }
        return Math.round(worth);
    }

    private Cost cost(Price price) {
        return new Cost(catalog.amount(price.parts()), catalog.amount(price.labour()), catalog.amount(price.licence()),
                catalog.amount(price.delivery()), catalog.amount(price.total()), catalog.amount(charge()), catalog.amount(worth()));
    }

    private List<Line> parts(List<Pick> picks) {
        return Lines.parts(picks, this::priceBreak, catalog);
    }

    /** What a unit of the lot costs, customer and shop, with all that the whole order takes from it. */
    private PriceBreak priceBreak(Pick pick) {
        return breaks.get(pick.lot());
    }

    private Filled line(LineFill line) {
        List<Group> groups = new ArrayList<>();
        BigDecimal price = catalog.amount(0);
        int machine = 1;
        for (Fill fill : line.fills()) {
            Group group = group(line, fill, groups.size() + 1, machine);
            groups.add(group);
            machine += fill.machines();
            price = price.add(group.build().price().orElseThrow());
        }
        return new Filled(line.line(), line.missing(), price, groups, Optional.ofNullable(why.get(line.line().name())));
    }

    private Group group(LineFill line, Fill fill, int number, int first) {
        Map<List<Pick>, Integer> alike = new LinkedHashMap<>();
        fill.picks().forEach(picks -> alike.merge(picks, 1, Integer::sum));
        Map<Lot, Integer> together = new LinkedHashMap<>();
        List<Picked> picked = new ArrayList<>();
        int machine = first;
        for (Map.Entry<List<Pick>, Integer> entry : alike.entrySet()) {
            int machines = entry.getValue();
            entry.getKey().forEach(pick -> together.merge(pick.lot(), pick.quantity() * machines, Integer::sum));
            picked.add(new Picked(machine, machine + machines - 1, parts(entry.getKey())));
            machine += machines;
        }
        together.forEach((lot, units) -> left.merge(lot, -units, Integer::sum));
        if (catalog.isSled(fill.build().platform()) && line.line().request().equipment().enclosure() == EnclosureFrom.NEW) {
            double loadW = fill.figures().loadW();
            Deque<Sled> sleds = unhoused.computeIfAbsent(fill.build(), same -> new ArrayDeque<>());
            for (int sled = first; sled < machine; sled++) {
                sleds.add(new Sled(0, line.line().name(), sled, number, loadW));
            }
        }
        List<Pick> picks = together.entrySet().stream().map(entry -> new Pick(entry.getKey(), entry.getValue())).toList();
        OrderPrice beside = OrderPrice.of(List.of(fill.build()), List.of(), catalog.labour(), line.line().request().licence());
        long price = picks.stream().mapToLong(pick -> priceBreak(pick).unitPrice() * pick.quantity()).sum()
                + beside.total() * fill.machines();
        return new Group(number, BuildView.of(fill.build(), fill.machines(), line.line().request(), catalog, picks, catalog.amount(price),
                Lines.of(fill.build(), fill.machines(), picks, this::priceBreak, line.line().request().licence(), catalog)), picked);
    }

    /** Enclosures take what the machines leave of each lot. */
    private List<Housed> enclosures() {
        List<Housed> enclosures = new ArrayList<>();
        for (FilledEnclosure filled : outcome.enclosures()) {
            List<Pick> picks = new ArrayList<>();
            filled.partCounts().forEach((sku, units) -> picks.addAll(taken(sku, units)));
            List<Sled> sleds = new ArrayList<>();
            for (Build build : filled.sleds()) {
                Sled sled = unhoused.get(build).removeFirst();
                sleds.add(new Sled(sleds.size() + 1, sled.line(), sled.machine(), sled.build(), sled.loadW()));
            }
            List<Line> lines = parts(picks);
            enclosures.add(new Housed(enclosures.size() + 1, filled, List.copyOf(sleds),
                    lines.stream().map(Line::total).reduce(catalog.amount(0), BigDecimal::add), lines));
        }
        return enclosures;
    }

    private List<Pick> taken(String sku, int units) {
        List<Pick> picks = new ArrayList<>();
        int open = units;
        for (Map.Entry<Lot, Integer> lot : left.entrySet()) {
            int some = lot.getKey().sku().equals(sku) ? Math.min(open, lot.getValue()) : 0;
            if (some > 0) {
                picks.add(new Pick(lot.getKey(), some));
                lot.setValue(lot.getValue() - some);
                open -= some;
            }
        }
        return picks;
    }

    private List<Delivery> suppliers() {
        Map<String, String> names = outcome.suppliers().stream()
                .collect(Collectors.toMap(Lot::supplierKey, name -> name, (one, same) -> one));
        SortedMap<String, List<Pick>> bySupplier = new TreeMap<>(outcome.picks().stream().filter(pick -> !pick.lot().onHand())
                .collect(Collectors.groupingBy(pick -> Lot.supplierKey(pick.lot().supplier()))));
        return bySupplier.entrySet().stream()
                .map(entry -> delivery(names.getOrDefault(entry.getKey(), entry.getValue().get(0).lot().supplier()), entry.getValue()))
                .toList();
    }

    private Delivery delivery(String supplier, List<Pick> picks) {
        boolean own = catalog.suppliers().isOwn(supplier);
        return new Delivery(supplier, own, picks.size(), picks.stream().mapToInt(Pick::quantity).sum(),
                catalog.amount(picks.stream().mapToLong(Pick::total).sum()), catalog.amount(own ? 0 : outcome.order().deliveryCharge()),
                picks.stream().mapToInt(pick -> pick.lot().leadDays()).max().orElse(0));
    }

    private Shortage shortage(Shortages shortages) {
        List<Cause> causes = new ArrayList<>();
        shortages.suppliers().ifPresent(few -> causes.add(cause(few)));
        shortages.enclosures().unfed().forEach(unfed -> causes.add(cause(unfed)));
        shortages.enclosures().unhoused().forEach(unhoused -> causes.add(cause(unhoused)));
        shortages.enclosures().bays().ifPresent(few -> causes.add(cause(few)));
        return new Shortage(shortages.most(), shortages.looked(), causes, shortages.parts().stream().map(lack -> new Lack(lack.sku(),
                catalog.part(lack.sku()).orElseThrow().description(), lack.units(), lack.byLine())).toList(),
                shortages.later().map(later -> new Later(catalog.amount(later.price()), later.leadDays(),
                        Lines.parts(later.purchases(), Pick::priceBreak, catalog))));
    }

    private Cause cause(TooFewSuppliers few) {
        return new Cause("suppliers_max", Optional.empty(), "The order allows %s; from %s all machines can be delivered%s.".formatted(
                Numbers.counted(few.allowed(), "supplier"), Numbers.counted(few.enough(), "supplier"),
                few.price().isPresent() ? " for %s %s".formatted(catalog.amount(few.price().getAsLong()),
                catalog.currency().getCurrencyCode()) : ", with the units that are lacking besides"));
    }

    private static Cause cause(Unfed unfed) {
        LightestSled sled = unfed.sled();
        double withEnclosureW = Quantity.rounded(sled.loadW() + unfed.baseW());
        return new Cause("enclosure-power", Optional.of(sled.line()),
                ("No enclosure on offer feeds even one sled of %s: the lightest %s for %s loads %s W, with %s itself %s W; "
                + "its %s x %s deliver %s W%s.").formatted(sled.line(),
                sled.inStock() ? "in stock" : "of what is on offer", unfed.enclosure(), Numbers.plain(sled.loadW()),
                unfed.enclosure(), Numbers.plain(withEnclosureW), unfed.supplies(), unfed.supply(), Numbers.plain(unfed.deliversW()),
                unfed.lowLineV().isPresent() ? " at %s V".formatted(Numbers.plain(unfed.lowLineV().getAsDouble())) : ""));
    }

    private static Cause cause(Unhoused unhoused) {
        return new Cause("enclosure", Optional.of(unhoused.line()), "No enclosure for a sled of %s is on offer, or the line forbids it: %s."
                .formatted(unhoused.line(), unhoused.enclosures().stream().map(unsold -> unsold.supplies().isEmpty() ? unsold.enclosure()
                        : "of %s the supplies %s".formatted(unsold.enclosure(), String.join(", ", unsold.supplies())))
                        .collect(Collectors.joining("; "))));
    }

    private static Cause cause(TooFewBays few) {
        String sleds = Numbers.counted(few.sleds(), "sled");
        String bays = Numbers.counted(few.bays(), "bay");
        return new Cause("enclosure-bays", Optional.empty(), few.sleds() > few.bays()
                ? "All machines together are %s; the enclosures in stock that take them have %s.".formatted(sleds, bays)
                : "The enclosures in stock have %s for %s, but do not feed that many, or lack supplies.".formatted(bays, sleds));
    }
}
