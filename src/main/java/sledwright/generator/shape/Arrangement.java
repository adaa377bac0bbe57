package sledwright.generator.shape;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Spreads the modules of a shape over the channels of a socket so that the figures of its bucket come true, as evenly as
 * the rules allow.
 */
public final class Arrangement {

    private static final double NONE = Double.POSITIVE_INFINITY;

    private final Layouts layouts;
    private final List<Stack> stacks;
    private final double sparedGb;
    private final Map<List<Integer>, Double> leastSpared = new HashMap<>();
    private int[] sizes;

    private Arrangement(ShapeKey key, Layouts layouts, Shapes.Figures figures) {
        this.layouts = layouts;
        stacks = Stack.all(key.groups(), key.slots().perChannel(), key.rankLimit(), key.sparing()).stream()
                .filter(stack -> stack.capacityGb() <= figures.fullestGb()).toList();
        sparedGb = figures.sparedGb();
    }

    /** For each column (a channel, or a pair under mirroring) in board order, modules by group of the shape's key. */
    public static List<int[]> of(Population socket, Layouts layouts) {
        Shapes.Shape shape = socket.shape();
        int[] counts = new int[socket.key().groups().size()];
        for (int i = 0; i < shape.groups().length; i++) {
            counts[shape.groups()[i]] = shape.counts()[i];
        }
        return new Arrangement(socket.key(), layouts, socket.figures()).evenest(socket.figures().modules(), counts);
    }

    private List<int[]> evenest(int modules, int[] counts) {
        return IntStream.range(0, layouts.histograms()).filter(histogram -> isAllowed(modules, histogram)).boxed()
                .sorted(Comparator.comparingInt(histogram -> layouts.unevenness(modules, histogram)))
                .map(histogram -> arrange(layouts.sizes(modules, histogram), counts)).filter(found -> found != null)
                .findFirst().orElseThrow(() -> new IllegalStateException("no arrangement of " + Arrays.toString(counts)));
    }

    private boolean isAllowed(int modules, int histogram) {
        return (layouts.allowed(modules)[histogram >> 6] >>> histogram & 1) != 0;
    }

    private List<int[]> arrange(int[] columns, int[] counts) {
        sizes = IntStream.of(columns).boxed().sorted(Comparator.reverseOrder()).mapToInt(Integer::intValue).toArray();
        leastSpared.clear();
        if (leastSpared(0, 0, counts) > sparedGb + 1e-9) {
            return null;
        }
        List<Stack> chosen = new ArrayList<>();
        int[] left = counts.clone();
        int from = 0;
        for (int column = 0; column < sizes.length && sizes[column] > 0; column++) {
            double least = leastSpared(column, from, left);
            for (int i = from; i < stacks.size(); i++) {
                Stack stack = stacks.get(i);
                if (stack.size() == sizes[column] && fits(stack, left)) {
                    subtract(stack, left, 1);
                    int next = nextFrom(column, i);
                    if (stack.sparedGb() + leastSpared(column + 1, next, left) <= least + 1e-9) {
                        chosen.add(stack);
                        from = next;
                        break;
                    }
                    subtract(stack, left, -1);
                }
            }
        }
        return place(columns, chosen);
    }

    /** The least capacity that the columns from one on hold back with what is left; infinite where they cannot hold it. */
    private double leastSpared(int column, int from, int[] left) {
        if (column == sizes.length || sizes[column] == 0) {
            return Arrays.stream(left).allMatch(count -> count == 0) ? 0 : NONE;
        }
        List<Integer> state = new ArrayList<>(left.length + 2);
        state.add(column);
        state.add(from);
        Arrays.stream(left).forEach(state::add);
        Double known = leastSpared.get(state);
        if (known != null) {
            return known;
        }
        double least = NONE;
        for (int i = from; i < stacks.size(); i++) {
            Stack stack = stacks.get(i);
            if (stack.size() == sizes[column] && fits(stack, left)) {
                subtract(stack, left, 1);
                least = Math.min(least, stack.sparedGb() + leastSpared(column + 1, nextFrom(column, i), left));
                subtract(stack, left, -1);
            }
        }
        leastSpared.put(state, least);
        return least;
    }

    /** Columns of one size are alike, so their stacks are taken in order. */
    private int nextFrom(int column, int stack) {
        return column + 1 < sizes.length && sizes[column + 1] == sizes[column] ? stack : 0;
    }

    private static boolean fits(Stack stack, int[] left) {
        return IntStream.range(0, left.length).allMatch(i -> stack.counts()[i] <= left[i]);
    }

    private static void subtract(Stack stack, int[] left, int sign) {
        for (int i = 0; i < left.length; i++) {
            left[i] -= sign * stack.counts()[i];
        }
    }

    /** Gives each column a stack of its size, the fullest first. */
    private List<int[]> place(int[] columns, List<Stack> chosen) {
        List<Stack> left = new ArrayList<>(chosen);
        left.sort(Comparator.comparingInt(Stack::capacityGb).reversed());
        List<int[]> placed = new ArrayList<>();
        for (int size : columns) {
            Stack stack = left.stream().filter(candidate -> candidate.size() == size).findFirst().orElse(null);
            left.remove(stack);
            placed.add(stack == null ? new int[stacks.get(0).counts().length] : stack.counts());
        }
        return placed;
    }
}
