package sledwright.cli;

import java.util.Locale;

/** When text is coloured. */
enum Colour {
    AUTO, ALWAYS, NEVER;

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
