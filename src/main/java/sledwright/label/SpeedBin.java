package sledwright.label;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The letters after the rate in the speed form.
 *
 * <p>DDR4: P, T, U (with its 3DS form), V, W, Y and AA as two server makers' guides print them, V and Y with their 3DS forms as one of
 * them does; the other letters, the other 3DS forms and which rates have which letter are from memory of JESD79-4. DDR5: a letter means
 * other cycles at each rate; those of 4800B are as a server maker's parts list prints them.
 */
public enum SpeedBin {
    J(Generation.DDR4, 10, false, 1600),
    K(Generation.DDR4, 11, false, 1600),
    L(Generation.DDR4, 12, false, 1600, 1866),
    M(Generation.DDR4, 13, false, 1866),
    N(Generation.DDR4, 14, false, 1866, 2133),
    P(Generation.DDR4, 15, true, 2133, 2400),
    R(Generation.DDR4, 16, false, 2133, 2400),
    T(Generation.DDR4, 17, true, 2400, 2666),
    U(Generation.DDR4, 18, true, 2400, 2666),
    V(Generation.DDR4, 19, true, 2666, 2933),
    W(Generation.DDR4, 20, true, 2666, 2933, 3200),
    Y(Generation.DDR4, 21, true, 2933),
    AA(Generation.DDR4, 22, true, 2933, 3200),
    AC(Generation.DDR4, 24, false, 3200),
    A(Generation.DDR5),
    AN(Generation.DDR5),
    B(Generation.DDR5),
    BN(Generation.DDR5),
    C(Generation.DDR5);

    private static final int DDR5_B_RATE = 4800;

    private final Generation generation;
    private final int cycles;
    private final boolean seen;
    private final List<Integer> rates;

    SpeedBin(Generation generation, int cycles, boolean seen, Integer... rates) {
        this.generation = generation;
        this.cycles = cycles;
        this.seen = seen;
        this.rates = List.of(rates);
    }

    SpeedBin(Generation generation) {
        this(generation, 0, false);
    }

    static List<SpeedBin> of(Generation generation) {
        return Arrays.stream(values()).filter(bin -> bin.generation == generation).toList();
    }

    /** Those usual at a rate; all where the rate is not known. */
    static List<SpeedBin> of(Generation generation, Optional<Integer> mts) {
        return of(generation).stream().filter(bin -> mts.map(bin::usualAt).orElse(true)).toList();
    }

    static Optional<SpeedBin> named(String letters, Generation generation) {
        return of(generation).stream().filter(bin -> bin.name().equals(letters)).findFirst();
    }

    /** The bin of those cycles at that rate. */
    static Optional<SpeedBin> of(Latency latency, Generation generation, int mts, boolean stacked) {
        return of(generation, Optional.of(mts)).stream().filter(bin -> bin.latency(mts, stacked).equals(Optional.of(latency))).findFirst();
    }

    /** CL-tRCD-tRP; empty where the letter alone does not decide. */
    Optional<Latency> latency(int mts, boolean stacked) {
        if (generation == Generation.DDR5) {
            return this == B && mts == DDR5_B_RATE ? Optional.of(Latency.of(stacked ? 46 : 40, 39, 39)) : Optional.empty();
        }
        if (!stacked) {
            return Optional.of(Latency.of(cycles, cycles, cycles));
        }
        return switch (this) {
            case P -> Optional.of(Latency.of(17, 15, 15));
            case T -> Optional.of(Latency.of(19, 17, 17));
            case U -> Optional.of(Latency.of(20, 18, 18));
            case V -> Optional.of(Latency.of(22, 19, 19));
            case Y -> Optional.of(Latency.of(24, 21, 21));
            case AA -> Optional.of(Latency.of(26, 22, 22));
            default -> Optional.empty();
        };
    }

    /** Whether the cycles are from memory rather than from something published that was seen. */
    boolean fromMemory(boolean stacked) {
        return stacked ? this != U && this != V && this != Y && this != B : !seen && this != B;
    }

    /** Whether the standard has the letter at that rate (from memory); DDR5 has each at every rate. */
    boolean usualAt(int mts) {
        return generation == Generation.DDR5 || rates.contains(mts);
    }
}
