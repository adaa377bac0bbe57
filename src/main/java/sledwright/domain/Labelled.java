package sledwright.domain;

import java.util.Locale;

/** A constant that files and answers call by its name, in small letters and with hyphens. */
public interface Labelled {

    String name();

    /** The word that files use. */
    default String label() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
