package sledwright.planner.order.market;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import sledwright.domain.Build;
import sledwright.generator.draw.Watts;
import sledwright.metrics.PowerDraw;

/** A way to build one machine of a line, or, where the line is uniform, several at once. */
public final class Column {

    private final int line;
    private final List<Build> builds;
    private final Bay bay;
    private final long own;
    private final int[] parts;
    private final int[] units;
    private final long[] microwatts;

    /**
     * @param bay where its machines stand; null: on their own feet
     * @param own what it costs beside its parts, less what it is worth, scaled
     */
    public Column(int line, List<Build> builds, Bay bay, long own, Map<String, Integer> index) {
        this.line = line;
        this.builds = builds;
        this.bay = bay;
        this.own = own;
        SortedMap<Integer, Integer> counts = new TreeMap<>();
        builds.forEach(build -> build.partCounts().forEach((sku, number) -> counts.merge(index.get(sku), number, Integer::sum)));
        parts = counts.keySet().stream().mapToInt(Integer::intValue).toArray();
        units = counts.values().stream().mapToInt(Integer::intValue).toArray();
        microwatts = builds.stream().mapToLong(build -> Watts.micro(PowerDraw.loadW(build))).toArray();
    }

    public int line() {
        return line;
    }

    public List<Build> builds() {
        return builds;
    }

    public int machines() {
        return builds.size();
    }

    /** Where its machines stand; null: on their own feet. */
    public Bay bay() {
        return bay;
    }

    /** What it costs beside its parts, less what it is worth, scaled. */
    public long own() {
        return own;
    }

    /** Indexes of its parts, ascending. */
    public int[] parts() {
        return parts;
    }

    public int[] units() {
        return units;
    }

    public int unitsOf(int part) {
        int at = Arrays.binarySearch(parts, part);
        return at < 0 ? 0 : units[at];
    }

    /** Whether it takes no more units of parts than some may be taken at most. */
    public boolean isWithin(Map<Integer, Integer> most) {
        return most.isEmpty() || Arrays.stream(parts).noneMatch(part -> unitsOf(part) > most.getOrDefault(part, Integer.MAX_VALUE));
    }

    /** The load of each machine, in millionths of a watt. */
    public long[] microwatts() {
        return microwatts;
    }

    public long load() {
        return Arrays.stream(microwatts).sum();
    }

    /** Whether its machines are those of another, wherever they stand. */
    public boolean isPlacedOtherwise(Column other) {
        return line == other.line && Arrays.equals(parts, other.parts) && Arrays.equals(units, other.units)
                && machines() == other.machines();
    }

    /** What distinguishes columns: their line, what they take from the stock and where they stand. */
    record Key(int line, List<Integer> parts, List<Integer> units, long load, int bay, long own) {
    }

    Key key() {
        return new Key(line, Arrays.stream(parts).boxed().toList(), Arrays.stream(units).boxed().toList(), load(),
                bay == null ? -1 : bay.id(), own);
    }
}
