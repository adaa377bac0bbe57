package sledwright.catalog;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sledwright.domain.Lot;
import sledwright.domain.SupplierNames;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Section;
import sledwright.input.Section.Entry;

/** Reads {@code own_suppliers} and {@code supplier_aliases} of {@code catalog.yaml}. */
final class SupplierNamesReader {

    private final Faults faults;
    private final Map<String, Entry> aliases = new LinkedHashMap<>();

    private SupplierNamesReader(Faults faults) {
        this.faults = faults;
    }

    static SupplierNames read(Section top) {
        return new SupplierNamesReader(top.faults()).suppliers(top.list("own_suppliers"), top.entries("supplier_aliases"));
    }

    private SupplierNames suppliers(List<Field> ownNames, List<Entry> entries) {
        for (Entry entry : entries) {
            if (isName(entry.key()) && isName(entry.value()) && aliases.putIfAbsent(key(entry.key()), entry) != null) {
                entry.key().fault("has an alias already, in another spelling", faults);
            }
        }
        Map<String, String> names = new LinkedHashMap<>();
        aliases.forEach((key, entry) -> names.put(key, entry.value().text().strip()));
        for (Entry entry : aliases.values()) {
            String target = key(entry.value());
            if (aliases.containsKey(target) && !target.equals(key(entry.key())) && !target.equals(key(aliases.get(target).value()))) {
                entry.value().fault("is itself an alias, of \"%s\"; name that here".formatted(Field.shown(names.get(target))), faults);
            }
            names.putIfAbsent(target, entry.value().text().strip());
        }
        // One spelling, too.
        names.replaceAll((key, name) -> names.get(Lot.supplierKey(name)));
        Set<String> own = new LinkedHashSet<>();
        for (Field name : ownNames) {
            if (isName(name)) {
                own.add(Lot.supplierKey(names.computeIfAbsent(key(name), same -> name.text().strip())));
            }
        }
        return new SupplierNames(names, own);
    }

    private boolean isName(Field field) {
        if (field.text().isBlank()) {
            field.fault("must be the name of a supplier", faults);
        }
        return !field.text().isBlank();
    }

    private static String key(Field name) {
        return Lot.supplierKey(name.text());
    }
}
