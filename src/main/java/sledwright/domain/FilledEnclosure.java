package sledwright.domain;

import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * An enclosure with its supplies and the sleds in its bays, valid or not.
 *
 * @param supply the one of the enclosure's options that feeds it
 * @param sleds  the machines in its bays, first bay first
 */
public record FilledEnclosure(Enclosure enclosure, Supply supply, List<Build> sleds) {

    public FilledEnclosure {
        sleds = List.copyOf(sleds);
        if (!enclosure.supplies().contains(supply)) {
            throw new IllegalArgumentException("%s is no option of %s".formatted(supply.sku(), enclosure.sku()));
        }
    }

    /** Sku -> units of the enclosure and its supplies; the sleds' own parts are counted with each {@link Build}. */
    public SortedMap<String, Integer> partCounts() {
        SortedMap<String, Integer> counts = new TreeMap<>();
        counts.merge(enclosure.sku(), 1, Integer::sum);
        counts.merge(supply.sku(), supply.count(), Integer::sum);
        return counts;
    }
}
