package sledwright.catalog.intake;

import java.util.List;
import java.util.Locale;
import sledwright.input.Place;

/**
 * What an import does to one row of a table.
 *
 * @param key   what identifies the row
 * @param edits the columns that change; of a new row all that it has, of one that goes all that it had
 * @param place where the supplier's list says so; the whole list where it says so by leaving the row out
 */
public record Change(List<String> key, Kind kind, List<Edit> edits, Place place) {

    /** What becomes of a row. */
    public enum Kind {
        ADDED, CHANGED,
        /** The list replaces what stood here and no longer names the lot: none of it is available. */
        SOLD_OUT,
        /** The list replaces what stood here and names the lot without this price break. */
        REMOVED;

        public String label() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /** One column; {@code before} is empty where nothing stood there. */
    public record Edit(String column, String before, String after) {
    }

    public Change {
        key = List.copyOf(key);
        edits = List.copyOf(edits);
    }
}
