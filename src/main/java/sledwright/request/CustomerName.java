package sledwright.request;

import java.text.Normalizer;
import java.util.regex.Pattern;

/** Names of customers as they are read: whoever looks the same on a page is the same. */
public final class CustomerName {

    /** Blanks of every kind, and what ends a line. */
    private static final Pattern BLANKS = Pattern.compile("[\\s\\p{Z}\\p{Cc}]+");
    /** What is not seen itself; joiners, which Persian and Indic names need, and the signs of Arabic figures, which are seen, stay. */
    private static final Pattern UNSEEN = Pattern.compile("[\\p{Cf}&&[^\\u200c\\u200d\\u0600-\\u0605\\u06dd\\u070f\\u08e2]]");

    private CustomerName() {
    }

    /** The name with composed letters, single blanks and nothing that cannot be seen; empty where nothing is left. */
    public static String of(String given) {
        String seen = UNSEEN.matcher(given).replaceAll("");
        return BLANKS.matcher(Normalizer.normalize(seen, Normalizer.Form.NFC)).replaceAll(" ").strip();
    }
}
