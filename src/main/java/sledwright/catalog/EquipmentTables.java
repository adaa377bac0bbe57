package sledwright.catalog;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import sledwright.domain.Card;
import sledwright.domain.CardHeight;
import sledwright.domain.CardKind;
import sledwright.domain.CardShape;
import sledwright.domain.Drive;
import sledwright.domain.DriveInterface;
import sledwright.domain.DriveKind;
import sledwright.domain.DriveSupport;
import sledwright.domain.Extra;
import sledwright.domain.FormFactor;
import sledwright.domain.RaidLevel;
import sledwright.input.Bounds;
import sledwright.input.CsvReader.Columns;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Fields;
import sledwright.input.Vocabulary;

/** Reads {@code drives.csv}, {@code cards.csv} and {@code extras.csv}. */
final class EquipmentTables {

    static final Columns DRIVE_COLUMNS = new Columns(List.of("sku", "description", "kind", "interface", "form_factor", "capacity_gb",
            "power_w", "read_mbs", "write_mbs", "endurance_dwpd"), List.of("description", "read_mbs", "write_mbs", "endurance_dwpd"));
    static final Columns CARD_COLUMNS = new Columns(List.of("sku", "description", "kind", "pcie_generation", "lanes", "height",
            "length_mm", "power_w", "ports", "port_gbit", "drive_interfaces", "drive_ports", "raid_levels"),
            List.of("description", "ports", "port_gbit", "drive_interfaces", "drive_ports", "raid_levels"));
    static final Columns EXTRA_COLUMNS = new Columns(List.of("sku", "description", "power_w"), List.of("description", "power_w"));
    static final Vocabulary<DriveInterface> LINKS = Vocabulary.of(List.of(DriveInterface.values()), DriveInterface::label);
    static final Vocabulary<FormFactor> FORM_FACTORS = Vocabulary.of(List.of(FormFactor.values()), FormFactor::label);
    static final Vocabulary<CardHeight> HEIGHTS = Vocabulary.of(List.of(CardHeight.values()), CardHeight::label);
    static final Vocabulary<RaidLevel> LEVELS = Vocabulary.of(List.of(RaidLevel.values()), RaidLevel::label);
    private static final Vocabulary<DriveKind> DRIVE_KINDS = Vocabulary.of(List.of(DriveKind.values()), DriveKind::label);
    private static final Vocabulary<CardKind> CARD_KINDS = Vocabulary.of(List.of(CardKind.values()), CardKind::label);

    private static final List<String> OF_NETWORK = List.of("ports", "port_gbit");
    private static final List<String> OF_CONTROLLER = List.of("drive_interfaces", "drive_ports", "raid_levels");

    private EquipmentTables() {
    }

    static Table<Drive> drives(TableRows rows, Faults faults) {
        return TableReader.read(rows, EquipmentTables::drive, faults);
    }

    static Table<Card> cards(TableRows rows, Faults faults) {
        return TableReader.read(rows, EquipmentTables::card, faults);
    }

    static Table<Extra> extras(TableRows rows, Faults faults) {
        return TableReader.read(rows, EquipmentTables::extra, faults);
    }

    private static Drive drive(Fields row) {
        String sku = row.sku("sku");
        Drive.Kind likeness = new Drive.Kind(word(row, "kind", DRIVE_KINDS),
                word(row, "interface", LINKS), word(row, "form_factor", FORM_FACTORS),
                row.number("capacity_gb", CatalogBounds.DRIVE_GB));
        return new Drive(sku, row.text("description", sku), likeness, row.number("power_w", CatalogBounds.DRIVE_W),
                number(row, "read_mbs", CatalogBounds.DRIVE_MBS), number(row, "write_mbs", CatalogBounds.DRIVE_MBS),
                number(row, "endurance_dwpd", CatalogBounds.ENDURANCE_DWPD));
    }

    private static Card card(Fields row) {
        String sku = row.sku("sku");
        CardKind kind = word(row, "kind", CARD_KINDS);
        CardShape shape = new CardShape(row.whole("pcie_generation", CatalogBounds.PCIE_GENERATION),
                row.whole("lanes", CatalogBounds.LANES), word(row, "height", HEIGHTS),
                row.number("length_mm", CatalogBounds.LENGTH_MM), row.number("power_w", CatalogBounds.CARD_W));
        if (kind != CardKind.NETWORK) {
            refuse(row, OF_NETWORK, CardKind.NETWORK);
        }
        if (kind != CardKind.CONTROLLER) {
            refuse(row, OF_CONTROLLER, CardKind.CONTROLLER);
        }
        return new Card(sku, row.text("description", sku), kind, shape,
                kind == CardKind.NETWORK ? row.whole("ports", CatalogBounds.CARD_PORTS) : 0,
                kind == CardKind.NETWORK ? row.number("port_gbit", CatalogBounds.PORT_GBIT) : 0,
                kind == CardKind.CONTROLLER ? Optional.of(support(row)) : Optional.empty());
    }

    private static void refuse(Fields row, List<String> columns, CardKind owner) {
        for (String column : columns) {
            row.field(column).ifPresent(field -> field.fault("is a figure of %s cards alone; leave the cell empty".formatted(owner.label()),
                    row.faults()));
        }
    }

    private static DriveSupport support(Fields row) {
        Faults faults = row.faults();
        Set<DriveInterface> links = EnumSet.noneOf(DriveInterface.class);
        Set<RaidLevel> levels = EnumSet.noneOf(RaidLevel.class);
        row.required("drive_interfaces")
                .ifPresent(field -> words(field).forEach(word -> word.word(LINKS, faults).ifPresent(links::add)));
        row.field("raid_levels")
                .ifPresent(field -> words(field).forEach(word -> word.word(LEVELS, faults)
                .ifPresent(levels::add)));
        return new DriveSupport(links, row.whole("drive_ports", CatalogBounds.DRIVE_PORTS), levels);
    }

    private static Extra extra(Fields row) {
        String sku = row.sku("sku");
        return new Extra(sku, row.text("description", sku), row.numberIfAny("power_w", CatalogBounds.EXTRA_W).orElse(0.0));
    }

    /** The words of a cell that holds a list. */
    private static List<Field> words(Field field) {
        return Arrays.stream(field.text().strip().split("\\s+"))
                .map(word -> new Field(field.name(), word, field.place(), field.decimalComma())).toList();
    }

    /** Null, with a fault, where there is no such word. */
    private static <T> T word(Fields row, String column, Vocabulary<T> words) {
        return row.word(column, words).orElse(null);
    }

    private static OptionalDouble number(Fields row, String column, Bounds bounds) {
        return row.decimalIfAny(column, bounds).map(BigDecimal::doubleValue).map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }
}
