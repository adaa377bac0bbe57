package sledwright.planner;

import sledwright.metrics.Figures;
import sledwright.metrics.Quantity;
import sledwright.metrics.Surplus;
import sledwright.rules.Order;

/**
 * What one valid build is better in than another: the objective's own figure first, then what breaks its ties. Points of a
 * criterion are whole numbers, of which more is better: minor units of the currency for a price, else millionths, to which
 * figures are computed; each is of all machines of a line together, where the heaviest stands for all.
 */
public enum Criterion {
    OBJECTIVE("objective"), PRICE("price"), THROUGHPUT("throughput"), BANDWIDTH("bandwidth"),
    USABLE_MEMORY("usable-memory"), LOAD("load"), CORES("cores");

    private final String id;

    Criterion(String id) {
        this.id = id;
    }

    /** The identifier of its constraint. */
    public String id() {
        return id;
    }

    /**
     * The points of a candidate.
     *
     * @throws ArithmeticException where they are beyond 64 bits, some 90 million units of a currency for best-value
     */
    long points(Candidate candidate) {
        Order order = candidate.order();
        Figures figures = candidate.heaviest().figures();
        long price = order.price().total();
        return switch (this) {
            case OBJECTIVE -> switch (order.request().objective()) {
                case CHEAPEST -> PRICE.points(candidate);
                case MOST_THROUGHPUT -> THROUGHPUT.points(candidate);
                case MOST_BANDWIDTH -> BANDWIDTH.points(candidate);
                case MOST_MEMORY -> USABLE_MEMORY.points(candidate);
                case BEST_VALUE -> -microPriceLessWorth(order, figures);
            };
            case PRICE -> -price;
            case THROUGHPUT -> ofAll(order, figures.throughput());
            case BANDWIDTH -> ofAll(order, figures.bandwidthGbs());
            case USABLE_MEMORY -> ofAll(order, figures.usableGb());
            case LOAD -> -ofAll(order, figures.loadW());
            case CORES -> ofAll(order, figures.cores());
        };
    }

    private static long microPriceLessWorth(Order order, Figures figures) {
        return Surplus.of(order.request().require(), figures)
                .microPriceLess(order.price().total(), order.machines().size(), order.request().worth());
    }

    private static long ofAll(Order order, double figure) {
        return Math.multiplyExact(Quantity.micro(figure), order.machines().size());
    }
}
