package sledwright.catalog;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import sledwright.domain.Labelled;
import sledwright.input.CsvReader;
import sledwright.input.CsvReader.Columns;
import sledwright.input.CsvTable;
import sledwright.input.Faults;
import sledwright.input.Source;

/** The tables of a catalogue that are CSV: their columns, and what identifies a row. */
public enum CatalogTable implements Labelled {
    OFFERS(OfferTable.COLUMNS, List.of("sku", "lot", "min_quantity"),
            Set.of("sku", "lot", "supplier", "condition", "valid_until"), Map.of("min_quantity", "1", "lead_days", "0")),
    MEMORY(PartTables.MODULE_COLUMNS, List.of("sku"),
            Set.of("sku", "description", "generation", "type"), Map.of()),
    PROCESSORS(PartTables.PROCESSOR_COLUMNS, List.of("sku"),
            Set.of("sku", "description", "socket", "generation"), Map.of()),
    DRIVES(EquipmentTables.DRIVE_COLUMNS, List.of("sku"),
            Set.of("sku", "description", "kind", "interface", "form_factor"), Map.of()),
    CARDS(EquipmentTables.CARD_COLUMNS, List.of("sku"),
            Set.of("sku", "description", "kind", "height", "drive_interfaces", "raid_levels"), Map.of()),
    EXTRAS(EquipmentTables.EXTRA_COLUMNS, List.of("sku"),
            Set.of("sku", "description"), Map.of("power_w", "0"));

    /** What a shop may do without. */
    private static final Set<CatalogTable> OPTIONAL = EnumSet.of(DRIVES, CARDS, EXTRAS);

    private final Columns columns;
    private final List<String> key;
    private final Set<String> texts;
    private final Map<String, String> whenEmpty;

    CatalogTable(Columns columns, List<String> key, Set<String> texts, Map<String, String> whenEmpty) {
        this.columns = columns;
        this.key = key;
        this.texts = texts;
        this.whenEmpty = whenEmpty;
    }

    public static Optional<CatalogTable> named(String label) {
        return Arrays.stream(values()).filter(table -> table.label().equals(label)).findFirst();
    }

    public static List<String> labels() {
        return Arrays.stream(values()).map(CatalogTable::label).toList();
    }

    /** Its file in a catalogue's folder. */
    public String file() {
        return label() + ".csv";
    }

    public Columns columns() {
        return columns;
    }

    /** The columns in the order in which people expect them. */
    public List<String> order() {
        return columns.order();
    }

    /** The columns that identify a row. */
    public List<String> key() {
        return key;
    }

    /** Whether a catalogue may be without it. */
    public boolean isOptional() {
        return OPTIONAL.contains(this);
    }

    /** Whether a column holds words; the others hold figures. */
    public boolean isText(String column) {
        return texts.contains(column);
    }

    /** Whether a column holds days. */
    public boolean isDay(String column) {
        return column.equals("valid_until");
    }

    /** What an empty cell stands for; empty where it stands for nothing. */
    public String whenEmpty(String column) {
        return whenEmpty.getOrDefault(column, "");
    }

    /** The table as its file has it. */
    public CsvTable read(Path folder, Faults faults) {
        return CsvReader.read(Source.of(folder.resolve(file())), columns, faults);
    }
}
