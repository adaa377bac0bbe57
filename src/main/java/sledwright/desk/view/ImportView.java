package sledwright.desk.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sledwright.catalog.CatalogTable;
import sledwright.catalog.intake.CatalogImport;
import sledwright.catalog.intake.Change;
import sledwright.catalog.intake.Change.Kind;
import sledwright.input.Fault;

/**
 * What an import changes.
 *
 * @param list    the supplier's list, as the user named it
 * @param file    the table's file
 * @param refused rows of the list that cannot be taken, and why
 * @param warnings what is odd about rows that are taken
 * @param written whether the file was written
 * @param kept    where the file as it was is kept; empty where it was not written or is new
 */
public record ImportView(String list, String file, CatalogTable table, List<Change> changes, int unchanged, List<Fault> refused,
        List<Fault> warnings, boolean written, Optional<String> kept) {

    /** @param odd what else is odd about the catalogue as it would be */
    public static ImportView of(String list, CatalogImport made, List<Fault> odd, boolean written, Optional<String> kept) {
        List<Fault> warnings = new ArrayList<>(made.warnings());
        odd.stream().filter(fault -> !warnings.contains(fault)).forEach(warnings::add);
        return new ImportView(list, made.folder().resolve(made.table().file()).toString(), made.table(), made.changes(), made.unchanged(),
                made.refused(), List.copyOf(warnings), written, kept);
    }

    /** How many rows of the table meet with this. */
    public long count(Kind kind) {
        return changes.stream().filter(change -> change.kind() == kind).count();
    }

    /** How many rows of the list were refused; one can have several faults. */
    public long refusedRows() {
        return refused.stream().map(Fault::line).distinct().count();
    }
}
