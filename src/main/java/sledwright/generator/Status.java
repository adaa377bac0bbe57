package sledwright.generator;

/** How far an answer can be trusted. */
public enum Status {
    /** No better valid build exists. */
    PROVED("proved"),
    /** The search was ended first; nothing better than the bound exists. */
    BEST_FOUND("best-found"),
    /** No valid build exists. */
    IMPOSSIBLE("impossible");

    private final String label;

    Status(String label) {
        this.label = label;
    }

    public String label() {
        return label;
    }
}
