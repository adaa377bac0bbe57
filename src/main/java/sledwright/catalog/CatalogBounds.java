package sledwright.catalog;

import java.math.BigInteger;
import sledwright.input.Bounds;

/**
 * The sane range of every figure of a catalogue. They are wide: what is outside was mistyped or is in another unit. Common
 * practice, no source.
 */
public final class CatalogBounds {

    /**
     * What all units of a stock or a supply come to at most, minor units: half of what doubles hold exactly; what else an order costs has
     * the other half.
     */
    public static final BigInteger COUNTABLE = BigInteger.ONE.shiftLeft(52);

    public static final Bounds STALE_DAYS = Bounds.of(0, 3650, "days");
    public static final Bounds MARGIN_FLOOR = Bounds.of(0, 1, "");
    public static final Bounds PARALLEL = Bounds.of(0, 1, "");
    public static final Bounds GB_PER_UNIT = Bounds.of(0, 1e6, "GB");
    public static final Bounds GB_PER_CORE = Bounds.of(0, 1e6, "GB");
    public static final Bounds CORES = Bounds.of(1, 1024, "cores");
    public static final Bounds THREADS = Bounds.of(1, 8192, "threads");
    public static final Bounds GHZ = Bounds.of(0.1, 10, "GHz").not("MHz", 1000);
    public static final Bounds TDP_W = Bounds.of(1, 2000, "W");
    public static final Bounds MTS = Bounds.of(400, 12_000, "MT/s").not("MB/s", 8).not("GT/s", 0.001);
    public static final Bounds MAX_MEMORY_GB = Bounds.of(1, 65_536, "GB").not("MB", 1024);
    public static final Bounds SOCKETS_MAX = Bounds.of(1, 16, "sockets");
    public static final Bounds THROUGHPUT = Bounds.of(0, 1_000_000, "");
    public static final Bounds FACTOR = Bounds.above(0, 10_000, "");

    public static final Bounds CAPACITY_GB = Bounds.of(1, 1024, "GB").not("MB", 1024);
    public static final Bounds RANKS = Bounds.of(1, 16, "ranks");
    public static final Bounds VOLTAGE = Bounds.of(0.8, 3.3, "V").not("mV", 1000);
    public static final Bounds MODULE_W = Bounds.of(0, 100, "W");

    public static final Bounds DRIVE_GB = Bounds.above(0, 200_000, "GB").not("TB", 0.001);
    public static final Bounds DRIVE_W = Bounds.of(0, 100, "W");
    public static final Bounds DRIVE_MBS = Bounds.of(1, 100_000, "MB/s").not("GB/s", 0.001);
    public static final Bounds ENDURANCE_DWPD = Bounds.of(0, 200, "writes of the drive a day");
    public static final Bounds PCIE_GENERATION = Bounds.of(1, 8, "");
    public static final Bounds LANES = Bounds.of(1, 32, "lanes");
    public static final Bounds LENGTH_MM = Bounds.above(0, 600, "mm").not("cm", 0.1);
    public static final Bounds CARD_W = Bounds.of(0, 2000, "W");
    public static final Bounds CARD_PORTS = Bounds.of(1, 64, "ports");
    public static final Bounds PORT_GBIT = Bounds.above(0, 3200, "Gbit/s").not("Mbit/s", 1000);
    public static final Bounds DRIVE_PORTS = Bounds.of(1, 1024, "ports");
    public static final Bounds EXTRA_W = Bounds.of(0, 1000, "W");
    public static final Bounds DRIVE_BAYS = Bounds.of(1, 256, "bays");
    public static final Bounds SOCKETS = Bounds.of(1, 16, "sockets");
    public static final Bounds SOCKET = Bounds.of(1, 16, "");
    public static final Bounds EMPTY_SOCKETS = Bounds.of(1, 1, "");
    public static final Bounds EXTRA_UNITS = Bounds.of(0, 1000, "units");

    public static final Bounds MONEY = Bounds.of(0, 1_000_000_000, "");
    public static final Bounds MIN_QUANTITY = Bounds.of(1, 1_000_000, "units");
    public static final Bounds AVAILABLE = Bounds.of(0, 10_000_000, "units");
    public static final Bounds LEAD_DAYS = Bounds.of(0, 3650, "days");

    public static final Bounds TAX_PERCENT = Bounds.of(0, 100, "percent");
    public static final Bounds VALID_DAYS = Bounds.of(1, 3650, "days");

    public static final Bounds PROCESSOR_COUNT = Bounds.of(1, 16, "processors");
    public static final Bounds CHANNELS = Bounds.of(1, 26, "channels");
    public static final Bounds SLOTS_PER_CHANNEL = Bounds.of(1, 8, "slots");
    public static final Bounds CHANNEL_RANKS = Bounds.of(1, 128, "ranks");
    public static final Bounds CAPACITIES = Bounds.of(1, 64, "capacities");
    public static final Bounds MODULE_COUNT = Bounds.of(1, 208, "modules");
    public static final Bounds FRACTION = Bounds.above(0, 1, "of the whole").not("percent", 100);
    public static final Bounds ALTITUDE_M = Bounds.of(0, 9000, "m");
    public static final Bounds METRES_PER_KELVIN = Bounds.of(1, 10_000, "m");
    public static final Bounds INLET_C = Bounds.of(-40, 80, "degrees Celsius");
    public static final Bounds BASE_W = Bounds.of(0, 5000, "W");
    public static final Bounds BUDGET_W = Bounds.of(0, 50_000, "W");
    public static final Bounds BAYS = Bounds.of(1, 128, "bays");
    public static final Bounds SUPPLY_COUNT = Bounds.of(1, 16, "supplies");
    public static final Bounds REDUNDANT = Bounds.of(0, 15, "supplies");
    public static final Bounds SUPPLY_W = Bounds.of(1, 20_000, "W");
    public static final Bounds LOW_LINE_W = Bounds.of(0, 20_000, "W");
    public static final Bounds LOAD_PERCENT = Bounds.of(1, 100, "percent");
    public static final Bounds EFFICIENCY_PERCENT = Bounds.above(1, 100, "percent").not("shares of 1", 0.01);

    private CatalogBounds() {
    }
}
