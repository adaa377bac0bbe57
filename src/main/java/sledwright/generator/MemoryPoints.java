package sledwright.generator;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.function.ToDoubleFunction;
import sledwright.metrics.Bandwidth;

/**
 * The populations of an option that no other of it matches in price, width, usable memory and watts. They are sifted in
 * the order of price and only as far as they are asked for.
 */
final class MemoryPoints {

    private static final Comparator<MemoryPoint> CHEAPEST = Comparator.comparingLong(MemoryPoint::price)
            .thenComparing(Comparator.comparingDouble(MemoryPoint::width).reversed())
            .thenComparing(Comparator.comparingDouble(MemoryPoint::usableGb).reversed())
            .thenComparingLong(MemoryPoint::microwatts)
            .thenComparingInt(MemoryPoint::modules);

    private final int sockets;
    private final PriorityQueue<MemoryPoint> unsifted;
    private final List<MemoryPoint> cheapestFirst = new ArrayList<>();
    private final Skyline skyline;
    private final Map<Integer, List<MemoryPoint>> byAim = new HashMap<>();

    MemoryPoints(List<MemoryPoint> all, int sockets) {
        this.sockets = sockets;
        unsifted = new PriorityQueue<>(Math.max(1, all.size()), CHEAPEST);
        unsifted.addAll(all);
        skyline = new Skyline(all.stream().mapToDouble(MemoryPoint::usableGb).toArray());
    }

    /** The next point in the order of price; null behind the last. */
    MemoryPoint cheapest(int index) {
        while (cheapestFirst.size() <= index) {
            MemoryPoint next = unsifted.poll();
            if (next == null) {
                return null;
            }
            if (!skyline.matches(next.usableGb(), next.width(), next.microwatts() - next.slack())) {
                skyline.add(next.usableGb(), next.width(), next.microwatts());
                cheapestFirst.add(next);
            }
        }
        return cheapestFirst.get(index);
    }

    /**
     * All points in the order of an aim, then of price.
     *
     * @param aim the less the better; always the same for a speed
     */
    List<MemoryPoint> inOrderOf(int speedMts, ToDoubleFunction<MemoryPoint> aim) {
        return byAim.computeIfAbsent(speedMts, mts -> {
            int last = 0;
            while (cheapest(last) != null) {
                last++;
            }
            List<MemoryPoint> sorted = new ArrayList<>(cheapestFirst);
            sorted.sort(Comparator.comparingDouble(aim).thenComparing(CHEAPEST));
            return sorted;
        });
    }

    /** GB/s of the machine at a speed. */
    double bandwidthGbs(MemoryPoint point, int speedMts) {
        return Bandwidth.ofMachineGbs(sockets, speedMts, point.socketGb(), point.fullestGb());
    }
}
