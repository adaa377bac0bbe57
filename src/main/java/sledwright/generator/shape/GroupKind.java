package sledwright.generator.shape;

import java.util.Comparator;

/**
 * What the rules can see of a module once type and speed level are fixed: modules that agree here are interchangeable
 * for every rule, and only their prices and watts differ.
 *
 * @param logicalRanks the least count of ranks that the rank limit cannot distinguish from the module's own
 * @param ranks        physical ranks, where rank sparing makes them matter; else 0
 * @param perChannel   bit d - 1 is set where a channel of d modules keeps the speed level
 */
public record GroupKind(int capacityGb, int logicalRanks, int ranks, int perChannel) implements Comparable<GroupKind> {

    private static final Comparator<GroupKind> ORDER = Comparator.comparingInt(GroupKind::capacityGb)
            .thenComparingInt(GroupKind::logicalRanks).thenComparingInt(GroupKind::ranks).thenComparingInt(GroupKind::perChannel);

    public boolean mayShareChannelOf(int modules) {
        return (perChannel >> (modules - 1) & 1) != 0;
    }

    @Override
    public int compareTo(GroupKind other) {
        return ORDER.compare(this, other);
    }
}
