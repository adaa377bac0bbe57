package sledwright.catalog;

import java.nio.file.Path;
import sledwright.input.CsvReader;
import sledwright.input.Faults;
import sledwright.input.Source;

/** The readers of a catalogue's YAML files, each by itself. */
public final class FormatReaders {

    private FormatReaders() {
    }

    public static void shop(Path file, Faults faults) {
        ShopReader.read(file, faults);
    }

    public static void platform(Path file, Faults faults) {
        PlatformReader.read(file, faults);
    }

    public static void enclosure(Path file, Faults faults) {
        EnclosureReader.read(file, faults);
    }

    /** A table of a catalogue in whatever file. */
    public static void table(CatalogTable table, Path file, Faults faults) {
        TableRows rows = TableRows.of(CsvReader.read(Source.of(file), table.columns(), faults));
        switch (table) {
            case OFFERS -> OfferTable.read(rows, ShopReader.STAND_IN, faults);
            case MEMORY -> PartTables.modules(rows, faults);
            case PROCESSORS -> PartTables.processors(rows, faults);
        }
    }
}
