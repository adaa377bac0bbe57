package sledwright.request;

import java.text.Normalizer;
import java.util.regex.Pattern;

/** Names of customers as they are read: whoever looks the same on a page is the same. */
public final class CustomerName {

    /** Blanks of every kind, and what ends a line. */
    private static final Pattern BLANKS = Pattern.compile("[\\s\\p{Z}\\p{Cc}]+");
    /** What has no width and belongs to no letter; joiners, which Persian and Indic names need, stay. */
    private static final Pattern UNSEEN = Pattern.compile("[\\u00ad\\u200b\\u2060\\ufeff]");

    private CustomerName() {
    }

    /** The name with composed letters, single blanks and nothing that cannot be seen; empty where nothing is left. */
    public static String of(String given) {
        String seen = UNSEEN.matcher(given).replaceAll("");
        return BLANKS.matcher(Normalizer.normalize(seen, Normalizer.Form.NFC)).replaceAll(" ").strip();
    }
}
