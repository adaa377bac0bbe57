package sledwright.mail;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The forms of the grammar, from its file. */
final class Forms {

    private static final String FILE = "/sledwright/mail/grammar.txt";
    private static final Pattern OTHER = Pattern.compile("<<([a-z.-]+)>>");
    private static final Map<String, String> TEXTS = read();
    private static final Map<String, Pattern> FORMS = new ConcurrentHashMap<>();

    private Forms() {
    }

    /** @throws IllegalArgumentException when the file has none of that name */
    static Pattern of(String name) {
        return FORMS.computeIfAbsent(name, key -> Numerals.form(text(key)));
    }

    private static String text(String name) {
        String own = TEXTS.get(name);
        if (own == null) {
            throw new IllegalArgumentException(name);
        }
        return OTHER.matcher(own).replaceAll(other -> Matcher.quoteReplacement(text(other.group(1))));
    }

    private static Map<String, String> read() {
        try (InputStream in = Forms.class.getResourceAsStream(FILE)) {
            Map<String, String> texts = new HashMap<>();
            String file = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            file.lines().filter(line -> !line.isEmpty() && !line.startsWith("#")).forEach(line -> {
                int end = line.indexOf(" = ");
                texts.put(line.substring(0, end), line.substring(end + 3));
            });
            return texts;
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
