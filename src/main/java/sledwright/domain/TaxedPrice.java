package sledwright.domain;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.OptionalLong;

/**
 * What all machines may cost with tax.
 *
 * @param most    minor units
 * @param percent of the price that the tax is, rounded half up to a coin as documents have it
 * @param taxName what the tax is called
 * @param beside  what they may cost without tax, which holds as well; empty: anything
 */
public record TaxedPrice(long most, BigDecimal percent, String taxName, OptionalLong beside) {

    /** What a price comes to with tax. */
    public long gross(long price) {
        return Math.addExact(price, BigDecimal.valueOf(price).multiply(percent).movePointLeft(2).setScale(0, RoundingMode.HALF_UP)
                .longValueExact());
    }

    /** The most that all machines may cost without tax. */
    public long mostNet() {
        long within = 0;
        long beyond = beside.isPresent() ? Math.min(beside.getAsLong(), most) + 1 : most + 1;
        while (beyond - within > 1) {
            long middle = within + (beyond - within) / 2;
            if (gross(middle) <= most) {
                within = middle;
            } else {
                beyond = middle;
            }
        }
        return within;
    }

    public TaxedPrice withMost(long other) {
        return new TaxedPrice(other, percent, taxName, beside);
    }

    public TaxedPrice withBeside(OptionalLong other) {
        return new TaxedPrice(most, percent, taxName, other);
    }
}
