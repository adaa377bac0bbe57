package sledwright.desk.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sledwright.catalog.intake.CatalogImport;
import sledwright.catalog.intake.Change.Kind;
import sledwright.input.Fault;

/**
 * What an import changes.
 *
 * @param list     the supplier's list, as the user named it
 * @param warnings what is odd about rows that are taken, and about the catalogue as it would be
 * @param written  whether the file was written
 * @param kept     where the file as it was is kept; empty where it was not written or is new
 */
public record ImportView(String list, CatalogImport made, List<Fault> warnings, boolean written, Optional<String> kept) {

    /** @param odd what else is odd about the catalogue as it would be */
    public static ImportView of(String list, CatalogImport made, List<Fault> odd, boolean written, Optional<String> kept) {
        List<Fault> warnings = new ArrayList<>(made.warnings());
        odd.stream().filter(fault -> !warnings.contains(fault)).forEach(warnings::add);
        return new ImportView(list, made, List.copyOf(warnings), written, kept);
    }

    /** The table's file. */
    public String file() {
        return made.folder().resolve(made.table().file()).toString();
    }

    /** How many rows of the table meet with this. */
    public long count(Kind kind) {
        return made.changes().stream().filter(change -> change.kind() == kind).count();
    }

    /** How many rows of the list were refused; one can have several faults. */
    public long refusedRows() {
        return made.refused().stream().map(Fault::line).distinct().count();
    }
}
