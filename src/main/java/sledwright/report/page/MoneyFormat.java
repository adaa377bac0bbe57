package sledwright.report.page;

import java.math.RoundingMode;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.text.NumberFormat;
import java.util.Currency;
import java.util.Locale;

/** How a locale writes amounts, with the code of a currency in place of a sign that paper has no letters for. */
final class MoneyFormat {

    private static final char SIGN = '\u00a4';
    private static final String NO_BREAK = "\u00a0";

    private MoneyFormat() {
    }

    static NumberFormat of(Locale locale, Currency currency) {
        NumberFormat money = NumberFormat.getCurrencyInstance(locale);
        money.setCurrency(currency);
        money.setMinimumFractionDigits(Math.max(0, currency.getDefaultFractionDigits()));
        money.setMaximumFractionDigits(Math.max(0, currency.getDefaultFractionDigits()));
        money.setRoundingMode(RoundingMode.HALF_UP);
        if (money instanceof DecimalFormat decimal
                && !PaperFont.shows(withoutMarks(decimal.getDecimalFormatSymbols().getCurrencySymbol()))) {
            writeCode(decimal, currency.getCurrencyCode());
        }
        return money;
    }

    /** Letters do not touch figures, as a sign may. */
    private static void writeCode(DecimalFormat money, String code) {
        String pattern = withoutMarks(money.toPattern());
        int sign = pattern.indexOf(SIGN);
        boolean touchesBehind = sign + 1 < pattern.length() && "#0".indexOf(pattern.charAt(sign + 1)) >= 0;
        boolean touchesBefore = sign > 0 && "#0".indexOf(pattern.charAt(sign - 1)) >= 0;
        DecimalFormatSymbols symbols = money.getDecimalFormatSymbols();
        symbols.setCurrencySymbol((touchesBefore ? NO_BREAK : "") + code + (touchesBehind ? NO_BREAK : ""));
        money.setDecimalFormatSymbols(symbols);
    }

    /** A formatted figure without the marks of writing from the right: no document of the program is written so. */
    static String withoutMarks(String figure) {
        return figure.replace("\u200e", "").replace("\u200f", "").replace("\u061c", "");
    }
}
