package sledwright.report.build;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.Optional;
import sledwright.desk.view.Earnings;
import sledwright.desk.view.Payment;
import sledwright.desk.view.Sale;

/**
 * What is paid for a price, as JSON, and what the shop is left of it.
 *
 * @param tax    null where the shop names none
 * @param earned null where costs are not known, and for a customer; like {@code earnedPercent}
 */
public record PaymentJson(@JsonUnwrapped Granted granted, BigDecimal net, BigDecimal tax, BigDecimal gross, BigDecimal earned,
                          BigDecimal earnedPercent) {

    /**
     * Why something else than the price is paid.
     *
     * @param discountPercent null where none is taken off
     * @param discount        what is taken off the price, below 0 where more was agreed; null where the price is what is paid
     */
    public record Granted(BigDecimal discountPercent, BigDecimal discount, boolean agreed) {

        private static Granted of(Payment pays) {
            return new Granted(pays.percent().orElse(null), pays.isChanged() ? pays.change().negate() : null, pays.agreed());
        }
    }

    public static PaymentJson of(Sale sale) {
        Payment pays = sale.pays();
        Optional<Earnings> known = sale.earned().filter(Earnings::isKnown);
        return new PaymentJson(Granted.of(pays), pays.net(), pays.tax().map(Payment.Tax::amount).orElse(null), pays.gross(),
                known.map(Earnings::margin).orElse(null), known.flatMap(Earnings::percent).orElse(null));
    }
}
