package sledwright.request;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sledwright.catalog.CatalogBounds;
import sledwright.domain.Catalog;
import sledwright.domain.Energy;
import sledwright.domain.GreatestMachine;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.Objective;
import sledwright.domain.OrdersByMonth;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Place;
import sledwright.request.Draft.GoalFields;
import sledwright.request.Draft.LicenceFields;
import sledwright.request.Draft.WorthFields;

/**
 * Whether every amount that a request can come to stays exact: what the greatest machine of the catalogue costs, with all processors and
 * modules that any platform and any part there allow. A request beyond that is a fault, so that no sum of any command wraps or is rounded.
 * The lines of an order, and the classes of a plan, add up.
 */
final class Countable {

    /** Minor units. Orders count in ten-thousandths of them, and a linear program in doubles, which are whole up to 2^53. */
    private static final double MOST = 1e14;
    /** Minor units where machines are ranked by price less worth, which is kept in millionths: 2^63 of them are 9.2e12 minor units. */
    private static final double MOST_RANKED = 8e12;
    /** Kinds of amounts that share the most: parts, labour, two fees, four worths. */
    private static final int SHARES = 8;
    /** Demand that is drawn stays below its mean and this many standard deviations. */
    private static final double DEVIATIONS = 10;

    // Bounds of figures, a little above them, and not the formulas by which machines are judged.
    private static final double HOURS_A_YEAR_AT_MOST = 9000;
    private static final double GBS_OF_MTS_AT_MOST = 0.01;
    private static final double GHZ_AT_MOST = CatalogBounds.GHZ.max().doubleValue();

    private final Catalog catalog;
    private final Faults faults;
    private final GreatestMachine greatest;
    private double parts;
    private double labour;
    private double perCore;
    private double perProcessor;
    private double worths;
    private double expected;

    Countable(Catalog catalog, Faults faults) {
        this.catalog = catalog;
        this.faults = faults;
        greatest = catalog.greatest();
    }

    /**
     * Adds a request's machines.
     *
     * @param machines where their number stands
     */
    void require(Request request, Place machines, GoalFields goal) {
        LicenceFields licence = goal.licence();
        WorthFields worth = goal.worth();
        double most = (request.objective() == Objective.BEST_VALUE ? MOST_RANKED : MOST) / SHARES;
        int count = request.machines();
        parts = ofMachines("the parts", machines, count, greatest.price(), parts, most);
        labour = ofMachines("the labour", machines, count,
                catalog.labour().perMachine() + (double) catalog.labour().perModule() * greatest.slots(), labour, most);
        perCore = fee(licence.perCore(), request.licence().perCore(), (double) greatest.cores() * count, perCore, most);
        perProcessor = fee(licence.perProcessor(), request.licence().perProcessor(), (double) greatest.processors() * count,
                perProcessor, most);
        if (request.objective() == Objective.BEST_VALUE) {
            long gb = greatest.slots() * catalog.modules().stream().mapToLong(MemoryModule::capacityGb).max().orElse(0);
            double throughput = throughput() * count;
            worths = fee(worth.core(), request.worth().core(), (double) greatest.cores() * count, worths, 4 * most);
            worths = fee(worth.gb(), request.worth().gb(), (double) gb * count, worths, 4 * most);
            worths = fee(worth.gbs(), request.worth().gbs(), bandwidthGbs() * count, worths, 4 * most);
            worths = fee(worth.throughput(), request.worth().throughput(), throughput, worths, 4 * most);
            // No machine does more work than it has throughput.
            worths = fee(worth.work(), request.worth().work(), throughput, worths, 4 * most);
        }
    }

    private double ofMachines(String what, Place machines, int count, double each, double before, double most) {
        double sum = before + each * count;
        if (sum > most) {
            long right = (long) Math.max(0, (most - before) / each);
            faults.add(machines, "machines \"%s\": %s, at the catalogue's dearest, can come to more than can be counted; %s"
                    .formatted(count, what, right > 0 ? "it must be at most %s here".formatted(right)
                    : "not even one can be counted" + mistyped()));
            return before;
        }
        return sum;
    }

    private String mistyped() {
        return catalog.lots().values().stream().flatMap(List::stream).max(Comparator.comparingLong(Lot::dearest))
                .map(lot -> "; nothing is dearer than %s in lot %s at %s %s: is that mistyped?"
                .formatted(lot.sku(), lot.lot(), catalog.amount(lot.dearest()), catalog.currency().getCurrencyCode())).orElse("");
    }

    private double fee(Optional<Field> field, double fee, double units, double before, double most) {
        double sum = before + fee * units;
        if (sum > most) {
            field.ifPresent(given -> tooMuch(given, most - before, units));
            return before;
        }
        return sum;
    }

    /** Adds what expected orders can come to at an amount for each of their machines. */
    void requireExpected(Optional<Field> field, long amount, int machines, OrdersByMonth orders, double months) {
        expected = fee(field, amount, machines * months * (orders.mean() + DEVIATIONS * orders.deviation() + 1), expected, MOST / SHARES);
    }

    /** The price of a kWh, held against the machine that takes most. */
    void require(Energy energy, Field price, Request request) {
        double loadW = catalog.platforms().stream().mapToDouble(platform -> platform.power().baseW()).max().orElse(0)
                + greatest.processors() * catalog.processors().stream().mapToDouble(Processor::tdpW).max().orElse(0)
                + greatest.slots() * catalog.modules().stream().mapToDouble(MemoryModule::powerW).max().orElse(0);
        double efficiency = catalog.platforms().stream().flatMap(platform -> platform.power().supplies().stream())
                .flatMap(supply -> supply.efficiency().values().stream()).mapToDouble(percent -> percent / 100).min().orElse(1);
        double kwh = loadW / efficiency / 1000 * HOURS_A_YEAR_AT_MOST * energy.years() * request.machines();
        fee(Optional.of(price), energy.pricePerKwh(), kwh, 0, MOST / SHARES);
    }

    /**
     * A charge that is counted at most this many times.
     *
     * @param minor what it is, minor units
     */
    void require(Optional<Field> charge, long minor, long times) {
        fee(charge, minor, times, 0, MOST / SHARES);
    }

    private void tooMuch(Field field, double left, double units) {
        int digits = catalog.currency().getDefaultFractionDigits();
        BigDecimal right = BigDecimal.valueOf(Math.max(0, left) / units).movePointLeft(digits).setScale(digits, RoundingMode.FLOOR);
        field.fault("it can come to more than can be counted; it must be at most %s %s here".formatted(right.toPlainString(),
                catalog.currency().getCurrencyCode()), faults);
    }

    private double bandwidthGbs() {
        long mts = catalog.modules().stream().mapToLong(MemoryModule::speedMts).max().orElse(0);
        long channels = catalog.platforms().stream().map(Platform::board).mapToLong(board -> (long) board.sockets() * board.channels())
                .max().orElse(0);
        return channels * mts * GBS_OF_MTS_AT_MOST;
    }

    private double throughput() {
        double factor = catalog.throughputFactors().values().stream().mapToDouble(Double::doubleValue).max().orElse(0);
        return greatest.processors() * catalog.processors().stream()
                .mapToDouble(processor -> processor.throughput().orElse(processor.cores() * GHZ_AT_MOST * factor)).max().orElse(0);
    }
}
