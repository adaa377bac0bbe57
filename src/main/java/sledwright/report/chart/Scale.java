package sledwright.report.chart;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.NumberFormat;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * An axis that begins and ends on round numbers, with a tick at each step between: 1, 2 or 5 times a power of ten apart.
 *
 * @param from  the first tick
 * @param ticks how many there are, at least two
 */
public record Scale(BigDecimal from, BigDecimal step, int ticks) {

    /** Where the least is below this share of the most, the axis begins at nothing. */
    private static final double NEAR_NOTHING = 0.35;
    private static final List<BigDecimal> ROUND = List.of(BigDecimal.ONE, BigDecimal.valueOf(2), BigDecimal.valueOf(5), BigDecimal.TEN);

    /**
     * The scale that holds everything between two figures.
     *
     * @param about how many steps are wanted; there may be some more or fewer
     */
    public static Scale of(double least, double most, int about) {
        double low = least >= 0 && least < NEAR_NOTHING * most || least == most && least > 0 ? 0 : least;
        double high = most > low ? most : low + 1;
        BigDecimal step = round((high - low) / about);
        BigDecimal first = BigDecimal.valueOf(low).divide(step, 0, RoundingMode.FLOOR).multiply(step);
        BigDecimal last = BigDecimal.valueOf(high).divide(step, 0, RoundingMode.CEILING).multiply(step);
        return new Scale(first, step, last.subtract(first).divide(step, 0, RoundingMode.HALF_UP).intValueExact() + 1);
    }

    /** The least round number that is no less, give or take a hair. */
    private static BigDecimal round(double figure) {
        int exponent = (int) Math.floor(Math.log10(figure));
        return ROUND.stream().map(digit -> digit.scaleByPowerOfTen(exponent)).filter(step -> step.doubleValue() >= figure * (1 - 1e-9))
                .findFirst().orElseThrow();
    }

    public double least() {
        return from.doubleValue();
    }

    public double most() {
        return tick(ticks - 1).doubleValue();
    }

    private BigDecimal tick(int index) {
        return from.add(step.multiply(BigDecimal.valueOf(index)));
    }

    /** Every tick in ascending order. */
    public List<BigDecimal> values() {
        return IntStream.range(0, ticks).mapToObj(this::tick).toList();
    }

    /** Where a figure lies: 0 at the first tick, 1 at the last. */
    public double share(double figure) {
        return (figure - least()) / (most() - least());
    }

    /** A tick as it is written: with as many decimals as the step has, thousands apart. */
    public String label(BigDecimal tick, Locale locale) {
        NumberFormat format = NumberFormat.getNumberInstance(locale);
        int decimals = Math.max(0, step.stripTrailingZeros().scale());
        format.setMinimumFractionDigits(decimals);
        format.setMaximumFractionDigits(decimals);
        return format.format(tick);
    }
}
