package sledwright.domain;

/** Software that the customer pays for by the core or the processor, per machine, in minor units of the currency. */
public record Licence(long perCore, long perProcessor) {

    public static final Licence NONE = new Licence(0, 0);

    /** The licence of one machine, minor units. */
    public long of(int cores, int processors) {
        return perCore * cores + perProcessor * processors;
    }
}
