package sledwright.schema;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import sledwright.catalog.CatalogReader;
import sledwright.catalog.CatalogTable;
import sledwright.catalog.FormatReaders;
import sledwright.catalog.intake.MappingReader;
import sledwright.domain.Catalog;
import sledwright.domain.Shop;
import sledwright.domain.Workload;
import sledwright.input.Faults;
import sledwright.input.Source;
import sledwright.request.Kind;
import sledwright.request.RequestReader;
import sledwright.samples.Folders;

/**
 * A YAML format: its reader, and where people read about its keys. A new format is a line here, a folder of examples that hold every key
 * between them, and a heading in a document.
 */
enum Format {
    CATALOG("A shop: catalog.yaml", FormatReaders::shop, "formats.md#catalog.yaml"),
    PLATFORM("A platform: platforms/*.yaml", FormatReaders::platform, "formats.md#platforms/*.yaml"),
    ENCLOSURE("A sled enclosure: enclosures/*.yaml", FormatReaders::enclosure, "formats.md#enclosures/*.yaml", "formats.md#platforms/*.yaml"),
    QUOTE("A request of kind quote", Kind.QUOTE, "formats.md#kind: quote"),
    BUILD("A request of kind build", Kind.BUILD, "formats.md#kind: build", "formats.md#kind: quote"),
    ORDER("A request of kind order", Kind.ORDER, List.of(Heading.of("formats.md#kind: order"),
            new Heading("formats.md#A line of an order", "lines."), new Heading("formats.md#kind: quote", "lines."))),
    RESTOCK("A request of kind restock", Kind.RESTOCK, "formats.md#kind: restock"),
    UPGRADE("A request of kind upgrade", Kind.UPGRADE, "formats.md#kind: upgrade"),
    MAPPING("How a supplier's list is read: sledwright catalog import --mapping", Format::mapping, "spreadsheets.md#The mapping");

    /**
     * Where a table stands.
     *
     * @param place document and heading
     * @param above path of the section whose keys the table has; empty: of the file, else ends in a point
     */
    record Heading(String place, String above) {

        static Heading of(String place) {
            return new Heading(place, "");
        }
    }

    private static final Path EXAMPLES = Path.of("src/test/resources/schema");

    private final String title;
    private final BiConsumer<Path, Faults> reader;
    private final BiConsumer<Path, Faults> judge;
    private final List<Heading> headings;

    Format(String title, BiConsumer<Path, Faults> reader, String... headings) {
        this(title, reader, reader, Stream.of(headings).map(Heading::of).toList());
    }

    Format(String title, Kind kind, String... headings) {
        this(title, kind, Stream.of(headings).map(Heading::of).toList());
    }

    /** A schema judges a request by itself; what its skus and amounts mean shows only against a catalogue. */
    Format(String title, Kind kind, List<Heading> headings) {
        this(title, (file, faults) -> RequestReader.open(Source.of(file), List.of(), Set.of(kind), faults).ifPresent(read -> read.resolve(shop(), faults)),
                (file, faults) -> RequestReader.open(Source.of(file), List.of(), Set.of(kind), faults), headings);
    }

    Format(String title, BiConsumer<Path, Faults> reader, BiConsumer<Path, Faults> judge, List<Heading> headings) {
        this.title = title;
        this.reader = reader;
        this.judge = judge;
        this.headings = headings;
    }

    private static Catalog shop() {
        Catalog plain = CatalogReader.read(Folders.SHOP);
        Shop shop = plain.shop();
        return new Catalog(new Shop(shop.name(), shop.prices(), shop.throughputFactors(), shop.stationery(), shop.suppliers(), shop.house(),
                Map.of("web-serving", new Workload("web-serving", 0.995, 0.04, 2))), plain.assortment(), plain.lots());
    }

    /** An example is named after its table; one that suits every table is read for offers. */
    private static void mapping(Path file, Faults faults) {
        String name = file.getFileName().toString().replace(".yaml", "");
        MappingReader.check(Source.of(file), CatalogTable.named(name).orElse(CatalogTable.OFFERS), faults);
    }

    String title() {
        return title;
    }

    String file() {
        return name().toLowerCase(Locale.ROOT) + ".schema.json";
    }

    /** Documents and headings of the tables that say what keys mean; a key is looked up in them one after the other. */
    List<Heading> headings() {
        return headings;
    }

    /** Reads an example for all that can be asked of it. */
    void read(Path file, Faults faults) {
        reader.accept(file, faults);
    }

    /** Reads a file for the faults that it has by itself. */
    void judge(Path file, Faults faults) {
        judge.accept(file, faults);
    }

    List<Path> examples() {
        return files().stream().filter(file -> file.toString().endsWith(".yaml")).toList();
    }

    /** Tables that the examples name. */
    List<Path> tables() {
        return files().stream().filter(file -> file.toString().endsWith(".csv")).toList();
    }

    private List<Path> files() {
        try (Stream<Path> files = Files.list(EXAMPLES.resolve(name().toLowerCase(Locale.ROOT)))) {
            return files.sorted().toList();
        } catch (IOException missing) {
            throw new UncheckedIOException(missing);
        }
    }
}
