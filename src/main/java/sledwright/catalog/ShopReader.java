package sledwright.catalog;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import sledwright.domain.House;
import sledwright.domain.Labour;
import sledwright.domain.MemoryWish;
import sledwright.domain.PriceBasis;
import sledwright.domain.Shop;
import sledwright.domain.Workload;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Section;
import sledwright.input.Source;
import sledwright.input.Section.Entry;
import sledwright.input.YamlReader;

/**
 * Reads {@code catalog.yaml}: the shop's name, currency, day of prices, labour, throughput factors, stationery, what it calls its
 * suppliers and what it holds itself to.
 */
final class ShopReader {

    private static final String CODE = "must be the code of a currency, such as EUR";
    /** Stands in after a fault, so that amounts are still checked for what else may be wrong. */
    static final Currency STAND_IN = Currency.getInstance("EUR");

    private final Faults faults;

    private ShopReader(Faults faults) {
        this.faults = faults;
    }

    /** Empty, with faults, when the file is not readable at all. */
    static Optional<ShopFile> read(Path file, Faults faults) {
        return YamlReader.read(Source.of(file), faults).map(group -> new ShopReader(faults).shop(Section.top(group, faults)));
    }

    private ShopFile shop(Section top) {
        Currency currency = top.required("currency").flatMap(this::currency).orElse(STAND_IN);
        Shop shop = new Shop(top.text("name"),
                new PriceBasis(currency, top.required("priced_on").flatMap(field -> field.date(faults)).orElse(LocalDate.EPOCH),
                        top.section("labour").map(section -> labour(section, currency)).orElse(new Labour(0, 0))),
                factors(top), StationeryReader.read(top), SupplierNamesReader.read(top),
                top.section("house").map(ShopReader::house).orElse(House.OPEN),
                top.section("workloads").map(ShopReader::workloads).orElse(Map.of()));
        boolean hasFactors = !top.has("throughput_factors") || top.sectionIfAny("throughput_factors").isPresent();
        top.finish();
        return new ShopFile(shop, hasFactors);
    }

    private Optional<Currency> currency(Field field) {
        faults.asking().pattern(field.name(), "^[A-Z]{3}$");
        try {
            Currency currency = Currency.getInstance(field.text());
            if (currency.getDefaultFractionDigits() >= 0) {
                return Optional.of(currency);
            }
        } catch (IllegalArgumentException unknown) {
            // Reported below.
        }
        field.fault(CODE, faults);
        return Optional.empty();
    }

    private Labour labour(Section section, Currency currency) {
        Labour labour = new Labour(amount(section, "per_machine", currency), amount(section, "per_module", currency),
                amount(section, "per_drive", currency), amount(section, "per_card", currency));
        section.finish();
        return labour;
    }

    private long amount(Section section, String key, Currency currency) {
        return section.field(key).map(field -> Money.minor(field, CatalogBounds.MONEY, currency, faults).orElse(0)).orElse(0L);
    }

    /** Name -> what a machine is to do, in the order of the file. */
    private static Map<String, Workload> workloads(Section section) {
        Map<String, Workload> workloads = new LinkedHashMap<>();
        section.names().forEach(name -> section.requiredSection(name)
                .ifPresent(one -> workloads.put(name, WorkloadReader.read(one, name))));
        return workloads;
    }

    private static House house(Section section) {
        House house = new House(new MemoryWish(section.truthIfAny("balanced").orElse(false),
                section.truthIfAny("one_module_part").orElse(false)),
                section.wholeIfAny("stale_after_days", CatalogBounds.STALE_DAYS).map(OptionalInt::of).orElse(OptionalInt.empty()),
                section.numberIfAny("margin_floor", CatalogBounds.MARGIN_FLOOR).map(OptionalDouble::of).orElse(OptionalDouble.empty()));
        section.finish();
        return house;
    }

    private Map<String, Double> factors(Section top) {
        Map<String, Double> factors = new LinkedHashMap<>();
        for (Entry entry : top.entries("throughput_factors")) {
            factors.put(entry.key().text(), entry.value().decimal(CatalogBounds.FACTOR, faults).map(BigDecimal::doubleValue).orElse(0.0));
        }
        return factors;
    }
}
