package sledwright.bench;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.DoubleStream;

/**
 * How values are spread.
 *
 * @param count how many there are
 * @param p95   95 of 100 are no greater
 */
record Spread(int count, double median, double p95, double worst) {

    static Spread of(DoubleStream values) {
        double[] sorted = values.sorted().toArray();
        return new Spread(sorted.length, quantile(sorted, 0.5), quantile(sorted, 0.95), quantile(sorted, 1));
    }

    static double median(double... values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return quantile(sorted, 0.5);
    }

    /** The least value that at least this share of all does not exceed; NaN of none. */
    private static double quantile(double[] sorted, double share) {
        return sorted.length == 0 ? Double.NaN : sorted[Math.max(0, (int) Math.ceil(share * sorted.length) - 1)];
    }

    /** Median, 95 % and worst as columns of a table. */
    String columns() {
        return String.format(Locale.ROOT, "%9.2f %9.2f %9.2f", median, p95, worst);
    }
}
