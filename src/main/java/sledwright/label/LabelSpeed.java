package sledwright.label;

import java.util.Optional;

/**
 * What a label says of speed: {@code PC4-2400T}, or {@code PC3L-12800} and a CAS latency.
 *
 * @param voltage the letter after the prefix; may be empty
 * @param mts     transfer rate, MT/s, as the generation lists it
 * @param bin     only in the speed form
 * @param latency only in the bandwidth form
 */
public record LabelSpeed(Generation generation, String voltage, Form form, int mts, Optional<SpeedBin> bin, Optional<Latency> latency) {

    /** The two ways to print a label. */
    public enum Form {
        /** MT/s, then the speed bin. */
        SPEED,
        /** MB/s, then the module's type and the CAS latency. */
        BANDWIDTH
    }

    public LabelSpeed {
        if (form == Form.SPEED ? generation == Generation.DDR3 || latency.isPresent() : bin.isPresent()) {
            throw new IllegalArgumentException("a speed that no label has");
        }
    }

    /** Supply voltage, V. */
    public double volts() {
        return generation.volts().get(voltage);
    }

    /** The bandwidth of the module as labels print it, MB/s. */
    int designation() {
        return generation.ofMts(mts).orElseThrow().designation();
    }
}
