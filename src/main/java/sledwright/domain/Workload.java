package sledwright.domain;

/**
 * What a machine is to do.
 *
 * @param name      what a shop calls it; empty where a request describes it in place
 * @param parallel  the share of it that runs on all cores at once, from 0 to 1; the rest runs on one
 * @param gbPerUnit GB of memory traffic for each unit of work; 0: memory sets no ceiling
 * @param gbPerCore usable GB that each core needs where a request asks for none; 0: nothing
 */
public record Workload(String name, double parallel, double gbPerUnit, double gbPerCore) {

    /** Work that is as much as the throughput. */
    public static final Workload NONE = new Workload("", 1, 0, 0);
}
