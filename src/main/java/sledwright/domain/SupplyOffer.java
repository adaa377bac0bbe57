package sledwright.domain;

/**
 * Units that a supplier would sell to the shop.
 *
 * @param unitCost    what the shop pays for one, minor units of the currency
 * @param available   the most that can be bought
 * @param minQuantity the least that can be bought, if any
 * @param leadDays    days until they arrive
 */
public record SupplyOffer(String sku, String supplier, Condition condition, long unitCost, int available, int minQuantity, int leadDays) {
}
