package sledwright.oracle;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Worth;

/**
 * A valid order as the objective sees it: whole minor units, and the figures of its slowest and heaviest machine in millionths.
 *
 * @param energy what the electricity costs where the request counts it, else 0; minor units
 * @param what words for a person; no part of the comparison
 */
record Candidate(long price, long energy, long throughput, int cores, long bandwidth, long usable, long load, long work, String what) {

    static Candidate of(long price, long energy, NaiveFigures figures, String what) {
        return new Candidate(price, energy, NaiveFigures.millionths(figures.throughput()), figures.cores(),
                NaiveFigures.millionths(figures.bandwidthGbs()), NaiveFigures.millionths(figures.usableGb()),
                NaiveFigures.millionths(figures.loadW()), NaiveFigures.millionths(figures.work()), what);
    }

    /** Price less the worth of everything beyond the required figures over all machines, in millionths of a minor unit. */
    long value(Request request) {
        Requirements require = request.require();
        Worth worth = request.worth();
        double one = worth.core() * beyond(cores, require.cores()) + worth.gb() * beyond(usable / 1e6, require.memoryGb())
                + worth.gbs() * beyond(bandwidth / 1e6, require.bandwidthGbs())
                + worth.throughput() * beyond(throughput / 1e6, require.throughput()) + worth.work() * beyond(work / 1e6, require.work().least());
        return NaiveFigures.millionths(price - request.machines() * one);
    }

    private static double beyond(double figure, double required) {
        return Math.max(0, figure - required);
    }

    long total() {
        return price + energy;
    }

    /** Best first. */
    static Comparator<Candidate> order(Request request) {
        Comparator<Candidate> rest = Comparator.comparingLong((Candidate c) -> -c.work).thenComparingLong(c -> -c.bandwidth)
                .thenComparingLong(c -> -c.usable).thenComparingLong(c -> c.load).thenComparingInt(c -> -c.cores);
        Comparator<Candidate> price = Comparator.comparingLong(Candidate::price);
        Comparator<Candidate> aim = switch (request.objective()) {
            case CHEAPEST -> price;
            case LEAST_TOTAL -> Comparator.comparingLong(Candidate::total).thenComparing(price);
            case MOST_THROUGHPUT -> Comparator.comparingLong((Candidate c) -> -c.throughput).thenComparing(price);
            case MOST_BANDWIDTH -> Comparator.comparingLong((Candidate c) -> -c.bandwidth).thenComparing(price);
            case MOST_MEMORY -> Comparator.comparingLong((Candidate c) -> -c.usable).thenComparing(price);
            case MOST_WORK -> Comparator.comparingLong((Candidate c) -> -c.work).thenComparing(price);
            case MOST_CORES -> Comparator.comparingInt((Candidate c) -> -c.cores).thenComparing(price);
            case BEST_VALUE -> Comparator.comparingLong((Candidate c) -> c.value(request));
        };
        return aim.thenComparing(rest);
    }

    /** The objective's figure: minor units where less is better, else the figure of one machine. */
    double aim(Request request) {
        return switch (request.objective()) {
            case CHEAPEST -> price;
            case LEAST_TOTAL -> total();
            case MOST_THROUGHPUT -> throughput / 1e6;
            case MOST_BANDWIDTH -> bandwidth / 1e6;
            case MOST_MEMORY -> usable / 1e6;
            case MOST_WORK -> work / 1e6;
            case MOST_CORES -> cores;
            case BEST_VALUE -> value(request) / 1e6;
        };
    }

    /** The best and its alternatives: the whole list walked in order, each held against all that were kept. */
    static List<Candidate> walk(List<Candidate> all, Request request) {
        List<Candidate> sorted = new ArrayList<>(all);
        sorted.sort(order(request));
        List<Candidate> kept = new ArrayList<>();
        for (Candidate next : sorted) {
            if (kept.size() < request.alternatives() && kept.stream().allMatch(one -> next.beats(one, request.step()))) {
                kept.add(next);
            }
        }
        return kept;
    }

    /** Whether some figure is better than the other's by a share of the other's, and strictly. */
    boolean beats(Candidate other, double step) {
        return more(work, other.work, step) || more(cores * 1_000_000L, other.cores * 1_000_000L, step)
                || more(bandwidth, other.bandwidth, step) || more(usable, other.usable, step)
                || load < other.load && load <= other.load * (1 - step) + 0.5;
    }

    private static boolean more(long mine, long other, double step) {
        return mine > other && mine >= other * (1 + step) - 0.5;
    }

    /** Price and figures that decide, without the words, for comparing and for messages; without a workload, the throughput is the work. */
    String figures() {
        return "price %d, energy %d, cores %d, bandwidth %s, usable %s, load %s, work %s".formatted(price, energy, cores, bandwidth / 1e6, usable / 1e6,
                load / 1e6, work / 1e6);
    }
}
