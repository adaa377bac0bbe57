package sledwright.catalog;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import sledwright.catalog.RawCatalog.Components;
import sledwright.domain.Assortment;
import sledwright.domain.Catalog;
import sledwright.domain.Enclosure;
import sledwright.domain.Lot;
import sledwright.domain.Platform;
import sledwright.domain.Shop;
import sledwright.domain.SupplierNames;
import sledwright.input.Faults;
import sledwright.input.FaultsException;
import sledwright.input.Located;
import sledwright.input.Place;
import sledwright.input.Reason;

/** Reads a shop's folder: files into rows, rows held against each other, then the catalogue. */
public final class CatalogReader {

    private static final List<CatalogCheck> CHECKS = List.of(
            new UniqueSkus(), new SharedPartsAgree(), new EnclosuresFit(), new ExtrasKnown(), new ThroughputKnown(), new OffersKnown(),
            new LotsAgree(), new StockCountable());

    private CatalogReader() {
    }

    /** @throws FaultsException with every fault of every file */
    public static Catalog read(Path folder) {
        Faults faults = new Faults();
        Optional<Catalog> catalog = read(folder, faults);
        faults.throwIfAny();
        return catalog.orElseThrow();
    }

    /**
     * A catalogue whose parts and offers know their lines.
     *
     * @throws FaultsException with every fault of every file
     */
    public static PlacedCatalog readPlaced(Path folder) {
        Faults faults = new Faults();
        Optional<RawCatalog> raw = sound(folder, Map.of(), faults);
        faults.throwIfAny();
        return placed(raw.orElseThrow());
    }

    private static PlacedCatalog placed(RawCatalog raw) {
        Map<String, Place> places = new HashMap<>();
        raw.skuUses().forEach(use -> places.putIfAbsent(use.sku(), use.place()));
        return new PlacedCatalog(catalog(raw), places, raw.offers().rows());
    }

    /** The catalogue; empty, with faults, when anything in the folder is wrong. */
    public static Optional<Catalog> read(Path folder, Faults faults) {
        return sound(folder, Map.of(), faults).map(CatalogReader::catalog);
    }

    /**
     * The catalogue as it would be if some of its tables had other rows.
     *
     * @param others the rows of tables that are not to be read from their files
     */
    public static Optional<PlacedCatalog> readWith(Path folder, Map<CatalogTable, TableRows> others, Faults faults) {
        return sound(folder, others, faults).map(CatalogReader::placed);
    }

    private static Optional<RawCatalog> sound(Path folder, Map<CatalogTable, TableRows> others, Faults faults) {
        int before = faults.size();
        if (!Files.isDirectory(folder)) {
            faults.add(Place.of(folder.toString()), Files.exists(folder)
                    ? "is a file; a catalogue is a folder" : "there is no such folder");
            return Optional.empty();
        }
        RawCatalog raw = raw(folder, others, faults);
        CHECKS.forEach(check -> check.check(raw, faults));
        return faults.since(before) ? Optional.empty() : Optional.of(raw);
    }

    private static RawCatalog raw(Path folder, Map<CatalogTable, TableRows> others, Faults faults) {
        Optional<ShopFile> named = ShopReader.read(folder.resolve("catalog.yaml"), faults);
        Optional<Shop> shop = named.map(ShopFile::shop);
        List<PlatformFile> platforms = platformFiles(folder.resolve("platforms"), faults).stream()
                .map(file -> PlatformReader.read(file, faults)).toList();
        List<EnclosureFile> enclosures = enclosureFiles(folder.resolve("enclosures"), faults).stream()
                .map(file -> EnclosureReader.read(file, faults)).toList();
        return new RawCatalog(named, platforms, enclosures,
                new Components(PartTables.processors(rows(CatalogTable.PROCESSORS, folder, others, faults), faults),
                        PartTables.modules(rows(CatalogTable.MEMORY, folder, others, faults), faults),
                        EquipmentTables.drives(rows(CatalogTable.DRIVES, folder, others, faults), faults),
                        EquipmentTables.cards(rows(CatalogTable.CARDS, folder, others, faults), faults),
                        EquipmentTables.extras(rows(CatalogTable.EXTRAS, folder, others, faults), faults)),
                OfferTable.read(rows(CatalogTable.OFFERS, folder, others, faults),
                shop.map(known -> known.prices().currency()).orElse(ShopReader.STAND_IN), faults)
                        .each(offer -> offer.withSupplier(shop
                        .map(Shop::suppliers).orElse(SupplierNames.AS_WRITTEN).resolved(offer.supplier()))));
    }

    private static TableRows rows(CatalogTable table, Path folder, Map<CatalogTable, TableRows> others, Faults faults) {
        TableRows other = others.get(table);
        if (other != null) {
            return other;
        }
        return table.isOptional() && !Files.exists(folder.resolve(table.file())) ? TableRows.NONE
                : TableRows.of(table.read(folder, faults));
    }

    /** Every file that is read of a folder, as far as it is there. */
    public static List<Path> files(Path folder) {
        Faults unheard = new Faults();
        Stream<Path> tables = Arrays.stream(CatalogTable.values()).map(table -> folder.resolve(table.file()));
        Stream<Path> yaml = Stream.of("platforms", "enclosures").map(folder::resolve).filter(Files::isDirectory)
                .flatMap(kind -> yamlFiles(kind, unheard).stream());
        return Stream.of(Stream.of(folder.resolve("catalog.yaml")), tables, yaml).flatMap(files -> files).filter(Files::exists).toList();
    }

    private static List<Path> platformFiles(Path folder, Faults faults) {
        if (!Files.isDirectory(folder)) {
            faults.add(Place.of(folder.toString()), "there is no such folder; it holds a YAML file for each platform");
            return List.of();
        }
        return yamlFiles(folder, faults);
    }

    /** A shop without sleds has no such folder. */
    private static List<Path> enclosureFiles(Path folder, Faults faults) {
        if (!Files.exists(folder)) {
            return List.of();
        }
        if (!Files.isDirectory(folder)) {
            faults.add(Place.of(folder.toString()), "is a file; it must be a folder with a YAML file for each enclosure");
            return List.of();
        }
        return yamlFiles(folder, faults);
    }

    private static List<Path> yamlFiles(Path folder, Faults faults) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(".yaml") || file.toString().endsWith(".yml"))
                    .filter(Files::isRegularFile).sorted().toList();
        } catch (IOException unreadable) {
            faults.add(Place.of(folder.toString()), "cannot be listed (%s)".formatted(Reason.of(unreadable)));
            return List.of();
        }
    }

    private static Catalog catalog(RawCatalog raw) {
        Shop shop = raw.shop().orElseThrow().shop();
        List<Platform> platforms = raw.platforms().stream().flatMap(file -> file.platform().stream()).toList();
        List<Enclosure> enclosures = raw.enclosures().stream().flatMap(file -> file.enclosure().stream()).toList();
        Components components = raw.components();
        SharedNames names = new SharedNames(platforms, enclosures);
        Assortment assortment = new Assortment(platforms.stream().map(names::named).toList(),
                enclosures.stream().map(names::named).toList(),
                values(components.processors()), values(components.modules()), values(components.drives()), values(components.cards()),
                values(components.extras()));
        return new Catalog(shop, assortment, lots(raw.offers(), shop.prices().day()));
    }

    private static <T> List<T> values(Table<T> table) {
        return table.rows().stream().map(Located::value).toList();
    }

    /** Sku -> its lots that are still sold. */
    private static Map<String, List<Lot>> lots(Table<OfferRow> offers, LocalDate pricedOn) {
        Map<String, Map<String, List<OfferRow>>> grouped = new LinkedHashMap<>();
        for (OfferRow offer : values(offers)) {
            if (offer.isOver(pricedOn)) {
                continue;
            }
            grouped.computeIfAbsent(offer.sku(), sku -> new LinkedHashMap<>())
                    .computeIfAbsent(offer.lot(), lot -> new ArrayList<>()).add(offer);
        }
        Map<String, List<Lot>> lots = new LinkedHashMap<>();
        grouped.forEach((sku, bySku) -> lots.put(sku, bySku.values().stream().map(CatalogReader::lot).toList()));
        return lots;
    }

    private static Lot lot(List<OfferRow> breaks) {
        OfferRow first = breaks.get(0);
        return new Lot(first.sku(), first.lot(), first.supplier(), first.condition(), first.stock(),
                breaks.stream().map(OfferRow::price).toList(), false);
    }
}
