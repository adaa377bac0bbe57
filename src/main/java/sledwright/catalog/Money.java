package sledwright.catalog;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.Optional;
import java.util.OptionalLong;
import sledwright.input.Bounds;
import sledwright.input.Faults;
import sledwright.input.Field;

/** Amounts as people write them, turned into whole minor units of a currency. */
public final class Money {

    private Money() {
    }

    /** The amount in minor units; empty, with a fault, when it is no amount, out of bounds or finer than the currency's coins. */
    public static OptionalLong minor(Field field, Bounds bounds, Currency currency, Faults faults) {
        Optional<BigDecimal> amount = field.decimal(bounds, faults);
        if (amount.isEmpty()) {
            return OptionalLong.empty();
        }
        int digits = currency.getDefaultFractionDigits();
        BigDecimal minor = amount.get().movePointRight(digits).stripTrailingZeros();
        if (minor.scale() > 0) {
            field.fault("must have at most %s decimals, as %s has".formatted(digits, currency.getCurrencyCode()), faults);
            return OptionalLong.empty();
        }
        return OptionalLong.of(minor.longValueExact());
    }
}
