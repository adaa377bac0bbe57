package sledwright.metrics;

import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Worth;

/** What the figures beyond the required ones are worth to the customer. */
public final class SurplusWorth {

    private SurplusWorth() {
    }

    /** The worth, over all machines of a request and in minor units, of figures of one machine that reach the required ones. */
    public static double of(Request request, int cores, double usableGb, double bandwidthGbs, double throughput, double work) {
        return of(request, cores, usableGb, bandwidthGbs, throughput)
                + request.machines() * request.worth().work() * (work - request.require().work().least());
    }

    /** The same of all but the work. */
    public static double of(Request request, int cores, double usableGb, double bandwidthGbs, double throughput) {
        Worth worth = request.worth();
        Requirements require = request.require();
        return request.machines() * (worth.core() * (cores - require.cores()) + worth.gb() * (usableGb - require.memoryGb())
                + worth.gbs() * (bandwidthGbs - require.bandwidthGbs()) + worth.throughput() * (throughput - require.throughput()));
    }

    /** The worth of the figures that each machine of a request reaches. */
    public static double of(Request request, Figures figures) {
        return of(request, figures.cores(), figures.usableGb(), figures.bandwidthGbs(), figures.throughput(), figures.work());
    }
}
