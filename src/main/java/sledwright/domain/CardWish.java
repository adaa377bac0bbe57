package sledwright.domain;

import java.util.Optional;

/**
 * Cards that each machine must have, all of one part.
 *
 * @param sku      the part; empty: any card of the kind
 * @param kind     of a card that is not asked for by its part number
 * @param ports    the least of a network card; 0: any
 * @param portGbit the least Gbit/s of each port; 0: any
 */
public record CardWish(Optional<String> sku, Optional<CardKind> kind, int ports, double portGbit, int count) {

    /** The same in another number. */
    public CardWish with(int number) {
        return new CardWish(sku, kind, ports, portGbit, number);
    }

    public boolean takes(Card card) {
        return sku.map(card.sku()::equals)
                .orElseGet(() -> kind.map(card.kind()::equals).orElse(true) && card.ports() >= ports && card.portGbit() >= portGbit);
    }
}
