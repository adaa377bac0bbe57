package sledwright.catalog.intake;

import java.util.List;
import java.util.function.UnaryOperator;
import sledwright.catalog.CatalogTable;

/** What identifies a row of a table. */
final class RowKey {

    private RowKey() {
    }

    /** @param cells column -> text */
    static List<String> of(CatalogTable table, UnaryOperator<String> cells) {
        return table.key().stream().map(column -> {
            String text = cells.apply(column);
            String known = text.isEmpty() ? table.whenEmpty(column) : text;
            return table.isText(column) ? known : CellEquality.canonical(known);
        }).toList();
    }

    /** The key as messages name it. */
    static String words(CatalogTable table, List<String> key) {
        StringBuilder words = new StringBuilder();
        for (int i = 0; i < key.size(); i++) {
            words.append(i == 0 ? "" : ", ").append(table.key().get(i)).append(' ').append(key.get(i));
        }
        return words.toString();
    }
}
