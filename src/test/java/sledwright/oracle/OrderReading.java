package sledwright.oracle;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Drive;
import sledwright.domain.FilledEnclosure;
import sledwright.domain.Fitout;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.OrderRequest;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.planner.order.OrderOutcome;
import sledwright.planner.order.OrderOutcome.Fill;
import sledwright.planner.order.OrderOutcome.LineFill;
import sledwright.planner.order.OrderStatus;

/** Holds a filled order to a second, naive reading of the rules: every machine, lot, enclosure and figure of it, added up again. */
final class OrderReading {

    private final OrderOutcome outcome;
    private final OrderRequest order;
    private final Catalog catalog;
    private final List<String> wrong = new ArrayList<>();
    private final Map<Lot, Integer> drawn = new HashMap<>();
    private final List<Lot> own = new ArrayList<>();

    private OrderReading(OrderOutcome outcome, OrderRequest order, Catalog catalog) {
        this.outcome = outcome;
        this.order = order;
        this.catalog = catalog;
        order.onHand().forEach((sku, units) -> own.add(Lot.onHand(sku, units)));
    }

    /** What is wrong with an outcome; empty for nothing. */
    static String wrong(OrderOutcome outcome, OrderRequest order, Catalog catalog) {
        OrderReading reading = new OrderReading(outcome, order, catalog);
        reading.lines();
        reading.lots();
        reading.enclosures();
        reading.figures();
        reading.status();
        return String.join("; ", reading.wrong);
    }

    private void check(boolean right, String text, Object... values) {
        if (!right) {
            wrong.add(text.formatted(values));
        }
    }

    private void lines() {
        check(outcome.lines().size() == order.lines().size(), "%d lines are answered", outcome.lines().size());
        for (int i = 0; i < order.lines().size(); i++) {
            LineFill line = outcome.lines().get(i);
            Request request = order.lines().get(i).request();
            String name = order.lines().get(i).name();
            int machines = line.fills().stream().mapToInt(fill -> fill.picks().size()).sum();
            check(machines + line.missing() == order.lines().get(i).machines() && line.missing() >= 0, "%s has %d machines and lacks %d", name, machines, line.missing());
            check(Reading.partNumbers(request.require().populated(), line.fills().stream().flatMap(fill -> fill.build().modules().values().stream())
                    .map(MemoryModule::sku).distinct().count()).isEmpty(), "%s has modules of several part numbers", name);
            for (Fill fill : line.fills()) {
                check(Reading.machine(fill.build(), request, catalog.throughputFactors()).isEmpty(), "%s: a machine breaks %s", name,
                        Reading.machine(fill.build(), request, catalog.throughputFactors()));
                fill.picks().forEach(picks -> machine(name, fill.build(), request.limit(), picks));
                check(!order.lines().get(i).uniform() || alike(fill.build(), line.fills().get(0).build()), "%s is not uniform", name);
            }
        }
    }

    private void machine(String line, Build build, Limits limit, List<Pick> picks) {
        Map<String, Integer> units = new TreeMap<>();
        for (Pick pick : picks) {
            units.merge(pick.sku(), pick.quantity(), Integer::sum);
            drawn.merge(pick.lot(), pick.quantity(), Integer::sum);
            check(pick.quantity() > 0 && Reading.lot(pick.lot(), limit).isEmpty(), "%s draws on %s of %s", line, pick.lot().lot(), pick.sku());
        }
        check(units.equals(EveryMachine.units(build)), "%s: picks of %s for %s", line, units, EveryMachine.units(build));
    }

    private static boolean alike(Build one, Build other) {
        MemoryModule[][][] mine = SlotView.memory(one);
        MemoryModule[][][] its = SlotView.memory(other);
        boolean alike = one.platform().equals(other.platform()) && one.processors().equals(other.processors()) && one.cooling().equals(other.cooling())
                && one.supply().equals(other.supply());
        for (int socket = 0; alike && socket < mine.length; socket++) {
            alike = SlotView.alike(mine[socket], its[socket]);
        }
        return alike && equipment(one.fitout()).equals(equipment(other.fitout()));
    }

    /** All but the part numbers of drives. */
    private static List<Object> equipment(Fitout fitout) {
        return List.of(fitout.volumes().stream().map(volume -> List.of(volume.name(), volume.level(), volume.group(), volume.drives().stream().map(Drive::likeness).toList(),
                volume.hotSpares().stream().map(Drive::likeness).toList())).toList(), fitout.driver(), fitout.cards(), fitout.extras());
    }

    private void lots() {
        Map<String, Integer> beyond = new TreeMap<>();
        Set<Lot> seen = new HashSet<>();
        for (Pick pick : outcome.picks()) {
            Lot lot = pick.lot();
            check(seen.add(lot), "%s of %s stands twice", lot.lot(), lot.sku());
            check(catalog.lots(lot.sku()).contains(lot) || own.contains(lot), "no lot %s of %s exists", lot.lot(), lot.sku());
            check(pick.quantity() <= lot.available() && ExhaustiveDraw.unitPrice(lot, pick.quantity()) >= 0, "%d units of %s of %s", pick.quantity(), lot.lot(), lot.sku());
            int more = pick.quantity() - drawn.getOrDefault(lot, 0);
            check(more >= 0, "machines draw more of %s of %s", lot.lot(), lot.sku());
            if (more > 0) {
                beyond.merge(lot.sku(), more, Integer::sum);
                check(outcome.lines().stream().anyMatch(line -> Reading.lot(lot, line.line().request().limit()).isEmpty()), "no line accepts %s of %s", lot.lot(), lot.sku());
            }
        }
        check(seen.containsAll(drawn.keySet()), "machines draw on lots that the order does not");
        Map<String, Integer> housing = new TreeMap<>();
        for (FilledEnclosure filled : outcome.enclosures()) {
            housing.merge(filled.enclosure().sku(), 1, Integer::sum);
            housing.merge(filled.supply().sku(), filled.supply().count(), Integer::sum);
        }
        check(beyond.equals(housing), "units of %s are drawn for enclosures of %s", beyond, housing);
    }

    private void enclosures() {
        Map<Build, Integer> standing = new HashMap<>();
        for (LineFill line : outcome.lines()) {
            for (Fill fill : line.fills()) {
                if (line.line().request().equipment().enclosure() == EnclosureFrom.NEW
                        && catalog.enclosures().stream().anyMatch(any -> any.takes().contains(fill.build().platform().sku()))) {
                    standing.merge(fill.build(), fill.picks().size(), Integer::sum);
                }
            }
        }
        Map<Build, Integer> housed = new HashMap<>();
        for (FilledEnclosure filled : outcome.enclosures()) {
            filled.sleds().forEach(sled -> housed.merge(sled, 1, Integer::sum));
            // Which line a sled is of is not said; a site that any line with such sleds has is enough.
            check(outcome.lines().stream().filter(line -> line.fills().stream().anyMatch(fill -> filled.sleds().contains(fill.build())))
                            .filter(line -> filled.partCounts().keySet().stream().noneMatch(line.line().request().forbid()::contains)).anyMatch(line -> Reading.enclosure(filled, line.line().request().limit(), catalog.throughputFactors()).isEmpty()),
                    "an enclosure of %d sleds breaks a rule", filled.sleds().size());
        }
        check(standing.equals(housed), "%d kinds of sled are delivered, %d housed", standing.size(), housed.size());
    }

    private void figures() {
        long parts = 0;
        Set<String> suppliers = new HashSet<>();
        for (Pick pick : outcome.picks()) {
            parts += pick.quantity() * ExhaustiveDraw.unitPrice(pick.lot(), pick.quantity());
            if (!pick.lot().onHand() && !CpSatOrder.isOwn(pick.lot(), catalog)) {
                suppliers.add(CpSatOrder.supplier(pick.lot()));
            }
        }
        long labour = 0;
        long licence = 0;
        double beside = 0;
        for (LineFill line : outcome.lines()) {
            Request request = line.line().request();
            for (Fill fill : line.fills()) {
                NaiveFigures figures = NaiveFigures.of(fill.build(), request, catalog.throughputFactors());
                int machines = fill.picks().size();
                labour += machines * (catalog.labour().perMachine() + catalog.labour().perModule() * fill.build().modules().size()
                        + catalog.labour().perDrive() * fill.build().fitout().drives().size() + catalog.labour().perCard() * fill.build().fitout().cards().size());
                licence += machines * (request.licence().perCore() * figures.cores() + request.licence().perProcessor() * figures.processors());
                long moduleParts = fill.build().modules().values().stream().map(MemoryModule::sku).distinct().count();
                beside += machines * (order.modulePartCharge() * (moduleParts - 1) - EveryMachine.worth(request, figures));
            }
        }
        long delivery = order.deliveryCharge() * suppliers.size();
        OrderOutcome.Price price = outcome.price();
        check(price.parts() == parts && price.labour() == labour && price.licence() == licence && price.delivery() == delivery,
                "price %s, added up %d, %d, %d, %d", price, parts, labour, licence, delivery);
        check(outcome.suppliers().size() == suppliers.size(), "suppliers %s, counted %s", outcome.suppliers(), suppliers);
        check(order.suppliersMax().isEmpty() || suppliers.size() <= order.suppliersMax().getAsInt(), "%d suppliers", suppliers.size());
        check(Math.abs(outcome.best() - (parts + labour + licence + delivery + beside)) < 0.01, "best %s, added up %s", outcome.best(),
                parts + labour + licence + delivery + beside);
    }

    private void status() {
        boolean whole = outcome.missing() == 0;
        check(whole == (outcome.status() == OrderStatus.PROVED || outcome.status() == OrderStatus.BEST_FOUND)
                && (outcome.delivered() == 0) == (outcome.status() == OrderStatus.IMPOSSIBLE), "%s with %d machines", outcome.status().label(), outcome.delivered());
        check(!whole || !(outcome.bound() > outcome.best()), "bound %s above best %s", outcome.bound(), outcome.best());
    }
}
