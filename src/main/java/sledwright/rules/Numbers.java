package sledwright.rules;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Figures as sentences write them. */
public final class Numbers {

    private Numbers() {
    }

    /** The figure with at most two decimals and no trailing zeros: {@code 230.4}, {@code 16}. */
    public static String plain(double figure) {
        BigDecimal rounded = BigDecimal.valueOf(figure).setScale(2, RoundingMode.HALF_UP).stripTrailingZeros();
        return (rounded.scale() < 0 ? rounded.setScale(0) : rounded).toPlainString();
    }

    /** A number of things: {@code 1 module}, {@code 2 modules}. */
    public static String counted(int number, String one, String several) {
        return number + " " + (number == 1 ? one : several);
    }
}
