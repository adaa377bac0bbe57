package sledwright.domain;

/**
 * The work that is asked of one machine.
 *
 * @param least    0 asks for nothing
 * @param workload what it is to do; for {@link Workload#NONE} work is throughput
 */
public record WorkWish(double least, Workload workload) {

    public static final WorkWish NONE = new WorkWish(0, Workload.NONE);

    /** Whether work is something else than throughput. */
    public boolean isOfWorkload() {
        return !workload.equals(Workload.NONE);
    }
}
