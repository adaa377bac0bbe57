package sledwright.domain;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What a customer pays in the place of the price. It changes nothing of what is searched for, and limits do not look
 * at it.
 *
 * @param percent taken off the price; empty: nothing
 * @param agreed  what all machines are sold for before tax, whatever their price, minor units; empty: nothing is agreed
 */
public record Discount(Optional<BigDecimal> percent, OptionalLong agreed) {

    /** The price itself is paid. */
    public static final Discount NONE = new Discount(Optional.empty(), OptionalLong.empty());

    public Discount {
        if (percent.isPresent() && agreed.isPresent()) {
            throw new IllegalArgumentException("%s %% and an agreed price of %s".formatted(percent.get(), agreed.getAsLong()));
        }
    }

    public boolean isNone() {
        return percent.isEmpty() && agreed.isEmpty();
    }

    /** What is paid for a price, minor units; half a coin of a discount is the customer's. */
    public long net(long price) {
        return agreed.orElseGet(() -> price - percent.map(share -> BigDecimal.valueOf(price).multiply(share).movePointLeft(2)
                .setScale(0, RoundingMode.HALF_UP).longValueExact()).orElse(0L));
    }

    /** What holds of the build of that place among those that are offered, from 1: a price is agreed for the first. */
    public Discount of(int place) {
        return place == 1 ? this : ofOthers();
    }

    /** What holds of another build than the one that a price was agreed for. */
    public Discount ofOthers() {
        return agreed.isPresent() ? NONE : this;
    }
}
