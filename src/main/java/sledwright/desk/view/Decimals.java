package sledwright.desk.view;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Figures as programs read them. */
public final class Decimals {

    private static final int DIGITS = 6;

    private Decimals() {
    }

    /** The figure to a millionth, without an exponent or trailing zeros. */
    public static BigDecimal of(double figure) {
        BigDecimal rounded = BigDecimal.valueOf(figure).setScale(DIGITS, RoundingMode.HALF_UP).stripTrailingZeros();
        return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
    }
}
