package sledwright.words;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Figures and counts as sentences and programs write them. */
public final class Numbers {

    private static final int FINEST = 6;

    private Numbers() {
    }

    /** The figure to a millionth, without an exponent or trailing zeros. */
    public static BigDecimal decimal(double figure) {
        return rounded(figure, FINEST, RoundingMode.HALF_UP);
    }

    /** A rate as somebody gave it: amounts are worked out with all of its decimals. */
    public static Measure rate(BigDecimal percent) {
        BigDecimal given = percent.stripTrailingZeros();
        return new Measure(given.scale() < 0 ? given.setScale(0) : given);
    }

    /** The figure with at most two decimals and no trailing zeros: {@code 230.4}, {@code 16}. */
    public static Measure plain(double figure) {
        BigDecimal rounded = BigDecimal.valueOf(figure).setScale(2, RoundingMode.HALF_UP).stripTrailingZeros();
        return new Measure(rounded.scale() < 0 ? rounded.setScale(0) : rounded);
    }

    /** The figure to two decimals, cut off: who asks for at least so much asks for no more than the figure. */
    public static Measure floor(double figure) {
        return new Measure(rounded(figure, 2, RoundingMode.FLOOR));
    }

    /** The figure to two decimals, rounded up: who allows so much allows the figure. */
    public static Measure ceiling(double figure) {
        return new Measure(rounded(figure, 2, RoundingMode.CEILING));
    }

    /** The figure to a millionth. */
    public static String exact(double figure) {
        return decimal(figure).toPlainString();
    }

    /** A number of things: {@code 1 module}, {@code 2 modules}. */
    public static String counted(int number, String one) {
        return counted(number, one, one + "s");
    }

    /** An amount of things, to two decimals: {@code 1 month}, {@code 1.5 months}. */
    public static String counted(double amount, String one) {
        Measure words = plain(amount);
        return words + " " + (words.toString().equals("1") ? one : one + "s");
    }

    /** A number of things: {@code 1 breach}, {@code 2 breaches}. */
    public static String counted(int number, String one, String several) {
        return number + " " + (number == 1 ? one : several);
    }

    private static BigDecimal rounded(double figure, int digits, RoundingMode rounding) {
        // To a millionth first: what is left behind it is no figure but the trace of its computation.
        BigDecimal rounded = BigDecimal.valueOf(figure).setScale(FINEST, RoundingMode.HALF_UP).setScale(digits, rounding)
                .stripTrailingZeros();
        return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
    }
}
