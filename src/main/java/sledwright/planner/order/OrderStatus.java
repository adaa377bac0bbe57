package sledwright.planner.order;

import java.util.Locale;

/** How an order was answered. */
public enum OrderStatus {
    PROVED, BEST_FOUND, SHORT, IMPOSSIBLE;

    /** The word of reports: {@code short} where machines are missing, {@code impossible} where all are. */
    public String label() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
