package sledwright.generator;

/** Watts in millionths, so that sums are exact. */
final class Watts {

    private static final double MICRO = 1e6;

    private Watts() {
    }

    static long micro(double watts) {
        return Math.round(watts * MICRO);
    }

    static double of(long microwatts) {
        return microwatts / MICRO;
    }
}
