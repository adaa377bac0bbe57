package sledwright.generator.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sledwright.domain.MemoryMode;
import sledwright.generator.Pieces;
import sledwright.generator.time.Deadline;
import sledwright.generator.time.OutOfTimeException;
import sledwright.generator.time.TooLargeException;
import sledwright.rules.memory.ChannelOrder;

/** Shapes and their arrangement on small random sockets, against every way to fill the channels. */
class ShapeFinderTest {

    private static final int SEEDS = 250;

    /** A way to fill the columns of a socket. */
    private record Filling(List<Integer> counts, int fullestGb, double sparedGb, int unevenness) {
    }

    private record Found(List<Integer> counts, int totalGb, int fullestGb, double sparedGb, int modules) {
    }

    private static ShapeKey random(SplittableRandom random) {
        int slots = random.nextInt(1, 4);
        boolean mirrored = random.nextInt(3) == 0;
        boolean sparing = !mirrored && random.nextInt(2) == 0;
        MemoryMode mode = mirrored ? MemoryMode.MIRRORED : sparing ? MemoryMode.RANK_SPARING : MemoryMode.INDEPENDENT;
        int channels = mirrored ? 2 * random.nextInt(1, 3) : random.nextInt(1, slots == 3 ? 4 : 5);
        List<List<Integer>> depths = new ArrayList<>();
        for (int socket = random.nextInt(1, 3); socket > 0; socket--) {
            depths.add(IntStream.range(0, channels).mapToObj(channel -> random.nextInt(4) == 0 ? random.nextInt(0, slots + 1) : slots).toList());
        }
        TreeSet<GroupKind> groups = new TreeSet<>();
        for (int group = random.nextInt(1, 4); group > 0; group--) {
            int ranks = random.nextInt(1, 4);
            groups.add(new GroupKind(8 << random.nextInt(3), ranks, sparing ? ranks : 0, random.nextInt(3) == 0 ? random.nextInt(1, 8) : 7));
        }
        Set<Integer> counts = random.nextInt(3) == 0 ? Set.of(2, 4, 6) : Set.of();
        return new ShapeKey(List.copyOf(groups), new SocketSlots(slots, depths), mode, random.nextInt(2, 9),
                random.nextInt(1, 4), counts, random.nextInt(3) == 0);
    }

    private static List<Filling> fillings(ShapeKey key) {
        List<Filling> fillings = new ArrayList<>();
        int columns = key.slots().depths().get(0).size() / key.multiple();
        fill(key, new int[columns][key.groups().size()], 0, 0, fillings);
        return fillings;
    }

    private static void fill(ShapeKey key, int[][] columns, int column, int group, List<Filling> fillings) {
        if (column == columns.length) {
            judge(key, columns, fillings);
        } else if (group == key.groups().size()) {
            if (stands(key, columns[column])) {
                fill(key, columns, column + 1, 0, fillings);
            }
        } else {
            for (int count = 0; count <= key.slots().perChannel(); count++) {
                columns[column][group] = count;
                fill(key, columns, column, group + 1, fillings);
            }
            columns[column][group] = 0;
        }
    }

    /** Whether a channel may hold it. */
    private static boolean stands(ShapeKey key, int[] counts) {
        int size = Arrays.stream(counts).sum();
        int logical = 0;
        int ranks = 0;
        for (int i = 0; i < counts.length; i++) {
            GroupKind group = key.groups().get(i);
            logical += counts[i] * group.logicalRanks();
            ranks += counts[i] * group.ranks();
            if (counts[i] > 0 && (group.perChannel() & 1 << size - 1) == 0) {
                return false;
            }
        }
        return size == 0 || size <= key.slots().perChannel() && logical <= key.rankLimit() && (!key.sparing() || ranks >= 2);
    }

    private static void judge(ShapeKey key, int[][] columns, List<Filling> fillings) {
        int width = key.multiple();
        int[] sizes = Arrays.stream(columns).mapToInt(column -> Arrays.stream(column).sum()).toArray();
        for (List<Integer> depth : key.slots().depths()) {
            for (int later = 0; later < depth.size(); later++) {
                if (sizes[later / width] > depth.get(later)) {
                    return;
                }
                for (int earlier = 0; earlier < later; earlier++) {
                    if (!ChannelOrder.allows(sizes[earlier / width], depth.get(earlier), sizes[later / width])) {
                        return;
                    }
                }
            }
        }
        int modules = Arrays.stream(sizes).sum();
        int[] counts = new int[key.groups().size()];
        Set<Integer> capacities = new HashSet<>();
        int fullestGb = 0;
        double sparedGb = 0;
        for (int[] column : columns) {
            int gb = 0;
            double largest = 0;
            for (int i = 0; i < counts.length; i++) {
                GroupKind group = key.groups().get(i);
                counts[i] += column[i];
                gb += column[i] * group.capacityGb();
                if (column[i] > 0) {
                    capacities.add(group.capacityGb());
                    largest = Math.max(largest, key.sparing() ? (double) group.capacityGb() / group.ranks() : 0);
                }
            }
            fullestGb = Math.max(fullestGb, gb);
            sparedGb += largest;
        }
        boolean unbalanced = Arrays.stream(columns).mapToInt(column -> IntStream.range(0, column.length)
                .map(i -> column[i] * key.groups().get(i).capacityGb()).sum()).distinct().count() > 1;
        if (modules > 0 && !(key.balanced() && unbalanced) && capacities.size() <= key.maxDistinctCapacities()
                && (key.counts().isEmpty() || key.counts().contains(modules * width))) {
            fillings.add(new Filling(Arrays.stream(counts).boxed().toList(), fullestGb, sparedGb, Arrays.stream(sizes).map(size -> size * size).sum()));
        }
    }

    /** Of the ways to hold the same modules: each that holds back less than all with no fuller channel. */
    private static Set<Found> best(ShapeKey key) {
        Map<List<Integer>, List<Filling>> byCounts = new HashMap<>();
        fillings(key).forEach(filling -> byCounts.computeIfAbsent(filling.counts, counts -> new ArrayList<>()).add(filling));
        Set<Found> best = new HashSet<>();
        byCounts.forEach((counts, ways) -> {
            ways.sort(Comparator.comparingInt(Filling::fullestGb).thenComparingDouble(Filling::sparedGb));
            int totalGb = IntStream.range(0, counts.size()).map(i -> counts.get(i) * key.groups().get(i).capacityGb()).sum();
            double least = Double.POSITIVE_INFINITY;
            for (Filling way : ways) {
                if (way.sparedGb < least - 1e-9) {
                    least = way.sparedGb;
                    best.add(new Found(counts, totalGb, way.fullestGb, Math.rint(way.sparedGb * 1e6), counts.stream().mapToInt(Integer::intValue).sum()));
                }
            }
        });
        return best;
    }

    private static List<Integer> counts(ShapeKey key, Shapes.Shape shape) {
        Integer[] counts = new Integer[key.groups().size()];
        Arrays.fill(counts, 0);
        for (int i = 0; i < shape.groups().length; i++) {
            counts[shape.groups()[i]] = shape.counts()[i];
        }
        return List.of(counts);
    }

    @Test
    void shapesAreThoseOfEveryWayToFillASocket() {
        for (long seed = 1; seed <= SEEDS; seed++) {
            ShapeKey key = random(new SplittableRandom(seed));
            Shapes shapes = ShapeFinder.find(key, Deadline.never());
            List<Found> found = new ArrayList<>();
            for (Shapes.Bucket bucket : shapes.buckets()) {
                bucket.shapes().forEach(shape -> found.add(new Found(counts(key, shape), bucket.figures().totalGb(), bucket.figures().fullestGb(),
                        Math.rint(bucket.figures().sparedGb() * 1e6), bucket.figures().modules())));
            }
            assertThat(found).as("seed %d: %s", seed, key).containsExactlyInAnyOrderElementsOf(best(key));
        }
    }

    /** Eight channels of three slots have 81 histograms, more than the bits of one word. */
    @Test
    void wideSocketsToo() {
        for (boolean sparing : new boolean[] {false, true}) {
            ShapeKey key = new ShapeKey(List.of(new GroupKind(16, 2, sparing ? 2 : 0, 7)),
                    new SocketSlots(3, List.of(List.of(3, 3, 3, 3, 3, 3, 3, 3))), sparing ? MemoryMode.RANK_SPARING : MemoryMode.INDEPENDENT, 8, 1, Set.of(), false);
            Shapes shapes = ShapeFinder.find(key, Deadline.never());
            List<Found> found = new ArrayList<>();
            shapes.buckets().forEach(bucket -> bucket.shapes().forEach(shape -> found.add(new Found(counts(key, shape), bucket.figures().totalGb(), bucket.figures().fullestGb(),
                    Math.rint(bucket.figures().sparedGb() * 1e6), bucket.figures().modules()))));
            assertThat(found).hasSizeGreaterThanOrEqualTo(24).containsExactlyInAnyOrderElementsOf(best(key));
        }
    }

    @Test
    void bucketsThatLeaveMostToUseComeFirst() {
        for (long seed = 1; seed <= SEEDS; seed++) {
            Shapes shapes = ShapeFinder.find(random(new SplittableRandom(seed)), Deadline.never());
            assertThat(shapes.buckets()).as("seed %d", seed).isSortedAccordingTo(Comparator
                    .comparingDouble((Shapes.Bucket bucket) -> bucket.figures().sparedGb() - bucket.figures().totalGb()).thenComparingDouble(bucket -> -bucket.figures().width())
                    .thenComparingInt(bucket -> bucket.figures().modules()));
            List<Double> widest = shapes.buckets().stream().map(bucket -> (double) bucket.figures().totalGb() / bucket.figures().fullestGb()).distinct()
                    .sorted(Comparator.reverseOrder()).toList();
            assertThat(shapes.widths()).isEqualTo(widest.size());
            shapes.buckets().forEach(bucket -> assertThat(widest.get(bucket.widthRank() - 1)).isEqualTo(bucket.figures().width()));
        }
    }

    /** Every shape has an arrangement with its bucket's figures, and none that has them is more even. */
    @Test
    void arrangementsAreTheEvenest() {
        for (long seed = 1; seed <= SEEDS; seed++) {
            ShapeKey key = random(new SplittableRandom(seed));
            List<Filling> fillings = fillings(key);
            Shapes shapes = ShapeFinder.find(key, Deadline.never());
            for (Shapes.Bucket bucket : shapes.buckets()) {
                for (Shapes.Shape shape : bucket.shapes()) {
                    List<Filling> made = new ArrayList<>();
                    judge(key, Arrangement.of(new Population(key, bucket.figures(), shape), shapes.layouts()).toArray(int[][]::new), made);
                    List<Integer> counts = counts(key, shape);
                    int evenest = fillings.stream().filter(way -> way.counts.equals(counts) && way.fullestGb <= bucket.figures().fullestGb()
                            && way.sparedGb <= bucket.figures().sparedGb() + 1e-9).mapToInt(Filling::unevenness).min().orElseThrow();
                    assertThat(made).as("seed %d: %s of %s", seed, counts, key).singleElement().satisfies(way -> {
                        assertThat(way.counts).isEqualTo(counts);
                        assertThat(way.fullestGb).isEqualTo(bucket.figures().fullestGb());
                        assertThat(way.sparedGb).isCloseTo(bucket.figures().sparedGb(), within(1e-9));
                        assertThat(way.unevenness).isEqualTo(evenest);
                    });
                }
            }
        }
    }

    /** Of equally large columns the first are the fullest, as people fill boards. */
    @Test
    void theFullestStackComesFirst() {
        ShapeKey key = new ShapeKey(List.of(Pieces.group(8), Pieces.group(32)), new SocketSlots(2, List.of(List.of(2, 2, 2))),
                MemoryMode.INDEPENDENT, 8, 2, Set.of(), false);
        Shapes shapes = ShapeFinder.find(key, Deadline.never());
        Shapes.Bucket bucket = shapes.buckets().stream().filter(one -> one.figures().totalGb() == 72 && one.figures().modules() == 3).findFirst().orElseThrow();
        assertThat(Arrangement.of(new Population(key, bucket.figures(), bucket.shapes().get(0)), shapes.layouts())).containsExactly(new int[] {0, 1}, new int[] {0, 1}, new int[] {1, 0});
    }

    @Test
    void timeAndSizeEndIt() {
        ShapeKey small = new ShapeKey(List.of(Pieces.group(8)), new SocketSlots(1, List.of(List.of(1))), MemoryMode.INDEPENDENT, 8, 1,
                Set.of(), false);
        assertThatThrownBy(() -> ShapeFinder.find(small, Deadline.in(Duration.ZERO))).isInstanceOf(OutOfTimeException.class);
        List<GroupKind> many = IntStream.range(1, 12).mapToObj(ranks -> new GroupKind(16, ranks, 0, 7)).toList();
        ShapeKey large = new ShapeKey(many, new SocketSlots(3, List.of(List.of(3, 3, 3, 3, 3, 3, 3, 3))), MemoryMode.INDEPENDENT, 8, 1,
                Set.of(), false);
        assertThatThrownBy(() -> ShapeFinder.find(large, Deadline.never())).isInstanceOf(TooLargeException.class);
        // Layouts alone are too many here.
        ShapeKey deep = new ShapeKey(List.of(Pieces.group(8)), new SocketSlots(8, List.of(Collections.nCopies(26, 8))),
                MemoryMode.INDEPENDENT, 8, 1, Set.of(), false);
        assertThatThrownBy(() -> ShapeFinder.find(deep, Deadline.never())).isInstanceOf(TooLargeException.class);
    }

    @Test
    void whatTheBoardsOfALayoutHold() {
        Layouts layouts = new Layouts(List.of(List.of(3, 3), List.of(2, 2)), 3, false);
        assertThat(layouts.maxModules()).isEqualTo(4);
        assertThat(layouts.words()).isEqualTo(1);
        assertThat(new Layouts(List.of(List.of(3, 3, 3, 3, 3, 3, 3, 3)), 3, false).words()).isEqualTo(2);
        assertThat(new Layouts(List.of(List.of(0)), 1, false).maxModules()).isZero();
    }
}
