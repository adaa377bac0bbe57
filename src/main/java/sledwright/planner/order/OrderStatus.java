package sledwright.planner.order;

/** How an order was answered. */
public enum OrderStatus {
    PROVED("proved"), BEST_FOUND("best-found"), SHORT("short"), IMPOSSIBLE("impossible");

    private final String label;

    OrderStatus(String label) {
        this.label = label;
    }

    /** The word of reports: {@code short} where machines are missing, {@code impossible} where all are. */
    public String label() {
        return label;
    }
}
