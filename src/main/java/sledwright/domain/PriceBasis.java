package sledwright.domain;

import java.time.LocalDate;
import java.util.Currency;

/**
 * What a shop's prices are in, and what it takes for its work.
 *
 * @param day of the prices
 */
public record PriceBasis(Currency currency, LocalDate day, Labour labour) {

    PriceBasis with(Labour rates) {
        return new PriceBasis(currency, day, rates);
    }
}
