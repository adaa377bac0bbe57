package sledwright.label;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A memory generation with what its labels may say.
 *
 * <p>Rates and designations of DDR3 and of DDR4 up to 2400, and the voltages that DDR3's L and no letter state, are as published
 * material quotes the standards; the later designations follow by arithmetic. DDR3's U, the voltage of DDR5 and the densities are from
 * memory. docs/labels.md has it fact by fact.
 */
public enum Generation {
    DDR3(3, rates(800, 6400, 1066, 8500, 1333, 10600, 1600, 12800, 1866, 14900, 2133, 17000),
            Map.of("", 1.5, "L", 1.35, "U", 1.25), List.of(512, 1024, 2048, 4096, 8192)),
    DDR4(4, rates(1600, 12800, 1866, 14900, 2133, 17000, 2400, 19200, 2666, 21300, 2933, 23400, 3200, 25600),
            Map.of("", 1.2), List.of(2048, 4096, 8192, 12_288, 16_384, 24_576, 32_768)),
    DDR5(5, rates(3200, 25600, 3600, 28800, 4000, 32000, 4400, 35200, 4800, 38400, 5200, 41600, 5600, 44800, 6000, 48000, 6400, 51200,
            6800, 54400, 7200, 57600, 7600, 60800, 8000, 64000, 8400, 67200, 8800, 70400),
            Map.of("", 1.1), List.of(8192, 16_384, 24_576, 32_768, 49_152, 65_536));

    /** Data bits of a module, check bits aside. */
    static final int DATA_BITS = 64;

    /** Labels round to hundreds up or down, or not at all: 21300 and 21333 are one. */
    private static final int DESIGNATION_SLACK = 100;
    /** An SPD states the clock in whole picoseconds, or in steps of 125. */
    private static final double CLOCK_SLACK = 0.005;

    private final int number;
    private final List<Rate> rates;
    private final Map<String, Double> volts;
    private final List<Integer> densitiesMbit;

    /**
     * A transfer rate.
     *
     * @param mts         MT/s
     * @param designation the bandwidth of a module as labels print it, MB/s
     */
    public record Rate(int mts, int designation) {

        /** Rates are multiples of 133 1/3 MT/s. */
        private static final double STEP = 400.0 / 3;

        /** MT/s, not rounded: 2666 2/3 where labels print 2666. */
        double exactMts() {
            return Math.round(mts / STEP) * STEP;
        }
    }

    Generation(int number, List<Rate> rates, Map<String, Double> volts, List<Integer> densitiesMbit) {
        this.number = number;
        this.rates = rates;
        this.volts = volts;
        this.densitiesMbit = densitiesMbit;
    }

    private static List<Rate> rates(int... pairs) {
        Rate[] rates = new Rate[pairs.length / 2];
        Arrays.setAll(rates, i -> new Rate(pairs[2 * i], pairs[2 * i + 1]));
        return List.of(rates);
    }

    static Optional<Generation> numbered(String number) {
        return Arrays.stream(values()).filter(generation -> String.valueOf(generation.number).equals(number)).findFirst();
    }

    /** The word before the rate, such as {@code PC4}. */
    public String prefix() {
        return "PC" + number;
    }

    /** Every rate, the slowest first. */
    public List<Rate> rates() {
        return rates;
    }

    /** The rate that a label states in MT/s; 2666 2/3 is printed as 2666 and as 2667. */
    Optional<Rate> ofMts(int mts) {
        return rates.stream().filter(rate -> rate.mts() == mts || Math.round(rate.exactMts()) == mts).findFirst();
    }

    /** The rate that a label states in MB/s. */
    Optional<Rate> ofDesignation(int mbs) {
        return rates.stream().filter(rate -> Math.abs(rate.designation() - mbs) <= DESIGNATION_SLACK).findFirst();
    }

    /** The rate of a clock, in picoseconds a cycle; two transfers in each. */
    Optional<Rate> ofClock(double cyclePs) {
        double mts = 2e6 / cyclePs;
        return rates.stream().filter(rate -> Math.abs(rate.mts() - mts) <= CLOCK_SLACK * mts).findFirst();
    }

    /** The rate, as it stands, that is nearest to a figure in MT/s or MB/s. */
    String nearest(int figure) {
        return rates.stream().flatMap(rate -> List.of(rate.mts(), rate.designation()).stream())
                .min(Comparator.comparingInt(known -> Math.abs(known - figure))).map(known -> prefix() + "-" + known).orElseThrow();
    }

    /** Letters that may follow the prefix, with the supply voltage that each states; the empty one is none. */
    public Map<String, Double> volts() {
        return volts;
    }

    /** Whether a letter states a supply voltage in any generation. */
    static boolean isVoltage(String letter) {
        return Arrays.stream(values()).anyMatch(generation -> generation.volts.containsKey(letter));
    }

    /** What one memory device may hold, in megabits. */
    public List<Integer> densitiesMbit() {
        return densitiesMbit;
    }
}
