package sledwright.catalog;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import sledwright.domain.ModuleType;
import sledwright.domain.Thermal;
import sledwright.domain.Thermal.InletRow;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Located;
import sledwright.input.Section;

/** Reads a platform's section {@code thermal}. */
final class ThermalSectionReader {

    /** No inlet rule, and air that is never too thin. */
    static final Thermal NO_RULE = new Thermal(0, Double.POSITIVE_INFINITY, List.of());

    private ThermalSectionReader() {
    }

    static Thermal read(Section section) {
        Faults faults = section.faults();
        boolean derates = section.has("altitude_from_m") || section.has("metres_per_kelvin");
        double fromM = derates ? section.number("altitude_from_m", CatalogBounds.ALTITUDE_M) : 0;
        double metresPerKelvin = derates
                ? section.number("metres_per_kelvin", CatalogBounds.METRES_PER_KELVIN) : Double.POSITIVE_INFINITY;
        List<Located<InletRow>> rows = new ArrayList<>();
        for (Section row : section.sections("inlet")) {
            int before = faults.size();
            InletRow read = new InletRow(row.number("max_tdp_w", CatalogBounds.TDP_W),
                    row.number("max_inlet_c", CatalogBounds.INLET_C), types(row.list("types"), faults));
            row.finish();
            if (!faults.since(before)) {
                rows.forEach(earlier -> overlap(earlier, read, row));
                rows.add(new Located<>(read, row.place()));
            }
        }
        section.finish();
        return new Thermal(fromM, metresPerKelvin, rows.stream().map(Located::value).toList());
    }

    private static Set<ModuleType> types(List<Field> fields, Faults faults) {
        Set<ModuleType> types = EnumSet.noneOf(ModuleType.class);
        fields.forEach(field -> field.word(PartTables.TYPES, faults).ifPresent(types::add));
        return types;
    }

    /** A row that names a module type takes precedence over one that names none, so only two of a kind contradict each other. */
    private static void overlap(Located<InletRow> earlier, InletRow row, Section section) {
        Set<ModuleType> one = earlier.value().types();
        boolean shared = one.isEmpty() ? row.types().isEmpty() : !Collections.disjoint(one, row.types());
        if (earlier.value().maxTdpW() == row.maxTdpW() && shared) {
            section.faults().add(section.place(), "an inlet row for %s W stands twice, first at line %s".formatted(
                    section.text("max_tdp_w"), earlier.place().line()));
        }
    }
}
