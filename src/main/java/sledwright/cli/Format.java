package sledwright.cli;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;

/** What a result is written as. */
enum Format {
    TEXT, JSON, CSV, HTML, PDF, SVG, XLSX, EML;

    /** The formats that every command writes, and those that one writes beside them. */
    static Set<Format> commonAnd(Format... more) {
        Set<Format> formats = EnumSet.of(TEXT, JSON, CSV);
        formats.addAll(Set.of(more));
        return formats;
    }

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
