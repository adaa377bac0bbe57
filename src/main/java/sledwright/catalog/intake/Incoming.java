package sledwright.catalog.intake;

import java.util.Map;
import sledwright.input.Place;

/**
 * A row of theirs in our columns.
 *
 * @param cells our column -> what they say, where they say anything
 */
record Incoming(Place place, Map<String, Told> cells) {

    /**
     * One value.
     *
     * @param address the cell that it stands in, such as C7; empty for a constant
     */
    record Told(String text, String address) {
    }

    Incoming {
        cells = Map.copyOf(cells);
    }

    String text(String column) {
        Told told = cells.get(column);
        return told == null ? "" : told.text();
    }
}
