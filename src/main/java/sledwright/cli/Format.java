package sledwright.cli;

import java.util.Locale;

/** What a result is written as. */
enum Format {
    TEXT, JSON, CSV, HTML, PDF;

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
