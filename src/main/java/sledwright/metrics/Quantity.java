package sledwright.metrics;

/**
 * Figures to a millionth, so that two ways of reaching the same figure compare as equal and a target that is met exactly
 * is met.
 */
public final class Quantity {

    private static final double STEPS = 1e6;
    private static final double HALF_STEP = 0.5 / STEPS;

    private Quantity() {
    }

    /** The figure to a millionth, a half of one up. */
    public static double rounded(double figure) {
        return Math.floor(figure * STEPS + 0.5) / STEPS;
    }

    /**
     * The figure in whole millionths, so that sums and comparisons are exact.
     *
     * @throws ArithmeticException where that is beyond 64 bits
     */
    public static long micro(double figure) {
        double steps = Math.rint(figure * STEPS);
        if (!(Math.abs(steps) < Long.MAX_VALUE)) {
            throw new ArithmeticException(figure + " is too great to count in millionths");
        }
        return (long) steps;
    }

    /** Whether {@code figure} reaches {@code least}. */
    public static boolean reaches(double figure, double least) {
        return figure >= least - HALF_STEP;
    }

    /** Whether {@code figure} stays within {@code most}. */
    public static boolean within(double figure, double most) {
        return figure <= most + HALF_STEP;
    }

    /** The least figure that beats {@code other} by a share of it, and at least by something. */
    public static double betterThan(double other, double share) {
        return Math.max(other * (1 + share) - HALF_STEP, other + HALF_STEP);
    }

    /** The greatest figure that undercuts {@code other} by a share of it, and at least by something. */
    public static double lessThan(double other, double share) {
        return Math.min(other * (1 - share) + HALF_STEP, other - HALF_STEP);
    }
}
