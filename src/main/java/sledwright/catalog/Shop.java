package sledwright.catalog;

import java.time.LocalDate;
import java.util.Currency;
import java.util.Map;
import sledwright.domain.Labour;

/** What {@code catalog.yaml} says. */
record Shop(String name, Currency currency, LocalDate pricedOn, Labour labour, Map<String, Double> throughputFactors) {
}
