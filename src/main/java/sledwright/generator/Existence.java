package sledwright.generator;

import java.util.Optional;
import sledwright.rules.Order;

/**
 * Whether a request can be met at all.
 *
 * @param order   that meets it, not always the best
 * @param settled whether none meets it where there is no order
 */
public record Existence(Optional<Order> order, boolean settled) {
}
