package sledwright.metrics;

import java.util.Locale;
import sledwright.domain.Workload;

/**
 * How much of a workload a machine does: what its cores could do together, unless memory cannot feed them.
 *
 * <p>A share p of the work runs on all n cores at once and the rest on one, so that n cores are S(n) = 1 / ((1 - p) + p / n) times as
 * fast as one (G. Amdahl, "Validity of the single processor approach to achieving large scale computing capabilities", AFIPS 1967); the
 * throughput is what n cores give that never wait for one, so the cores' part is throughput x S(n) / n. Where each unit of work moves some
 * GB, memory allows no more than bandwidth / GB (S. Williams, A. Waterman, D. Patterson, "Roofline", Communications of the ACM 52(4),
 * 2009). The lesser of both is the work, to a millionth.
 */
public final class WorkDone {

    /** What holds the work back. */
    public enum Held {
        /** The cores wait for memory. */
        MEMORY,
        /** All cores wait for the share that runs on one. */
        SERIAL,
        /** Nothing but the number and speed of the cores. */
        NOTHING;

        /** The word of JSON. */
        public String label() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    private WorkDone() {
    }

    /**
     * What the cores could do if memory fed them.
     *
     * @param throughput of all processors
     */
    public static double ofCores(double throughput, int cores, Workload workload) {
        double share = workload.parallel();
        return cores == 0 || share == 1 ? throughput : throughput / (cores * (1 - share) + share);
    }

    /** What memory lets them do; infinite where the workload moves none. */
    public static double ofMemory(double bandwidthGbs, Workload workload) {
        return workload.gbPerUnit() == 0 ? Double.POSITIVE_INFINITY : bandwidthGbs / workload.gbPerUnit();
    }

    /** The work of cores that could do so much, to a millionth. */
    public static double of(double ofCores, double bandwidthGbs, Workload workload) {
        return Quantity.rounded(Math.min(ofCores, ofMemory(bandwidthGbs, workload)));
    }

    /** What holds it back. */
    public static Held heldBy(double ofCores, double bandwidthGbs, Workload workload) {
        return ofMemory(bandwidthGbs, workload) < ofCores ? Held.MEMORY : workload.parallel() < 1 ? Held.SERIAL : Held.NOTHING;
    }
}
