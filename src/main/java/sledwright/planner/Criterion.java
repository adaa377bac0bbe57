package sledwright.planner;

import java.util.Locale;
import sledwright.domain.Objective;
import sledwright.metrics.Figures;
import sledwright.metrics.Quantity;
import sledwright.metrics.SurplusWorth;
import sledwright.rules.Order;

/**
 * What one valid build is better in than another: the objective's own figure first, then what breaks its ties. Points of a
 * criterion are whole numbers, of which more is better: minor units of the currency for a price, else millionths, to which
 * figures are computed; each is of all machines of a line together, with what each of them reaches.
 */
public enum Criterion {
    OBJECTIVE, PRICE, THROUGHPUT, BANDWIDTH, USABLE_MEMORY, LOAD, CORES;

    /** The identifier of its constraint. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * The points of a candidate.
     *
     * @throws ArithmeticException where they are beyond 64 bits
     */
    long points(Candidate candidate) {
        Order order = candidate.order();
        Figures figures = candidate.figures();
        long price = order.price().total();
        return switch (this) {
            case OBJECTIVE -> switch (order.request().objective()) {
                case CHEAPEST -> -price;
                case LEAST_TOTAL -> -order.total();
                case MOST_THROUGHPUT -> ofAll(order, figures.throughput());
                case MOST_BANDWIDTH -> BANDWIDTH.points(candidate);
                case MOST_MEMORY -> USABLE_MEMORY.points(candidate);
                case MOST_WORK -> THROUGHPUT.points(candidate);
                case MOST_CORES -> CORES.points(candidate);
                case BEST_VALUE -> -Quantity.micro(priceLessWorth(order, figures));
            };
            // Of equal values the dearer build gives more, so no price breaks their tie.
            case PRICE -> order.request().objective() == Objective.BEST_VALUE ? 0 : -price;
            // The work of a workload stands for the throughput; without one they are the same.
            case THROUGHPUT -> ofAll(order, figures.work());
            case BANDWIDTH -> ofAll(order, figures.bandwidthGbs());
            case USABLE_MEMORY -> ofAll(order, figures.usableGb());
            case LOAD -> -ofAll(order, figures.loadW());
            case CORES -> ofAll(order, figures.cores());
        };
    }

    /** The price of all machines less what their figures beyond the required ones are worth, minor units. */
    static double priceLessWorth(Order order, Figures figures) {
        return Quantity.rounded(order.price().total() - SurplusWorth.of(order.request(), figures));
    }

    private static long ofAll(Order order, double figure) {
        return Math.multiplyExact(Quantity.micro(figure), order.machines().size());
    }
}
