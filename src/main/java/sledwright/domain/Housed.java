package sledwright.domain;

import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Enclosures of one kind that house all machines of a request.
 *
 * @param supply the option that feeds each of them
 */
public record Housed(Enclosure enclosure, Supply supply, int count) {

    /** Sku -> units of all of them and their supplies. */
    public SortedMap<String, Integer> partCounts() {
        SortedMap<String, Integer> counts = new TreeMap<>();
        counts.merge(enclosure.sku(), count, Integer::sum);
        counts.merge(supply.sku(), count * supply.count(), Integer::sum);
        return counts;
    }

    /** Parts of all of them. */
    public int parts() {
        return count * (1 + supply.count());
    }
}
