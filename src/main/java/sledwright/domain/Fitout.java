package sledwright.domain;

import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What is in a machine besides processors, heat sinks, supplies and memory, valid or not.
 *
 * @param driver what drives SATA and SAS drives: {@link #ONBOARD} or the name of a card's slot; empty: nothing does
 * @param cards  card by name of its slot
 * @param extras units by extra, with risers and what is called for
 * @param housed the enclosures that are bought for this machine and the others of its request; they are no part of it
 */
public record Fitout(List<Volume> volumes, Optional<String> driver, SortedMap<String, Card> cards, Map<Extra, Integer> extras,
                     Optional<Housed> housed) {

    /** The driver that is no card. */
    public static final String ONBOARD = "onboard";

    public static final Fitout NONE = new Fitout(List.of(), Optional.empty(), new TreeMap<>(), Map.of(), Optional.empty());

    public Fitout {
        volumes = List.copyOf(volumes);
        cards = Collections.unmodifiableSortedMap(new TreeMap<>(cards));
        extras = Map.copyOf(extras);
    }

    /**
     * A drive in its bay.
     *
     * @param bay    the name of its group and a number from 1: the drives of a group sit side by side, volume by volume
     * @param volume the name of the volume that it serves
     */
    public record Seat(String bay, String volume, Drive drive) {
    }

    /** Every drive in its bay, volume by volume, data drives before hot spares. */
    public List<Seat> seats() {
        Map<String, Integer> taken = new HashMap<>();
        return volumes.stream().flatMap(volume -> volume.all().stream().map(drive ->
                new Seat(volume.group() + " " + taken.merge(volume.group(), 1, Integer::sum), volume.name(), drive))).toList();
    }

    /** The same with other volumes. */
    public Fitout with(List<Volume> others) {
        return new Fitout(others, driver, cards, extras, housed);
    }

    /** The same in enclosures that are bought; empty: in none. */
    public Fitout in(Optional<Housed> bought) {
        return new Fitout(volumes, driver, cards, extras, bought);
    }

    /** Every drive, volume by volume, hot spares too. */
    public List<Drive> drives() {
        return volumes.stream().flatMap(volume -> volume.all().stream()).toList();
    }

    /** Whether nothing but part numbers distinguishes the drives, and nothing at all the rest. */
    public boolean isAlike(Fitout other) {
        return housed.equals(other.housed) && driver.equals(other.driver) && cards.equals(other.cards) && extras.equals(other.extras)
                && volumes.stream().map(Fitout::likeness).toList().equals(other.volumes.stream().map(Fitout::likeness).toList());
    }

    private static List<Object> likeness(Volume volume) {
        return List.of(volume.name(), volume.level(), volume.group(), volume.drives().stream().map(Drive::likeness).toList(),
                volume.hotSpares().stream().map(Drive::likeness).toList());
    }

    /** Watts of all of it. */
    public double powerW() {
        return drives().stream().mapToDouble(Drive::powerW).sum() + cards.values().stream().mapToDouble(Card::powerW).sum()
                + extras.entrySet().stream().mapToDouble(extra -> extra.getKey().powerW() * extra.getValue()).sum();
    }

    /** Units of an extra. */
    public int units(String sku) {
        return extrasBySku().getOrDefault(sku, 0);
    }

    /** Sku -> units of each extra. */
    public SortedMap<String, Integer> extrasBySku() {
        SortedMap<String, Integer> units = new TreeMap<>();
        extras.forEach((extra, count) -> units.put(extra.sku(), count));
        return units;
    }

    /** Sku -> units of all of it. */
    public SortedMap<String, Integer> partCounts() {
        SortedMap<String, Integer> counts = new TreeMap<>();
        drives().forEach(drive -> counts.merge(drive.sku(), 1, Integer::sum));
        cards.values().forEach(card -> counts.merge(card.sku(), 1, Integer::sum));
        extras.forEach((extra, units) -> counts.merge(extra.sku(), units, Integer::sum));
        return counts;
    }
}
