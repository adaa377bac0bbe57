package sledwright.domain;

/** What makes one valid build better than another. */
public enum Objective implements Labelled {
    CHEAPEST, MOST_THROUGHPUT, MOST_BANDWIDTH, MOST_MEMORY, BEST_VALUE, MOST_WORK, MOST_CORES, LEAST_TOTAL;

    /** Whether it measures an amount of money, of which less is better; else a figure of one machine. */
    public boolean isMoney() {
        return this == CHEAPEST || this == BEST_VALUE || this == LEAST_TOTAL;
    }

    @Override
    public String toString() {
        return label();
    }
}
