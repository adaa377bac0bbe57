package sledwright.generator;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sledwright.metrics.Bandwidth;

/** The populations of an option that no other of it matches in price, width, usable memory and watts; cheapest first. */
final class MemoryPoints {

    private static final Comparator<MemoryPoint> CHEAPEST = Comparator.comparingLong(MemoryPoint::price)
            .thenComparing(Comparator.comparingDouble(MemoryPoint::width).reversed())
            .thenComparing(Comparator.comparingDouble(MemoryPoint::usableGb).reversed())
            .thenComparingLong(MemoryPoint::microwatts)
            .thenComparingInt(MemoryPoint::modules);

    private final List<MemoryPoint> points;
    private final int sockets;
    private final Map<Integer, double[]> bandwidths = new HashMap<>();

    MemoryPoints(List<MemoryPoint> all, int sockets) {
        this.sockets = sockets;
        List<MemoryPoint> sorted = new ArrayList<>(all);
        sorted.sort(CHEAPEST);
        points = new ArrayList<>();
        for (MemoryPoint point : sorted) {
            if (points.stream().noneMatch(cheaper -> cheaper.matches(point))) {
                points.add(point);
            }
        }
    }

    int size() {
        return points.size();
    }

    MemoryPoint get(int index) {
        return points.get(index);
    }

    /** GB/s of the machine for each point at a speed. */
    double[] bandwidthsGbs(int speedMts) {
        return bandwidths.computeIfAbsent(speedMts, mts -> points.stream()
                .mapToDouble(point -> Bandwidth.ofMachineGbs(sockets, mts, point.socketGb(), point.fullestGb())).toArray());
    }
}
