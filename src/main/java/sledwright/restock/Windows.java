package sledwright.restock;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.TreeSet;

/**
 * Days from which further units can be used. Between two of them nothing arrives, so orders that must be met by then may be counted
 * together. Where there are many such days, near ones are taken as the earlier of them: for a bound that is safe, and the simulation
 * goes by the true days.
 */
final class Windows {

    private static final int MOST = 6;

    private final double[] starts;

    /**
     * @param arrivals days on which units arrive
     * @param patience days that every customer waits; what arrives by then is as good as here
     */
    Windows(Collection<Integer> arrivals, double patience) {
        TreeSet<Double> days = new TreeSet<>(List.of(0.0));
        arrivals.stream().filter(day -> day > patience).forEach(day -> days.add((double) day));
        List<Double> kept = new ArrayList<>(days);
        while (kept.size() > MOST) {
            int nearest = 1;
            for (int i = 2; i < kept.size(); i++) {
                if (kept.get(i) - kept.get(i - 1) < kept.get(nearest) - kept.get(nearest - 1)) {
                    nearest = i;
                }
            }
            kept.remove(nearest);
        }
        starts = kept.stream().mapToDouble(Double::doubleValue).toArray();
    }

    int count() {
        return starts.length;
    }

    /** The day on which a window is over. */
    double end(int window) {
        return window + 1 < starts.length ? starts[window + 1] : Double.POSITIVE_INFINITY;
    }

    /** The window in which a day lies. */
    int of(double day) {
        int window = 0;
        while (window + 1 < starts.length && starts[window + 1] <= day) {
            window++;
        }
        return window;
    }
}
