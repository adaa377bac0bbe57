package sledwright.words;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

/** Small matters of grammar. */
public final class Sentences {

    private Sentences() {
    }

    /** {@code a}, {@code a and b}, {@code a, b and c}. */
    public static String list(List<String> items) {
        if (items.size() < 2) {
            return String.join("", items);
        }
        return String.join(", ", items.subList(0, items.size() - 1)) + " and " + items.get(items.size() - 1);
    }

    /** The text as the start of a sentence. */
    public static String capital(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    /** {@code 1 day}, {@code 2 days}. */
    public static String count(int number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }

    /** The figure to two decimals, cut off: who asks for at least so much asks for no more than the figure. */
    public static String floor(double figure) {
        return decimals(figure, 2, RoundingMode.FLOOR);
    }

    /** The figure to two decimals, rounded up: who allows so much allows the figure. */
    public static String ceiling(double figure) {
        return decimals(figure, 2, RoundingMode.CEILING);
    }

    /** The figure to a millionth. */
    public static String exact(double figure) {
        return decimals(figure, 6, RoundingMode.HALF_UP);
    }

    private static String decimals(double figure, int digits, RoundingMode rounding) {
        // To a millionth first: what is left behind it is no figure but the trace of its computation.
        BigDecimal rounded = BigDecimal.valueOf(figure).setScale(6, RoundingMode.HALF_UP).setScale(digits, rounding).stripTrailingZeros();
        return (rounded.scale() < 0 ? rounded.setScale(0) : rounded).toPlainString();
    }
}
