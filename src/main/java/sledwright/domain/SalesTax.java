package sledwright.domain;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * The tax on what a shop sells.
 *
 * @param percent what is added to prices; empty: documents say nothing about tax
 */
public record SalesTax(Optional<BigDecimal> percent, String name) {

    /** Of a shop that says nothing of the kind. */
    public static final SalesTax NONE = new SalesTax(Optional.empty(), "VAT");
}
