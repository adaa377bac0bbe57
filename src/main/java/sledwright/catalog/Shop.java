package sledwright.catalog;

import java.time.LocalDate;
import java.util.Currency;
import java.util.Map;
import java.util.Optional;
import sledwright.domain.House;
import sledwright.domain.Labour;
import sledwright.domain.Stationery;
import sledwright.domain.SupplierNames;
import sledwright.domain.Workload;

/**
 * What {@code catalog.yaml} says.
 *
 * @param throughputFactors empty when they could not be read
 */
record Shop(String name, Currency currency, LocalDate pricedOn, Labour labour, Optional<Map<String, Double>> throughputFactors,
            Stationery stationery, SupplierNames suppliers, House house, Map<String, Workload> workloads) {
}
