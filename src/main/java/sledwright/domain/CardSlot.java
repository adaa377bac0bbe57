package sledwright.domain;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * A slot for an expansion card.
 *
 * @param offers what a card in it may need at most
 * @param socket the socket, from 1, that the slot hangs on; empty: none, it always counts
 * @param riser  sku of the riser that must be bought when the slot is used
 */
public record CardSlot(String name, CardShape offers, OptionalInt socket, Optional<String> riser) {
}
