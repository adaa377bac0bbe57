package sledwright.report;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * One line of an order: units from one lot, or work, or software.
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
        PART("part"), LABOUR("labour"), LICENCE("licence");

        private final String label;

        Kind(String label) {
            this.label = label;
        }

        public String label() {
            return label;
        }
    }

    /**
     * A lot.
     *
     * @param condition new, refurbished or used
     */
    public record Source(String lot, String supplier, String condition, int leadDays) {
    }
}
