package sledwright.domain;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.LongUnaryOperator;

/**
 * Units of one part from one source, at one price list.
 *
 * @param breaks unit prices by the number of units that the lot gives, ascending; at least one
 * @param onHand whether the customer already has them
 */
public record Lot(String sku, String lot, String supplier, Condition condition, Availability stock, List<PriceBreak> breaks,
                  boolean onHand) {

    /** The name of the lot that holds the customer's own parts. */
    public static final String ON_HAND = "on hand";

    /** The name of the lot that holds the parts of a machine that is upgraded. */
    public static final String INSTALLED = "installed";

    /** The names of the lots that hold the customer's own parts; no shop's lot bears one of them. */
    public static final Set<String> OWN = Set.of(ON_HAND, INSTALLED);

    /**
     * @param minQuantity units from which the price holds
     * @param unitPrice   what the customer pays for one, minor units of the currency
     * @param unitCost    what the shop paid for one, minor units
     */
    public record PriceBreak(int minQuantity, long unitPrice, OptionalLong unitCost) {
    }

    public Lot {
        breaks = breaks.size() == 1 ? List.copyOf(breaks)
                : breaks.stream().sorted(Comparator.comparingInt(PriceBreak::minQuantity)).toList();
        if (breaks.isEmpty()) {
            throw new IllegalArgumentException("lot %s of %s has no price".formatted(lot, sku));
        }
    }

    /** The customer's own units: free, here, in whatever condition they are. */
    public static Lot onHand(String sku, int quantity) {
        return own(sku, ON_HAND, quantity, 0);
    }

    /**
     * The customer's own units that it costs something to use.
     *
     * @param unitPrice minor units; what is forgone by using one, such as what it would fetch
     */
    public static Lot own(String sku, String lot, int quantity, long unitPrice) {
        return new Lot(sku, lot, "customer", Condition.USED, new Availability(quantity, 0),
                List.of(new PriceBreak(1, unitPrice, OptionalLong.of(0))), true);
    }

    /** A supplier's name in one spelling: a shop's people write it now this way, now that. */
    public static String supplierKey(String supplier) {
        return supplier.strip().toLowerCase(Locale.ROOT);
    }

    /** The same lot with other units and prices. */
    public Lot with(int units, List<PriceBreak> prices) {
        return new Lot(sku, lot, supplier, condition, new Availability(units, stock.leadDays(), stock.lastDay()), prices, onHand);
    }

    /** The same lot where every unit that it sells costs as much, minor units. */
    public Lot at(long unitPrice) {
        return with(available(), List.of(new PriceBreak(minQuantity(), unitPrice, OptionalLong.empty())));
    }

    /** The same lot where each unit price of its list is another. */
    public Lot withPrices(LongUnaryOperator other) {
        return with(available(), breaks.stream().map(step -> new PriceBreak(step.minQuantity(), other.applyAsLong(step.unitPrice()),
                step.unitCost())).toList());
    }

    /** Units in the lot. */
    public int available() {
        return stock.units();
    }

    /** Days until they arrive. */
    public int leadDays() {
        return stock.leadDays();
    }

    /** The least number of units that the lot sells at all. */
    public int minQuantity() {
        return breaks.get(0).minQuantity();
    }

    /** The highest unit price of its list. */
    public long dearest() {
        return breaks.stream().mapToLong(PriceBreak::unitPrice).max().orElse(0);
    }

    /** Whether the lot can give exactly that many units. */
    public boolean sells(int quantity) {
        return quantity == 0 || quantity >= minQuantity() && quantity <= stock.units();
    }

    /** The price list's line for that many units, which the lot must sell. */
    public PriceBreak breakFor(int quantity) {
        PriceBreak found = breaks.get(0);
        for (PriceBreak next : breaks) {
            if (next.minQuantity() <= quantity) {
                found = next;
            }
        }
        return found;
    }
}
