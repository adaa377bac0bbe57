package sledwright.catalog.intake;

import java.util.List;
import sledwright.input.Place;

/**
 * What an import does to one row of a table.
 *
 * @param key   what tells the row from others
 * @param added whether the row is new; else it is changed
 * @param edits the columns that change; of a new row, all that it has
 * @param place where the supplier's list says so
 */
public record Change(List<String> key, boolean added, List<Edit> edits, Place place) {

    /** One column; {@code before} is empty where nothing stood there. */
    public record Edit(String column, String before, String after) {
    }

    public Change {
        key = List.copyOf(key);
        edits = List.copyOf(edits);
    }
}
