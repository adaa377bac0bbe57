package sledwright.catalog;

import sledwright.domain.Shop;

/**
 * What {@code catalog.yaml} says.
 *
 * @param hasFactors whether its throughput factors could be read; else the shop has none
 */
record ShopFile(Shop shop, boolean hasFactors) {
}
