package sledwright.metrics;

import sledwright.domain.Requirements;
import sledwright.domain.Worth;

/** What one machine has beyond the required figures; never below 0. */
public record Surplus(double cores, double usableGb, double bandwidthGbs, double throughput) {

    /** The surplus of a machine that reaches the figures. */
    public static Surplus of(Requirements require, double cores, double usableGb, double bandwidthGbs, double throughput) {
        return new Surplus(beyond(cores, require.cores()), beyond(usableGb, require.memoryGb()),
                beyond(bandwidthGbs, require.bandwidthGbs()), beyond(throughput, require.throughput()));
    }

    /** The surplus of a machine. */
    public static Surplus of(Requirements require, Figures figures) {
        return of(require, figures.cores(), figures.usableGb(), figures.bandwidthGbs(), figures.throughput());
    }

    /** What it is worth to the customer, minor units. */
    public double worth(Worth worth) {
        return cores * worth.core() + usableGb * worth.gb() + bandwidthGbs * worth.gbs() + throughput * worth.throughput();
    }

    /**
     * A price less the worth of every machine's surplus, in millionths of a minor unit: what best-value keeps least.
     *
     * @param price of all machines, minor units
     */
    public long microPriceLess(long price, int machines, Worth worth) {
        return Math.subtractExact(Math.multiplyExact(price, Quantity.micro(1)),
                Math.multiplyExact(machines, Quantity.micro(worth(worth))));
    }

    private static double beyond(double reached, double least) {
        return Math.max(0, Quantity.rounded(reached - least));
    }
}
