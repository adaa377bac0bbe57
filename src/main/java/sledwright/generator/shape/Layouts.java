package sledwright.generator.shape;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sledwright.generator.time.TooLargeException;
import sledwright.rules.memory.ChannelOrder;

/**
 * How many modules each channel of a socket may hold: the sizes that slots, heat sinks and the channel order allow.
 *
 * <p>Channels are alike but for their size, so a layout is known by its histogram: how many channels hold two modules, how
 * many three, and so on; with the number of modules it fixes how many hold one. Under mirroring a column is a pair of channels.
 */
public final class Layouts {

    /** Numbers of modules times histograms that are written down at most; the widest boards that are built come to a hundredth. */
    private static final double MOST_BITS = 5e7;

    private final int columns;
    private final int slots;
    private final int histograms;
    private final int maxModules;
    private final long[][] allowed;
    private final long[][] withRoom;
    private final Map<Integer, int[]> sizes = new HashMap<>();

    /**
     * @param depths for each fitted socket, the modules that each of its channels has slots for
     * @throws TooLargeException where there are more of them than can be written down
     */
    public Layouts(List<List<Integer>> depths, int slots, boolean mirrored) {
        int channels = depths.get(0).size();
        this.slots = slots;
        columns = mirrored ? channels / 2 : channels;
        int most = columns * slots;
        if (Math.pow(columns + 1, slots - 1) * (most + 1) > MOST_BITS) {
            throw new TooLargeException();
        }
        histograms = (int) Math.pow(columns + 1, slots - 1);
        int words = words();
        allowed = new long[most + 1][words];
        withRoom = new long[most + 1][words];
        for (int modules = 0; modules <= most; modules++) {
            for (int histogram = 0; histogram < histograms; histogram++) {
                int singles = modules - modulesBeyondSingles(histogram);
                if (singles >= 0 && singles + columnsBeyondSingles(histogram) < columns) {
                    set(withRoom[modules], histogram);
                }
            }
        }
        place(depths, mirrored ? 2 : 1, new int[channels], 0);
        int top = most;
        while (top > 0 && isEmpty(allowed[top])) {
            top--;
        }
        maxModules = top;
    }

    /** Tries every size for the channel (or pair) at {@code channel} behind those already placed. */
    private void place(List<List<Integer>> depths, int width, int[] placed, int channel) {
        if (channel == placed.length) {
            remember(placed, width);
            return;
        }
        for (int size = 0; size <= slots; size++) {
            boolean fits = true;
            for (int i = channel; i < channel + width && fits; i++) {
                placed[i] = size;
                fits = fits(depths, placed, i);
            }
            if (fits) {
                place(depths, width, placed, channel + width);
            }
        }
    }

    private static boolean fits(List<List<Integer>> depths, int[] placed, int channel) {
        for (List<Integer> depth : depths) {
            if (placed[channel] > depth.get(channel)) {
                return false;
            }
            for (int earlier = 0; earlier < channel; earlier++) {
                if (!ChannelOrder.allows(placed[earlier], depth.get(earlier), placed[channel])) {
                    return false;
                }
            }
        }
        return true;
    }

    private void remember(int[] placed, int width) {
        int[] columnSizes = new int[columns];
        int modules = 0;
        int histogram = 0;
        for (int column = 0; column < columns; column++) {
            columnSizes[column] = placed[column * width];
            modules += columnSizes[column];
            histogram += step(columnSizes[column]);
        }
        set(allowed[modules], histogram);
        sizes.putIfAbsent(modules * histograms + histogram, columnSizes);
    }

    /** How far the histogram's number moves when a column of that size joins. */
    int step(int size) {
        return size < 2 ? 0 : (int) Math.pow(columns + 1, size - 2);
    }

    private int modulesBeyondSingles(int histogram) {
        int modules = 0;
        for (int size = 2, rest = histogram; size <= slots; size++, rest /= columns + 1) {
            modules += size * (rest % (columns + 1));
        }
        return modules;
    }

    private int columnsBeyondSingles(int histogram) {
        int count = 0;
        for (int size = 2, rest = histogram; size <= slots; size++, rest /= columns + 1) {
            count += rest % (columns + 1);
        }
        return count;
    }

    /** The histograms that a given number of modules may take, as bits. */
    long[] allowed(int modules) {
        return allowed[modules];
    }

    /** The histograms of a given number of modules that leave a column empty, as bits: only those can take another stack. */
    long[] withRoom(int modules) {
        return withRoom[modules];
    }

    /** The sizes of the columns, first channel first, of an allowed histogram. */
    int[] sizes(int modules, int histogram) {
        return sizes.get(modules * histograms + histogram).clone();
    }

    /** An upper mark of how unevenly a histogram spreads its modules: the sum of squared sizes. */
    int unevenness(int modules, int histogram) {
        return Arrays.stream(sizes(modules, histogram)).map(size -> size * size).sum();
    }

    /** Channels, or pairs of them under mirroring. */
    int columns() {
        return columns;
    }

    int histograms() {
        return histograms;
    }

    /** About how many bytes they take. */
    long bytes() {
        return 16L * allowed.length * words() + sizes.size() * (80L + 4L * columns);
    }

    int words() {
        return (histograms + 63) / 64;
    }

    /** The most modules that the columns hold together. */
    public int maxModules() {
        return maxModules;
    }

    private static void set(long[] bits, int bit) {
        bits[bit >> 6] |= 1L << (bit & 63);
    }

    private static boolean isEmpty(long[] bits) {
        return Arrays.stream(bits).allMatch(word -> word == 0);
    }
}
