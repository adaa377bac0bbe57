package sledwright.report.text;

import java.util.regex.Pattern;

/** Keeps a figure on one line with its unit, and a number of parts with what it counts: {@code 2133 MT/s}, {@code 8 x 32 GB}. */
public final class Unbroken {

    private static final String NO_BREAK = "\u00a0";
    private static final String UNITS = "[KMGT]B(?:/s)?|MT/s|[MG]Hz|Gbit(?:/s)?|k?Wh?|V|\u00b0?C|K|mm?|ohm|%|[A-Z]{3}";
    /** A blank behind a figure and before a unit or the code of a currency, and those on both sides of the sign for times. */
    private static final Pattern BLANK = Pattern.compile(
            "(?<=\\d) (?=(?:" + UNITS + ")(?![\\p{L}\\d]))|(?<=\\d) (?=[x\u00d7][ \u00a0]\\S)|(?<=\\d[ \u00a0][x\u00d7]) (?=\\S)");

    private Unbroken() {
    }

    public static String text(String text) {
        return BLANK.matcher(text).replaceAll(NO_BREAK);
    }
}
