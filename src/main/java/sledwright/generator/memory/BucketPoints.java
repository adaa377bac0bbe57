package sledwright.generator.memory;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The points of a bucket that no other of it matches. Orders of several machines have thousands, and ask about each as often. */
abstract class BucketPoints {

    private static final int FEW = 4;

    /** @param everyWeight whether a point is held only against those of the same weight */
    static BucketPoints of(boolean everyWeight) {
        return everyWeight ? new OfEachWeight() : new Lightest();
    }

    /** Whether one of them costs no more and, for sure, loads no more; or loads the same. */
    abstract boolean isMatched(long price, long microwatts);

    /** Adds a point that none of them matches, in the place of those that it matches. */
    abstract void add(MemoryPoint point);

    abstract List<MemoryPoint> all();

    /** Points that are dearer only where they are, or may be, lighter; the cheapest first. */
    private static final class Lightest extends BucketPoints {

        private MemoryPoint[] points = new MemoryPoint[FEW];
        private long[] prices = new long[FEW];
        /** What the lightest of those loads that cost no more, microwatts. */
        private long[] lightest = new long[FEW];
        private int size;

        @Override
        boolean isMatched(long price, long microwatts) {
            int cheaper = cheaperThan(price + 1);
            return cheaper > 0 && lightest[cheaper - 1] <= microwatts;
        }

        /** How many cost less. */
        private int cheaperThan(long price) {
            int low = 0;
            int high = size;
            while (low < high) {
                int middle = (low + high) >>> 1;
                if (prices[middle] < price) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            return low;
        }

        @Override
        void add(MemoryPoint point) {
            int place = cheaperThan(point.price());
            removeMatched(place, point.microwatts());
            if (size == points.length) {
                points = Arrays.copyOf(points, 2 * size);
                prices = Arrays.copyOf(prices, 2 * size);
                lightest = Arrays.copyOf(lightest, 2 * size);
            }
            System.arraycopy(points, place, points, place + 1, size - place);
            System.arraycopy(prices, place, prices, place + 1, size - place);
            size++;
            points[place] = point;
            prices[place] = point.price();
            for (int i = place; i < size; i++) {
                lightest[i] = i == 0 ? points[i].microwatts() : Math.min(lightest[i - 1], points[i].microwatts());
            }
        }

        /** Of those from a place on, all of which are no cheaper, those that are no lighter for sure. */
        private void removeMatched(int place, long microwatts) {
            int kept = place;
            for (int i = place; i < size; i++) {
                if (points[i].microwatts() - points[i].slack() < microwatts) {
                    points[kept] = points[i];
                    prices[kept++] = prices[i];
                }
            }
            Arrays.fill(points, kept, size, null);
            size = kept;
        }

        @Override
        List<MemoryPoint> all() {
            return Arrays.asList(points).subList(0, size);
        }
    }

    /** The cheapest point of each weight, and all whose weight is not known to the last. */
    private static final class OfEachWeight extends BucketPoints {

        private final Map<Long, MemoryPoint> sure = new HashMap<>();
        private final List<MemoryPoint> points = new ArrayList<>(FEW);

        @Override
        boolean isMatched(long price, long microwatts) {
            MemoryPoint known = sure.get(microwatts);
            return known != null && known.price() <= price;
        }

        @Override
        void add(MemoryPoint point) {
            MemoryPoint known = sure.get(point.microwatts());
            if (known != null && known.price() >= point.price()) {
                points.removeIf(one -> one == known);
                sure.remove(point.microwatts());
            }
            points.add(point);
            if (point.slack() == 0) {
                sure.put(point.microwatts(), point);
            }
        }

        @Override
        List<MemoryPoint> all() {
            return points;
        }
    }
}
