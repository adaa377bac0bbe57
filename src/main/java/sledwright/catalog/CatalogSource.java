package sledwright.catalog;

import java.nio.file.Path;
import java.util.Optional;
import sledwright.domain.Catalog;
import sledwright.input.Faults;

/** Where a catalogue is had from. */
@FunctionalInterface
public interface CatalogSource {

    /** The catalogue; empty, with faults, when anything in it is wrong. */
    Optional<Catalog> read(Faults faults);

    /** A folder, read each time. */
    static CatalogSource of(Path folder) {
        return faults -> CatalogReader.read(folder, faults);
    }

    /** A catalogue that was read before. */
    static CatalogSource of(Catalog catalog) {
        return faults -> Optional.of(catalog);
    }
}
