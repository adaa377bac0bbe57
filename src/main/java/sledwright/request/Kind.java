package sledwright.request;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a request file asks for. */
public enum Kind {
    QUOTE, BUILD, ORDER, RESTOCK, UPGRADE;

    /** The word that files use for this kind. */
    public String label() {
        return name().toLowerCase(Locale.ROOT);
    }

    static Optional<Kind> named(String label) {
        return Arrays.stream(values()).filter(kind -> kind.label().equalsIgnoreCase(label)).findFirst();
    }

    static List<String> labels(List<Kind> kinds) {
        return kinds.stream().map(Kind::label).toList();
    }
}
