package sledwright.domain;

/**
 * Enclosures of one kind that house all machines of a request.
 *
 * @param supply the option that feeds each of them
 */
public record Housed(Enclosure enclosure, Supply supply, int count) {

    /** Whether the part is one of theirs. */
    public boolean holds(String sku) {
        return enclosure.sku().equals(sku) || supply.sku().equals(sku);
    }

    /** Parts of all of them. */
    public int parts() {
        return count * (1 + supply.count());
    }
}
