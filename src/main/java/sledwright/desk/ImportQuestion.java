package sledwright.desk;

import java.util.Optional;
import sledwright.catalog.CatalogTable;
import sledwright.input.Source;

/**
 * A supplier's list to be laid over a table of a catalogue.
 *
 * @param list       the list; the ending of its name says what it is
 * @param mapping    which of its columns is which of ours; empty: it has our headings
 * @param sheet      the sheet of a workbook; empty: as the mapping says, or the only one
 * @param apply      whether to write the table
 * @param skipFaulty whether the other rows are taken when some cannot be
 */
public record ImportQuestion(CatalogTable table, Source list, Optional<Source> mapping, Optional<String> sheet, boolean apply,
        boolean skipFaulty) {
}
