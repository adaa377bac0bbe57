package sledwright.domain;

/** Units taken from one lot; at least one. */
public record Pick(Lot lot, int quantity) {

    public String sku() {
        return lot.sku();
    }

    /** The line of the lot's price list that holds for this quantity. */
    public Lot.PriceBreak priceBreak() {
        return lot.breakFor(quantity);
    }

    /** What one unit costs the customer at this quantity, minor units. */
    public long unitPrice() {
        return priceBreak().unitPrice();
    }

    /** What all units cost the customer, minor units. */
    public long total() {
        return Math.multiplyExact(unitPrice(), quantity);
    }
}
