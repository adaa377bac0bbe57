package sledwright.catalog.intake;

import java.util.Map;
import java.util.Optional;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Fields;
import sledwright.input.Place;

/**
 * A row as it would stand in our table.
 *
 * @param place     where it comes from: their row where it changes anything, else ours
 * @param cells     column -> text; a column without text is left out
 * @param addresses column -> the cell of theirs that its text comes from
 */
record MergedRow(Place place, Map<String, String> cells, Map<String, String> addresses, Faults faults) implements Fields {

    MergedRow {
        cells = Map.copyOf(cells);
        addresses = Map.copyOf(addresses);
    }

    MergedRow with(Faults others) {
        return new MergedRow(place, cells, addresses, others);
    }

    @Override
    public boolean has(String name) {
        return cells.containsKey(name);
    }

    @Override
    public Optional<Field> field(String name) {
        String address = addresses.get(name);
        return Optional.ofNullable(cells.get(name))
                .map(text -> new Field(address == null ? name : name + " (cell " + address + ")", text, place, false));
    }
}
