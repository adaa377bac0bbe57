package sledwright.desk.view;

import java.util.Optional;

/**
 * What a customer pays, and what the shop earns by it.
 *
 * @param earned empty for a customer
 */
public record Sale(Payment pays, Optional<Earnings> earned) {

    Sale forCustomers() {
        return new Sale(pays, Optional.empty());
    }
}
