package sledwright.request;

import sledwright.domain.OrderLine;
import sledwright.input.Bounds;

/** The sane range of every figure of a request. They are wide: what is outside was mistyped. Common practice, no source. */
public final class RequestBounds {

    public static final Bounds MACHINES = Bounds.of(1, 100_000, "machines");
    public static final Bounds ALTERNATIVES = Bounds.of(1, 100, "alternatives");
    public static final Bounds STEP = Bounds.of(0, 10, "").not("percent", 100);

    public static final Bounds PROCESSORS = Bounds.of(0, 64, "processors");
    public static final Bounds SUPPLY_COUNT = Bounds.of(1, 16, "supplies");
    public static final Bounds CORES = Bounds.of(0, 1_000_000, "cores");
    public static final Bounds MEMORY_GB = Bounds.of(0, 1e9, "GB");
    public static final Bounds BANDWIDTH_GBS = Bounds.of(0, 1e9, "GB/s");
    public static final Bounds THROUGHPUT = Bounds.of(0, 1e9, "");
    public static final Bounds GHZ = Bounds.of(0, 20, "GHz").not("MHz", 1000);
    public static final Bounds GB_PER_CORE = Bounds.of(0, 1e9, "GB");
    public static final Bounds GBS_PER_CORE = Bounds.of(0, 1e9, "GB/s");
    public static final Bounds SPARE_SLOTS = Bounds.of(0, 1_000_000, "slots");

    public static final Bounds HOT_SPARES = Bounds.of(0, 64, "spares");
    public static final Bounds CARD_COUNT = Bounds.of(1, 64, "cards");
    public static final Bounds CARD_PORTS = Bounds.of(0, 64, "ports");
    public static final Bounds PORT_GBIT = Bounds.of(0, 3200, "Gbit/s").not("Mbit/s", 1000);
    public static final Bounds EXTRA_UNITS = Bounds.of(0, 1000, "units");

    public static final Bounds DISCOUNT = Bounds.of(0, 100, "percent");
    public static final Bounds PRICE_POINTS = Bounds.of(0, 3, "points");
    public static final Bounds PRICE = Bounds.of(0, 1e14, "");
    public static final Bounds POWER_W = Bounds.of(0, 1e9, "W");
    public static final Bounds LEAD_DAYS = Bounds.of(0, 36_500, "days");
    public static final Bounds INLET_C = Bounds.of(-50, 80, "degrees Celsius");
    public static final Bounds ALTITUDE_M = Bounds.of(-500, 9000, "m");
    public static final Bounds MAINS_V = Bounds.of(1, 1000, "V");

    public static final Bounds WORTH = Bounds.of(0, 1e9, "");
    public static final Bounds LICENCE = Bounds.of(0, 1e9, "");
    public static final Bounds ON_HAND = Bounds.of(0, 1_000_000, "units");

    public static final Bounds YEARS = Bounds.of(0, 100, "years").not("months", 12);
    public static final Bounds DUTY = Bounds.of(0, 1, "of the load").not("percent", 100);

    public static final Bounds LINES = Bounds.of(1, 10_000, "lines");
    public static final Bounds PRIORITY = Bounds.of(OrderLine.LEAST_PRIORITY, OrderLine.MOST_PRIORITY, "");
    public static final Bounds SUPPLIERS = Bounds.of(1, 100_000, "suppliers");
    public static final Bounds CHARGE = Bounds.of(0, 1e9, "");

    public static final Bounds TRADE_IN = Bounds.of(0, 1, "of the price").not("percent", 100);

    public static final Bounds HORIZON_MONTHS = Bounds.above(0, 60, "months");
    public static final Bounds DEPRECIATION = Bounds.of(0, 1, "of the cost").not("percent", 100);
    public static final Bounds SERVICE_LEVEL = Bounds.above(0, 0.9999, "of all lead times").not("percent", 100);
    public static final Bounds SAMPLES = Bounds.of(10, 100_000, "samples");
    public static final Bounds ORDERS = Bounds.of(0, 10_000, "orders");

    private RequestBounds() {
    }
}
