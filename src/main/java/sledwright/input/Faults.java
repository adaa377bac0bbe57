package sledwright.input;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Collects every fault of a run, so that a user sees all of them at once. */
public final class Faults {

    /** More than anybody reads, and less than memory holds. */
    private static final int MOST = 100_000;

    private final Map<String, List<Fault>> byFile = new LinkedHashMap<>();
    private final Asking asking;
    private int size;

    public Faults() {
        this(Asking.NOBODY);
    }

    /** @param asking receives what the readers that report here ask for */
    public Faults(Asking asking) {
        this.asking = asking;
    }

    public Asking asking() {
        return asking;
    }

    public void add(Place place, String message) {
        add(place, message, "");
    }

    /** @param value the value that is wrong, as it was given */
    public void add(Place place, String message, String value) {
        if (size < MOST) {
            byFile.computeIfAbsent(place.file(), file -> new ArrayList<>()).add(new Fault(place, message, value));
        } else if (size == MOST) {
            byFile.put("", List.of(new Fault(place.file(), 0, "and more; put the first %s right".formatted(MOST))));
        }
        size++;
    }

    public int size() {
        return size;
    }

    /** Whether faults were added since the collector held {@code before} of them. */
    public boolean since(int before) {
        return size > before;
    }

    /** All faults: the files in the order in which they first failed, the lines of a file ascending; none twice. */
    public List<Fault> all() {
        return byFile.values().stream()
                .flatMap(faults -> faults.stream().sorted((one, other) -> Integer.compare(one.line(), other.line())))
                .distinct().toList();
    }

    /** @throws FaultsException when there is any fault */
    public void throwIfAny() {
        if (size > 0) {
            throw new FaultsException(all());
        }
    }
}
