package sledwright.domain;

/** What one more unit of a figure beyond the requirement is worth to the customer, in minor units of the currency. */
public record Worth(double core, double gb, double gbs, double throughput, double work) {

    public static final Worth NOTHING = new Worth(0, 0, 0, 0);

    /** Work by itself is worth nothing. */
    public Worth(double core, double gb, double gbs, double throughput) {
        this(core, gb, gbs, throughput, 0);
    }
}
