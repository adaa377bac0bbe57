package sledwright.catalog;

import sledwright.input.Faults;

/** One thing that must agree between the files of a catalogue. */
interface CatalogCheck {

    void check(RawCatalog raw, Faults faults);
}
