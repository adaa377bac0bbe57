package sledwright.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
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

    /** What a search found, if it found anything: a first byte that names the reader, and what broke it. */
    static List<Path> found() throws IOException {
        Path folder = INPUTS.resolve("ReadersFuzzInputs").resolve("bytes");
        return Files.isDirectory(folder) ? files(folder) : List.of();
    }

    /** Gives all but the first byte to the reader that this byte stands for. */
    static void readChosen(byte[] bytes) {
        if (bytes.length > 0) {
            values()[Byte.toUnsignedInt(bytes[0]) % values().length].read(Arrays.copyOfRange(bytes, 1, bytes.length));
        }
    }

    /** Inputs from which a search begins, each behind the byte that names this reader. */
    List<byte[]> chosenInputs() throws IOException {
        List<byte[]> chosen = new ArrayList<>();
        for (Path input : inputs()) {
            byte[] bytes = Files.readAllBytes(input);
            chosen.add(ByteBuffer.allocate(1 + bytes.length).put((byte) ordinal()).put(bytes).array());
        }
        return chosen;
    }

    List<Path> inputs() throws IOException {
        return files(INPUTS.resolve(name().toLowerCase(Locale.ROOT)));
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.sorted().toList();
        }
    }
}
