package sledwright.desk.view;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.label.ModuleLabel;
import sledwright.label.Organisation;
import sledwright.label.Reading;
import sledwright.words.Numbers;

/**
 * Modules as read from labels or SPDs.
 *
 * @param readings every module, in the order in which it was given
 * @param rows     for memory.csv: modules alike in everything but the description stand once
 */
public record LabelView(List<Reading> readings, List<Reading> rows) {

    /** The columns of memory.csv. */
    public static final List<String> COLUMNS = List.of("sku", "description", "generation", "type", "capacity_gb", "ranks", "logical_ranks",
            "device_width", "speed_mts", "voltage", "power_w");

    public LabelView {
        readings = List.copyOf(readings);
        rows = List.copyOf(rows);
    }

    public static LabelView of(List<Reading> readings) {
        Map<List<Optional<Object>>, Reading> rows = new LinkedHashMap<>();
        for (Reading reading : readings) {
            List<Optional<Object>> alike = new ArrayList<>(cells(reading));
            alike.remove(COLUMNS.indexOf("description"));
            rows.putIfAbsent(alike, reading);
        }
        return new LabelView(readings, new ArrayList<>(rows.values()));
    }

    /** Label -> what was ignored in it, where anything was. */
    public Map<String, List<String>> passedOver() {
        Map<String, List<String>> passed = new LinkedHashMap<>();
        readings.stream().filter(reading -> !reading.passedOver().isEmpty())
                .forEach(reading -> passed.put(reading.from(), reading.passedOver()));
        return passed;
    }

    /**
     * Sku -> the columns of its row that stay empty although memory.csv needs them, where that is more than {@code power_w}, which always
     * does.
     */
    public Map<String, List<String>> gaps() {
        Map<String, List<String>> gaps = new LinkedHashMap<>();
        rows.stream().filter(row -> gaps(row).size() > 1).forEach(row -> gaps.put(row.sku(), gaps(row)));
        return gaps;
    }

    private static List<String> gaps(Reading row) {
        List<Optional<Object>> cells = cells(row);
        return COLUMNS.stream().filter(column -> !column.equals("logical_ranks") && cells.get(COLUMNS.indexOf(column)).isEmpty()).toList();
    }

    /** The cells of a row under {@link #COLUMNS}: texts and numbers; empty where nothing is known. */
    public static List<Optional<Object>> cells(Reading row) {
        ModuleLabel label = row.label();
        Optional<Organisation> organisation = label.organisation();
        return List.of(Optional.of(row.sku()), Optional.of(label.toString()), Optional.of(label.speed().generation().name()),
                label.type().map(type -> type.label()), label.capacityGb().map(gb -> gb), organisation.map(Organisation::ranks),
                organisation.map(Organisation::logicalRanks), organisation.map(Organisation::width), Optional.of(label.speed().mts()),
                Optional.of(Numbers.decimal(label.speed().volts())), Optional.empty());
    }
}
