package sledwright.generator.memory;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToDoubleFunction;
import sledwright.domain.Objective;
import sledwright.metrics.Bandwidth;

/** The populations of an option that no other of it matches in price, width, usable memory and watts. */
public final class MemoryPoints {

    private static final Comparator<MemoryPoint> CHEAPEST = Comparator.comparingLong(MemoryPoint::price)
            .thenComparing(Comparator.comparingDouble(MemoryPoint::width).reversed())
            .thenComparing(Comparator.comparingDouble(MemoryPoint::usableGb).reversed())
            .thenComparingLong(MemoryPoint::microwatts)
            .thenComparingInt(MemoryPoint::modules);

    private static final long ORDERS = 3;
    private static final long BYTES_OF_REFERENCE = 8;

    private final int sockets;
    private final List<MemoryPoint> cheapestFirst;
    private final Map<List<Object>, List<MemoryPoint>> byAim = new ConcurrentHashMap<>();

    public MemoryPoints(List<MemoryPoint> points, int sockets) {
        this.sockets = sockets;
        cheapestFirst = new ArrayList<>(points);
        cheapestFirst.sort(CHEAPEST);
    }

    /** All points in the order of price. */
    public List<MemoryPoint> cheapestFirst() {
        return cheapestFirst;
    }

    /**
     * All points in the order of an aim, then of price.
     *
     * @param aim the less the better; always the same for an objective and a speed
     */
    public List<MemoryPoint> inOrderOf(Objective objective, int speedMts, ToDoubleFunction<MemoryPoint> aim) {
        return byAim.computeIfAbsent(List.of(objective, speedMts), same -> {
            List<MemoryPoint> sorted = new ArrayList<>(cheapestFirst);
            sorted.sort(Comparator.comparingDouble(aim));
            return sorted;
        });
    }

    /** About how many bytes they take, sorted in a few orders. */
    long bytes() {
        return cheapestFirst.stream().mapToLong(point -> ORDERS * BYTES_OF_REFERENCE + point.bytes()).sum();
    }

    /** The same as {@link #bandwidthGbs} before it is rounded. */
    public double unroundedGbs(MemoryPoint point, int speedMts) {
        return Bandwidth.unroundedGbs(sockets, speedMts, point.socketGb(), point.fullestGb());
    }

    /** GB/s of the machine at a speed. */
    public double bandwidthGbs(MemoryPoint point, int speedMts) {
        return Bandwidth.ofMachineGbs(sockets, speedMts, point.socketGb(), point.fullestGb());
    }
}
