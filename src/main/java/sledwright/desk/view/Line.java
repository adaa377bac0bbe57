package sledwright.desk.view;

import java.math.BigDecimal;
import java.util.Optional;
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
    public enum Kind {
        PART("part"), LABOUR("labour"), LICENCE("licence"), CREDIT("credit");

        private final String label;

        Kind(String label) {
            this.label = label;
        }

        public String label() {
            return label;
        }
    }

    /** Whether it is a part that stays in the machine that is upgraded. */
    public boolean isInstalled() {
        return source.map(Source::lot).filter(Lot.INSTALLED::equals).isPresent();
    }

    /**
     * A lot.
     *
     * @param condition new, refurbished or used
     */
    public record Source(String lot, String supplier, String condition, int leadDays) {
    }
}
