package sledwright.request;

import java.util.Optional;
import sledwright.domain.Catalog;
import sledwright.input.Faults;

/** A request file as read, before it is held against a catalogue. */
public sealed interface RequestFile permits QuoteFile, BuildFile, OrderFile, RestockFile, UpgradeFile {

    /** The catalogue that the file names. */
    Optional<NamedCatalog> catalog();

    /** The job with every sku found and every amount in the catalogue's currency; empty, with faults, when something is unknown. */
    Optional<? extends Job> resolve(Catalog catalog, Faults faults);
}
