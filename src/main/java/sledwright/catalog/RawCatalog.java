package sledwright.catalog;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sledwright.domain.Card;
import sledwright.domain.Drive;
import sledwright.domain.Extra;
import sledwright.domain.MemoryModule;
import sledwright.domain.Processor;
import sledwright.input.Located;
import sledwright.input.Place;

/**
 * A folder as read, before its files are held against each other.
 *
 * @param shop empty when {@code catalog.yaml} cannot be read
 */
record RawCatalog(Optional<ShopFile> shop, List<PlatformFile> platforms, List<EnclosureFile> enclosures, Components components,
                  Table<OfferRow> offers) {

    /** The parts that have a table for each kind. */
    record Components(Table<Processor> processors, Table<MemoryModule> modules, Table<Drive> drives, Table<Card> cards,
                      Table<Extra> extras) {
    }

    /** A part number where a file defines it. */
    record SkuUse(String sku, String kind, Place place) {

        /** Platforms may share kits and supplies, and enclosures supplies. */
        boolean mayRepeat() {
            return kind.equals(KIT) || kind.equals(SUPPLY);
        }
    }

    static final String KIT = "cooling kit";
    static final String SUPPLY = "power supply";

    RawCatalog {
        platforms = List.copyOf(platforms);
        enclosures = List.copyOf(enclosures);
    }

    List<SkuUse> skuUses() {
        List<SkuUse> uses = new ArrayList<>();
        for (PlatformFile file : platforms) {
            file.sku().ifPresent(sku -> uses.add(use(sku, "platform")));
            file.kits().forEach(kit -> uses.add(new SkuUse(kit.value().sku(), KIT, kit.place())));
            file.supplies().forEach(supply -> uses.add(new SkuUse(supply.value().sku(), SUPPLY, supply.place())));
        }
        for (EnclosureFile file : enclosures) {
            file.sku().ifPresent(sku -> uses.add(use(sku, "sled enclosure")));
            file.supplies().forEach(supply -> uses.add(new SkuUse(supply.value().sku(), SUPPLY, supply.place())));
        }
        components.processors.skus().forEach(sku -> uses.add(use(sku, "processor")));
        components.modules.skus().forEach(sku -> uses.add(use(sku, "memory module")));
        components.drives.skus().forEach(sku -> uses.add(use(sku, "drive")));
        components.cards.skus().forEach(sku -> uses.add(use(sku, "card")));
        components.extras.skus().forEach(sku -> uses.add(use(sku, "part of extras.csv")));
        return uses;
    }

    Set<String> skus() {
        return skuUses().stream().map(SkuUse::sku).collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /** Whether every part was seen, so that a sku not among them is truly unknown. */
    boolean partsWhole() {
        return Stream.of(components.processors, components.modules, components.drives, components.cards, components.extras)
                .allMatch(Table::whole)
                && platforms.stream().allMatch(file -> file.platform().isPresent())
                && enclosures.stream().allMatch(file -> file.enclosure().isPresent());
    }

    private static SkuUse use(Located<String> sku, String kind) {
        return new SkuUse(sku.value(), kind, sku.place());
    }
}
