package sledwright.input;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * The sane range of a figure.
 *
 * @param min   the least
 * @param above whether {@code min} itself is out of range
 * @param max   the most
 * @param unit  what the figure counts; may be empty
 * @param also  units in which people state it by mistake
 */
public record Bounds(BigDecimal min, boolean above, BigDecimal max, String unit, List<OtherUnit> also) {

    /** Another unit, {@code perUnit} of which make one of the right one. */
    public record OtherUnit(String unit, BigDecimal perUnit) {
    }

    public Bounds {
        also = List.copyOf(also);
    }

    /** From {@code min} to {@code max}, both included. */
    public static Bounds of(double min, double max, String unit) {
        return new Bounds(BigDecimal.valueOf(min), false, BigDecimal.valueOf(max), unit, List.of());
    }

    /** Above {@code min}, up to {@code max}. */
    public static Bounds above(double min, double max, String unit) {
        return new Bounds(BigDecimal.valueOf(min), true, BigDecimal.valueOf(max), unit, List.of());
    }

    /** The same range, with a hint for figures that would fit it if they were in another unit. */
    public Bounds not(String otherUnit, double perUnit) {
        List<OtherUnit> more = new ArrayList<>(also);
        more.add(new OtherUnit(otherUnit, BigDecimal.valueOf(perUnit)));
        return new Bounds(min, above, max, unit, more);
    }

    public boolean holds(BigDecimal figure) {
        int floor = figure.compareTo(min);
        return (above ? floor > 0 : floor >= 0) && figure.compareTo(max) <= 0;
    }

    /** What would be right instead of a figure out of range. */
    String right(BigDecimal figure) {
        for (OtherUnit other : also) {
            BigDecimal converted = figure.divide(other.perUnit(), 6, RoundingMode.HALF_UP);
            if (holds(converted)) {
                return "must be %s; is it in %s? %s %s is %s %s".formatted(this, other.unit(), plain(figure),
                        other.unit(), plain(converted), unit);
            }
        }
        return "must be " + this;
    }

    /** The range in words, such as {@code from 1 to 1024 GB}. */
    @Override
    public String toString() {
        return (above ? "above " + plain(min) + ", at most " : "from " + plain(min) + " to ") + plain(max)
                + (unit.isEmpty() ? "" : " " + unit);
    }

    private static String plain(BigDecimal figure) {
        return figure.stripTrailingZeros().toPlainString();
    }
}
