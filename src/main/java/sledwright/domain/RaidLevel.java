package sledwright.domain;

import java.util.Arrays;
import java.util.List;

/** How the drives of a volume share its data. Capacities as in a published storage reference; the rulebook has the source. */
public enum RaidLevel {
    LEVEL_0(0, 1), LEVEL_1(1, 2), LEVEL_5(5, 3), LEVEL_6(6, 4), LEVEL_10(10, 4);

    /** The numbers that files use. */
    public static final List<String> LABELS = Arrays.stream(values()).map(RaidLevel::label).toList();

    private final int number;
    private final int leastDrives;

    RaidLevel(int number, int leastDrives) {
        this.number = number;
        this.leastDrives = leastDrives;
    }

    public int number() {
        return number;
    }

    /** The number as files write it. */
    public String label() {
        return String.valueOf(number);
    }

    /** The fewest data drives. */
    public int leastDrives() {
        return leastDrives;
    }

    /** Whether the level takes a given number of data drives. */
    public boolean takes(int drives) {
        return switch (this) {
            case LEVEL_1 -> drives == leastDrives;
            case LEVEL_10 -> drives >= leastDrives && drives % 2 == 0;
            default -> drives >= leastDrives;
        };
    }

    /** Usable GB of a given number of alike data drives, which the level takes. */
    public double usableGb(int drives, double capacityGb) {
        return capacityGb * switch (this) {
            case LEVEL_0 -> drives;
            case LEVEL_1 -> 1;
            case LEVEL_5 -> drives - 1;
            case LEVEL_6 -> drives - 2;
            case LEVEL_10 -> drives / 2;
        };
    }

    /** Whether what drives a volume of a given number of data drives must know the level: a single drive by itself needs none. */
    public boolean needsSupport(int drives) {
        return this != LEVEL_0 || drives > 1;
    }
}
