package sledwright.request;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.Optional;
import java.util.OptionalLong;
import sledwright.catalog.Money;
import sledwright.domain.Discount;
import sledwright.input.Faults;
import sledwright.input.Field;
import sledwright.input.Section;

/** What a customer pays in the place of the price, before it is held against a catalogue. */
record DiscountFields(Optional<Field> percent, Optional<Field> agreed) {

    static DiscountFields read(Section top) {
        DiscountFields read = new DiscountFields(top.field("discount_percent"), top.field("agreed_price"));
        if (read.percent.isPresent()) {
            read.agreed.ifPresent(field -> field.fault("stands beside discount_percent, and only one of them can hold; take one out",
                    top.faults()));
        }
        return read;
    }

    /** @param currency of an agreed price */
    Discount resolve(Currency currency, Faults faults) {
        OptionalLong price = agreed.map(field -> Money.minor(field, RequestBounds.PRICE, currency, faults)).orElse(OptionalLong.empty());
        Optional<BigDecimal> share = percent.flatMap(field -> field.decimal(RequestBounds.DISCOUNT, faults));
        // Where both stand that is a fault already.
        return new Discount(share, share.isPresent() ? OptionalLong.empty() : price);
    }
}
