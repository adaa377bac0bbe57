package sledwright.generator.draw;

import java.util.List;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.function.LongConsumer;
import sledwright.generator.time.Deadline;
import sledwright.generator.time.OutOfTimeException;
import sledwright.metrics.CheapestDraw;

/**
 * The worthwhile draws of each number of modules. What they cost and weigh at least is known at once; they themselves are worked out as
 * they are asked for, since few numbers ever are.
 *
 * <p>Threads may share it: what two of them work out at once is the same, and one of the two results is kept.
 */
public abstract class CountedDraws {

    private static final long BYTES_OF_NUMBER = 24;

    private final long[] leastPrice;
    private final long[] leastMicrowatts;
    private final AtomicReferenceArray<List<Draw>> known;

    /**
     * @param leastPrice      of each number of modules, minor units; {@link CheapestDraw#IMPOSSIBLE} where there is no draw
     * @param leastMicrowatts that every machine has of them, or less
     */
    CountedDraws(long[] leastPrice, long[] leastMicrowatts) {
        this.leastPrice = leastPrice;
        this.leastMicrowatts = leastMicrowatts;
        known = new AtomicReferenceArray<>(leastPrice.length);
    }

    /** The number of modules shared in any way between two. */
    CountedDraws(CountedDraws one, CountedDraws other) {
        this(leastSums(one.leastPrice, other.leastPrice, Deadline.never()),
                leastSums(one.leastMicrowatts, other.leastMicrowatts, Deadline.never()));
    }

    /** The price of the cheapest draw of so many modules, minor units; {@link CheapestDraw#IMPOSSIBLE} where there is none. */
    public long leastPrice(int modules) {
        return leastPrice[modules];
    }

    /** What no deal of so many modules gives the heaviest machine less than. */
    public long leastMicrowatts(int modules) {
        return leastMicrowatts[modules];
    }

    /**
     * The draws of so many modules.
     *
     * @param grown is told about how many bytes are kept besides, whenever there are more
     * @throws sledwright.generator.time.OutOfTimeException when the deadline comes first
     */
    public final List<Draw> of(int modules, Deadline deadline, LongConsumer grown) {
        List<Draw> draws = known.get(modules);
        if (draws == null) {
            List<Draw> found = work(modules, deadline, grown);
            draws = known.compareAndSet(modules, null, found) ? found : known.get(modules);
            if (draws == found) {
                grown.accept(Draw.bytes(found));
            }
        }
        return draws;
    }

    abstract List<Draw> work(int modules, Deadline deadline, LongConsumer grown);

    /** About how many bytes it takes before any draw is asked for. */
    long bytes() {
        return BYTES_OF_NUMBER * leastPrice.length;
    }

    /**
     * The least sum of two figures whose numbers of modules make up each number; no more than a figure that stands for none.
     *
     * @throws OutOfTimeException when the deadline comes first
     */
    static long[] leastSums(long[] one, long[] other, Deadline deadline) {
        long[] sums = new long[one.length];
        int mostOfOne = CheapestDraw.most(one);
        int mostOfOther = CheapestDraw.most(other);
        for (int modules = 0; modules < sums.length; modules++) {
            deadline.check(modules);
            sums[modules] = leastSum(one, mostOfOne, other, mostOfOther, modules);
        }
        return sums;
    }

    /** The same for one number of modules: there are none beyond {@link CheapestDraw#most}, however many are asked for. */
    static long leastSum(long[] one, int mostOfOne, long[] other, int mostOfOther, int modules) {
        long least = CheapestDraw.IMPOSSIBLE;
        for (int first = Math.max(0, modules - mostOfOther); first <= Math.min(modules, mostOfOne); first++) {
            least = Math.min(least, one[first] + other[modules - first]);
        }
        return least;
    }
}
