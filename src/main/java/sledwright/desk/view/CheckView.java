package sledwright.desk.view;

import java.util.List;
import sledwright.rules.Order;
import sledwright.rules.Violation;

/**
 * The verdict on a build.
 *
 * @param name       of the build
 * @param currency   ISO 4217
 * @param violations every broken rule; empty: the build is valid
 * @param build      its figures, and its price where stock allows one
 */
public record CheckView(String name, String currency, List<Violation> violations, BuildView build) {

    public CheckView {
        violations = List.copyOf(violations);
    }

    /**
     * @param priced whether the order's picks hold every part of it
     */
    public static CheckView of(Order order, boolean priced, List<Violation> violations) {
        return new CheckView(order.request().name(), order.catalog().currency().getCurrencyCode(), violations,
                BuildView.of(order, priced));
    }

    public boolean valid() {
        return violations.isEmpty();
    }
}
