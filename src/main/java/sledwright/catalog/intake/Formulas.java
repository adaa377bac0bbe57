package sledwright.catalog.intake;

/**
 * Texts that a spreadsheet would run as a formula. They are written with an apostrophe before them; so are texts that already
 * begin with apostrophes and such a text, so that taking one away gives back what was written.
 */
public final class Formulas {

    private static final String STARTS = "=+-@\t\r";

    private Formulas() {
    }

    public static String defused(String text) {
        return isFormula(bare(text)) ? "'" + text : text;
    }

    static String restored(String text) {
        return text.startsWith("'") && isFormula(bare(text)) ? text.substring(1) : text;
    }

    private static String bare(String text) {
        int start = 0;
        while (start < text.length() && text.charAt(start) == '\'') {
            start++;
        }
        return text.substring(start);
    }

    private static boolean isFormula(String text) {
        return !text.isEmpty() && STARTS.indexOf(text.charAt(0)) >= 0;
    }
}
