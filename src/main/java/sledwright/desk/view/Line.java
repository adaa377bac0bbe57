package sledwright.desk.view;

import java.math.BigDecimal;
import java.util.Optional;
import sledwright.domain.Labelled;
import sledwright.domain.Lot;

/**
 * One line of an order: units from one lot, or work, or software, or a pulled part that fetches something.
 *
 * @param sku         the part, or what else is paid for: {@code labour}, {@code licence}
 * @param description for people
 * @param source      where the units come from; empty for labour and licence
 * @param unitPrice   in units of the currency, like {@code total}
 */
public record Line(Kind kind, String sku, String description, Optional<Source> source, int quantity, BigDecimal unitPrice,
                   BigDecimal total) {

    /** What a line pays for. */
    public enum Kind implements Labelled {
        PART, LABOUR, LICENCE, CREDIT;
    }

    /** Whether it is a part that stays in the machine that is upgraded. */
    public boolean isInstalled() {
        return source.map(Source::lot).filter(Lot.INSTALLED::equals).isPresent();
    }

    /** Whether it says which of the shop's lots the units come from. */
    public boolean tellsLot() {
        return source.filter(from -> !from.lot().isEmpty() && !Lot.OWN.contains(from.lot())).isPresent();
    }

    /** Units of the same, of which the last arrive when those of both have. */
    Line plus(Line other) {
        return new Line(kind, sku, description, source.map(one -> one.until(other.source.orElse(one).leadDays)), quantity + other.quantity,
                unitPrice, total.add(other.total));
    }

    /**
     * A lot.
     *
     * @param lot       empty where it is not shown, like {@code supplier}
     * @param condition new, refurbished or used
     * @param unitCost  what the shop paid for one unit, in units of the currency; empty where it is not known or not shown
     */
    public record Source(String lot, String supplier, String condition, int leadDays, Optional<BigDecimal> unitCost) {

        /** What a customer sees of it; that units are the customer's own stays known. */
        Source unnamed() {
            boolean own = Lot.OWN.contains(lot);
            return new Source(own ? lot : "", own ? supplier : "", condition, leadDays, Optional.empty());
        }

        private Source until(int days) {
            return new Source(lot, supplier, condition, Math.max(leadDays, days), unitCost);
        }
    }
}
