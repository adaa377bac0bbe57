package sledwright.catalog.intake;

import java.math.BigDecimal;
import java.util.Optional;
import sledwright.catalog.CatalogTable;
import sledwright.input.Figure;

/** Whether two cells of a column say the same. */
final class CellEquality {

    private CellEquality() {
    }

    static boolean same(CatalogTable table, String column, String one, String other) {
        String first = one.isEmpty() ? table.whenEmpty(column) : one;
        String second = other.isEmpty() ? table.whenEmpty(column) : other;
        return first.equals(second) || !table.isText(column) && canonical(first).equals(canonical(second));
    }

    /** A figure without needless digits; anything else as it is. */
    static String canonical(String text) {
        Optional<BigDecimal> value = Figure.parse(text, false).value();
        return value.map(figure -> figure.stripTrailingZeros().toPlainString()).orElse(text);
    }
}
