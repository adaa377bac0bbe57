package sledwright.report.page;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.TreeSet;

/**
 * The fixed texts of documents for customers, by keys, in the language of a locale where there is a file for it
 * ({@code messages_LANGUAGE.properties}), otherwise in English.
 */
public final class Phrases {

    private static final String FILES = "sledwright.report.page.messages";
    /** The process's own language plays no part. */
    private static final ResourceBundle.Control NO_OTHER = ResourceBundle.Control
            .getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);

    private final ResourceBundle texts;

    private Phrases(ResourceBundle texts) {
        this.texts = texts;
    }

    public static Phrases of(Locale locale) {
        return new Phrases(ResourceBundle.getBundle(FILES, locale, NO_OTHER));
    }

    /** The language that the texts are in. */
    Locale language() {
        return texts.getLocale().getLanguage().isEmpty() ? Locale.ENGLISH : texts.getLocale();
    }

    /** A text whose gaps {@code %s} are filled. A point that ends what fills the last one ends the sentence, too. */
    String say(String key, Object... values) {
        String said = values.length == 0 ? texts.getString(key) : texts.getString(key).formatted(values);
        return said.endsWith("..") && !said.endsWith("...") ? said.substring(0, said.length() - 1) : said;
    }

    /** The text under a key, if there is one. */
    Optional<String> find(String key) {
        return texts.containsKey(key) ? Optional.of(texts.getString(key)) : Optional.empty();
    }

    /** Every text by its key. */
    Map<String, String> all() {
        Map<String, String> all = new LinkedHashMap<>();
        new TreeSet<>(texts.keySet()).forEach(key -> all.put(key, texts.getString(key)));
        return all;
    }
}
