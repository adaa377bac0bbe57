package sledwright.generator;

import java.util.Locale;

/** How far an answer can be trusted. */
public enum Status {
    /** No better valid build exists. */
    PROVED,
    /** The search was ended first; nothing better than the bound exists. */
    BEST_FOUND,
    /** No valid build exists. */
    IMPOSSIBLE;

    public String label() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
