package sledwright.catalog;

import java.util.List;
import java.util.Optional;
import sledwright.domain.CoolingKit;
import sledwright.domain.Platform;
import sledwright.domain.Supply;
import sledwright.input.Field;
import sledwright.input.Located;

/**
 * A file of {@code platforms/}.
 *
 * @param platform empty when the file has a fault
 * @param sku      empty when the file names none
 * @param kits     every kit that could be read
 * @param supplies every supply that could be read
 * @param extras   every part number that must be one of an extra
 */
record PlatformFile(Optional<Platform> platform, Optional<Located<String>> sku, List<Located<CoolingKit>> kits,
                    List<Located<Supply>> supplies, List<Field> extras) {

    static final PlatformFile UNREADABLE = new PlatformFile(Optional.empty(), Optional.empty(), List.of(), List.of(), List.of());

    PlatformFile {
        kits = List.copyOf(kits);
        supplies = List.copyOf(supplies);
        extras = List.copyOf(extras);
    }
}
