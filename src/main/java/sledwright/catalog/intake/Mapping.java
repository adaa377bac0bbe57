package sledwright.catalog.intake;

import java.util.List;
import java.util.Optional;
import sledwright.catalog.CatalogTable;

/**
 * How a supplier's list is read into one of our tables.
 *
 * @param sheet       the sheet of a workbook; empty: the only one
 * @param separator   what separates the cells of CSV; empty: guessed
 * @param header      the rows of the header; empty: found by its headings
 * @param decimal     comma or point; empty: as the file's kind has it
 * @param thousands   what separates thousands; empty: nothing does
 * @param datePattern how dates are written; empty: as 2025-03-31
 */
record Mapping(Optional<String> sheet, Optional<Character> separator, Optional<HeaderRows> header, Optional<Character> decimal,
               Optional<Character> thousands, Optional<String> datePattern, List<ColumnRule> rules) {

    /** From the first to the last row of a header, as the file numbers them. */
    record HeaderRows(int first, int last) {
    }

    Mapping {
        rules = List.copyOf(rules);
    }

    /** Our own headings. */
    static Mapping own(CatalogTable table) {
        return new Mapping(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(),
                table.order().stream().map(column -> ColumnRule.of(column, column)).toList());
    }
}
