package sledwright.generator.shape;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import sledwright.generator.time.Deadline;
import sledwright.generator.time.OutOfTimeException;
import sledwright.generator.time.TooLargeException;
import sledwright.rules.memory.BalancedChannels;
import sledwright.rules.memory.ModuleCount;

/**
 * Finds the shapes of a socket: for every vector of counts by group, the least capacity of the fullest channel.
 *
 * <p>For each set of capacities that may share a machine, an unbounded dynamic program takes the stacks a channel may hold
 * in ascending capacity and marks, for each vector, the histograms of channel sizes that reach it. The first stack that
 * makes an allowed histogram reachable is the vector's fullest channel. Under rank sparing each histogram also carries the
 * least capacity held back, and a vector gives a shape each time a fuller channel lowers that.
 */
public final class ShapeFinder {

    /** Vectors beyond this make the dynamic program too large to hold; the search then says that it proved nothing there. */
    private static final long MOST_VECTORS = 6_000_000;

    private final ShapeKey key;
    private final Layouts layouts;
    private final Deadline deadline;
    private final Map<Shapes.Figures, List<Shapes.Shape>> buckets = new HashMap<>();

    private ShapeFinder(ShapeKey key, Deadline deadline) {
        this.key = key;
        this.deadline = deadline;
        layouts = key.layouts();
    }

    /**
     * All shapes of a socket.
     *
     * @throws OutOfTimeException when the deadline comes first
     * @throws TooLargeException  when the socket has more populations than can be held
     */
    public static Shapes find(ShapeKey key, Deadline deadline) {
        ShapeFinder finder = new ShapeFinder(key, deadline);
        int[] capacities = key.groups().stream().mapToInt(GroupKind::capacityGb).distinct().toArray();
        finder.forEachSet(capacities, new ArrayList<>(), 0);
        return finder.shapes();
    }

    private Shapes shapes() {
        double[] widths = buckets.keySet().stream().mapToDouble(Shapes.Figures::width).distinct().sorted().toArray();
        List<Shapes.Bucket> sorted = new ArrayList<>(buckets.size());
        buckets.entrySet().stream().sorted(Map.Entry.comparingByKey()).forEach(entry -> {
            Shapes.Figures figures = entry.getKey();
            int rank = widths.length - Arrays.binarySearch(widths, figures.width());
            sorted.add(new Shapes.Bucket(figures, rank, List.copyOf(entry.getValue())));
        });
        return new Shapes(key, layouts, sorted, widths.length);
    }

    private void forEachSet(int[] capacities, List<Integer> chosen, int from) {
        if (!chosen.isEmpty()) {
            solve(chosen);
        }
        if (chosen.size() < key.maxDistinctCapacities()) {
            for (int i = from; i < capacities.length; i++) {
                chosen.add(capacities[i]);
                forEachSet(capacities, chosen, i + 1);
                chosen.remove(chosen.size() - 1);
            }
        }
    }

    private void solve(List<Integer> capacities) {
        int[] members = IntStream.range(0, key.groups().size())
                .filter(i -> capacities.contains(key.groups().get(i).capacityGb())).toArray();
        List<GroupKind> groups = Arrays.stream(members).mapToObj(key.groups()::get).toList();
        Lattice lattice = new Lattice(groups.size(), layouts.maxModules());
        if (layouts.maxModules() > Byte.MAX_VALUE || lattice.size() * (key.sparing() ? layouts.histograms()
                : layouts.words()) > MOST_VECTORS) {
            throw new TooLargeException();
        }
        lattice.list();
        List<Stack> stacks = Stack.all(groups, key.slots().perChannel(), key.rankLimit(), key.sparing());
        Reach reach = key.sparing() ? new SparedReach(lattice, layouts) : new PlainReach(lattice, layouts);
        for (int i = 0; i < stacks.size(); i++) {
            deadline.check();
            reach.add(stacks.get(i));
            boolean lastOfCapacity = i + 1 == stacks.size() || stacks.get(i + 1).capacityGb() > stacks.get(i).capacityGb();
            if (lastOfCapacity) {
                int fullestGb = stacks.get(i).capacityGb();
                reach.forEachNew((number, sparedGb) -> remember(members, groups, capacities.size(), lattice.vector(number),
                        lattice.sum(number), fullestGb, sparedGb));
            }
        }
    }

    private void remember(int[] members, List<GroupKind> groups, int capacities, int[] counts, int modules, int fullestGb,
            double sparedGb) {
        int totalGb = 0;
        int used = 0;
        int last = -1;
        // Groups come in the order of capacity.
        for (int i = 0; i < counts.length; i++) {
            int capacityGb = groups.get(i).capacityGb();
            totalGb += counts[i] * capacityGb;
            if (counts[i] > 0 && capacityGb != last) {
                used++;
                last = capacityGb;
            }
        }
        // A vector that leaves out a capacity of the set belongs to a smaller set.
        if (used == capacities && ModuleCount.allows(key.counts(), modules * key.multiple())
                && BalancedChannels.allows(key.balanced(), layouts.columns(), totalGb, fullestGb)) {
            buckets.computeIfAbsent(new Shapes.Figures(totalGb, fullestGb, sparedGb, modules), figures -> new ArrayList<>())
                    .add(new Shapes.Shape(members, counts));
        }
    }
}
