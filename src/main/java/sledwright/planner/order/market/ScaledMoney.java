package sledwright.planner.order.market;

/** Money in ten-thousandths of a minor unit, so that the fractional worth of units keeps its meaning in whole numbers. */
public final class ScaledMoney {

    public static final long ONE = 10_000;

    private ScaledMoney() {
    }

    public static long of(double minor) {
        return Math.round(minor * ONE);
    }

    public static double minor(double scaled) {
        return scaled / ONE;
    }
}
