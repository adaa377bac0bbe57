package sledwright.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import sledwright.catalog.CatalogReader;
import sledwright.catalog.CatalogTable;
import sledwright.catalog.FormatReaders;
import sledwright.catalog.intake.CatalogImport;
import sledwright.catalog.intake.MappingReader;
import sledwright.domain.Catalog;
import sledwright.input.Faults;
import sledwright.input.FaultsException;
import sledwright.input.Source;
import sledwright.label.LabelLines;
import sledwright.label.SpdReader;
import sledwright.request.Kind;
import sledwright.request.RequestReader;
import sledwright.samples.Folders;

/** A reader that is given hostile bytes. It reads them or names faults; nothing else comes out. */
enum Target {
    SHOP("yaml", file -> FormatReaders.shop(file, new Faults())),
    PLATFORM("yaml", file -> FormatReaders.platform(file, new Faults())),
    ENCLOSURE("yaml", file -> FormatReaders.enclosure(file, new Faults())),
    TABLE("csv", Target::table),
    REQUEST("yaml", Target::request),
    MAPPING("yaml", file -> MappingReader.check(Source.of(file), CatalogTable.OFFERS, new Faults())),
    LIST("csv", file -> CatalogImport.of(Folders.SHOP, CatalogTable.OFFERS, Source.of(file), Optional.empty(), Optional.empty())),
    WORKBOOK("xlsx", file -> CatalogImport.of(Folders.SHOP, CatalogTable.MEMORY, Source.of(file), Optional.empty(), Optional.empty())),
    LABELS("txt", Target::labels),
    SPD("bin", file -> SpdReader.read(Source.of(file), new Faults()));

    private interface Reading {
        void read(Path file) throws IOException;
    }

    private static final Path INPUTS = Path.of("src/test/resources/sledwright/fuzz");

    private final String ending;
    private final Reading reading;
    private Path file;

    Target(String ending, Reading reading) {
        this.ending = ending;
        this.reading = reading;
    }

    private static void table(Path file) {
        for (CatalogTable table : CatalogTable.values()) {
            FormatReaders.table(table, file, new Faults());
        }
    }

    private static void request(Path file) {
        Faults faults = new Faults();
        RequestReader.open(Source.of(file), List.of(), Set.of(Kind.values()), faults).ifPresent(request -> request.resolve(Shop.CATALOG, faults));
    }

    private static void labels(Path file) {
        Faults faults = new Faults();
        LabelLines.read(LabelLines.ofFile(Source.of(file), faults), faults);
    }

    private static final class Shop {
        private static final Catalog CATALOG = CatalogReader.read(Folders.SHOP);
    }

    /** @throws AssertionError when a fault has no words; whatever else escapes is a defect, too */
    void read(byte[] bytes) {
        try {
            if (file == null) {
                file = Files.createTempFile("fuzz", "." + ending);
                file.toFile().deleteOnExit();
            }
            Files.write(file, bytes);
            reading.read(file);
        } catch (FaultsException named) {
            if (named.faults().isEmpty() || named.faults().stream().anyMatch(fault -> fault.message().isBlank())) {
                throw new AssertionError("a fault without words", named);
            }
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    /** The folder of inputs from which a search begins, and of those that once broke the reader. */
    Path inputs() {
        return INPUTS.resolve(search() + "Inputs").resolve("bytes");
    }

    /** The name of its search in {@link ReadersFuzz}. */
    String search() {
        return name().charAt(0) + name().substring(1).toLowerCase(Locale.ROOT);
    }
}
