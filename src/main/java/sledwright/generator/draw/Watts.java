package sledwright.generator.draw;

/** Watts in millionths, so that sums are exact. */
public final class Watts {

    private static final double MICRO = 1e6;

    private Watts() {
    }

    public static long micro(double watts) {
        return Math.round(watts * MICRO);
    }

    public static double of(long microwatts) {
        return microwatts / MICRO;
    }
}
