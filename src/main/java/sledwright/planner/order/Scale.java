package sledwright.planner.order;

/** Money in ten-thousandths of a minor unit, so that the fractional worth of units keeps its meaning in whole numbers. */
final class Scale {

    static final long ONE = 10_000;

    private Scale() {
    }

    static long of(double minor) {
        return Math.round(minor * ONE);
    }

    static double minor(double scaled) {
        return scaled / ONE;
    }
}
