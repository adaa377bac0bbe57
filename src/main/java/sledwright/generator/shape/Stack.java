package sledwright.generator.shape;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sledwright.rules.memory.ModeSupported;
import sledwright.rules.memory.RankLimit;

/**
 * What one channel may hold.
 *
 * @param counts   modules of each group
 * @param size     modules in all
 * @param sparedGb what the channel gives up to rank sparing: its largest rank
 */
record Stack(int[] counts, int size, int capacityGb, double sparedGb) {

    /** Every stack that the rules allow on one channel, in the order of capacity. */
    static List<Stack> all(List<GroupKind> groups, int slots, int rankLimit, boolean sparing) {
        List<Stack> stacks = new ArrayList<>();
        for (int size = 1; size <= slots; size++) {
            extend(stacks, groups, size, rankLimit, sparing, new int[groups.size()], 0, size);
        }
        stacks.sort(Comparator.comparingInt(Stack::capacityGb));
        return stacks;
    }

    private static void extend(List<Stack> stacks, List<GroupKind> groups, int size, int rankLimit, boolean sparing,
                               int[] counts, int group, int left) {
        if (left == 0) {
            Stack stack = of(groups, counts.clone(), size);
            if (RankLimit.allows(rankLimit, stack.sum(groups, true))
                    && (!sparing || ModeSupported.allowsSparing(stack.sum(groups, false)))) {
                stacks.add(stack);
            }
            return;
        }
        if (group == groups.size()) {
            return;
        }
        int most = groups.get(group).mayShareChannelOf(size) ? left : 0;
        for (int count = 0; count <= most; count++) {
            counts[group] = count;
            extend(stacks, groups, size, rankLimit, sparing, counts, group + 1, left - count);
        }
        counts[group] = 0;
    }

    private static Stack of(List<GroupKind> groups, int[] counts, int size) {
        int capacityGb = 0;
        double sparedGb = 0;
        for (int i = 0; i < counts.length; i++) {
            GroupKind group = groups.get(i);
            capacityGb += counts[i] * group.capacityGb();
            if (counts[i] > 0 && group.ranks() > 0) {
                sparedGb = Math.max(sparedGb, (double) group.capacityGb() / group.ranks());
            }
        }
        return new Stack(counts, size, capacityGb, sparedGb);
    }

    private int sum(List<GroupKind> groups, boolean logical) {
        int sum = 0;
        for (int i = 0; i < counts.length; i++) {
            sum += counts[i] * (logical ? groups.get(i).logicalRanks() : groups.get(i).ranks());
        }
        return sum;
    }
}
