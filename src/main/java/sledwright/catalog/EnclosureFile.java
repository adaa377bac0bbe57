package sledwright.catalog;

import java.util.List;
import java.util.Optional;
import sledwright.domain.Enclosure;
import sledwright.domain.Supply;
import sledwright.input.Field;
import sledwright.input.Located;

/**
 * A file of {@code enclosures/}.
 *
 * @param enclosure empty when the file has a fault
 * @param sku       empty when the file names none
 * @param takes     the platforms that it names
 * @param supplies  every supply that could be read
 */
record EnclosureFile(Optional<Enclosure> enclosure, Optional<Located<String>> sku, List<Field> takes, List<Located<Supply>> supplies) {

    static final EnclosureFile UNREADABLE = new EnclosureFile(Optional.empty(), Optional.empty(), List.of(), List.of());

    EnclosureFile {
        takes = List.copyOf(takes);
        supplies = List.copyOf(supplies);
    }
}
