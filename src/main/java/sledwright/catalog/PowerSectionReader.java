package sledwright.catalog;

import java.math.BigDecimal;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import sledwright.domain.Power;
import sledwright.domain.Supply;
import sledwright.input.Faults;
import sledwright.input.Located;
import sledwright.input.Section;
import sledwright.input.Section.Entry;

/** Reads the section {@code power} of a platform or an enclosure. */
final class PowerSectionReader {

    private final Section section;
    private final Faults faults;
    private final List<Located<Supply>> supplies;

    private PowerSectionReader(Section section, List<Located<Supply>> supplies) {
        this.section = section;
        this.faults = section.faults();
        this.supplies = supplies;
    }

    /** @param supplies takes every supply that could be read */
    static Power read(Section section, List<Located<Supply>> supplies) {
        return new PowerSectionReader(section, supplies).power();
    }

    private Power power() {
        double baseW = section.number("base_w", CatalogBounds.BASE_W);
        OptionalDouble budgetW = section.numberIfAny("budget_w", CatalogBounds.BUDGET_W).filter(budget -> budget > 0)
                .map(OptionalDouble::of).orElse(OptionalDouble.empty());
        section.sections("supplies").forEach(this::supply);
        section.finish();
        return new Power(baseW, budgetW, supplies.stream().map(Located::value).toList());
    }

    private void supply(Section row) {
        int before = faults.size();
        String sku = row.sku("sku");
        Supply supply = new Supply(sku, row.text("name", sku), row.whole("count", CatalogBounds.SUPPLY_COUNT),
                row.wholeIfAny("redundant", CatalogBounds.REDUNDANT).orElse(0), row.number("watts", CatalogBounds.SUPPLY_W),
                row.numberIfAny("low_line_watts", CatalogBounds.LOW_LINE_W).orElse(0.0), efficiency(row));
        row.finish();
        if (faults.since(before)) {
            return;
        }
        if (supply.redundant() >= supply.count()) {
            faults.add(row.place("redundant"), "redundant %s must be below count %s: one supply at least has to run"
                    .formatted(supply.redundant(), supply.count()));
        }
        if (supply.lowLineWatts() > supply.watts()) {
            faults.add(row.place("low_line_watts"), "low_line_watts must be at most watts: a supply gives less at low-line mains");
        }
        for (Located<Supply> earlier : supplies) {
            if (earlier.value().sku().equals(sku) && earlier.value().count() == supply.count()) {
                faults.add(row.place(), "power supply \"%s\" with count %s stands twice, first at line %s".formatted(sku, supply.count(),
                        earlier.place().line()));
            }
        }
        if (!faults.since(before)) {
            supplies.add(new Located<>(supply, row.place()));
        }
    }

    private NavigableMap<Integer, Double> efficiency(Section row) {
        NavigableMap<Integer, Double> percents = new TreeMap<>();
        for (Entry entry : row.entries("efficiency")) {
            Optional<Integer> load = entry.key().whole(CatalogBounds.LOAD_PERCENT, faults);
            Optional<BigDecimal> percent = entry.value().decimal(CatalogBounds.EFFICIENCY_PERCENT, faults);
            if (load.isPresent() && percent.isPresent()) {
                percents.put(load.get(), percent.get().doubleValue());
            }
        }
        return percents;
    }
}
