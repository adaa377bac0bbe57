package sledwright.words;

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
}
