package sledwright.explain.steps;

import java.math.BigDecimal;
import sledwright.domain.Catalog;
import sledwright.domain.Objective;
import sledwright.domain.Request;
import sledwright.metrics.Figures;
import sledwright.metrics.SurplusWorth;
import sledwright.rules.Order;
import sledwright.words.Numbers;

/**
 * How an order stands by the objective of a request, whatever it was searched by.
 *
 * @param aim   the less the better: the price, price less worth, price and energy, or a figure with its sign turned
 * @param price all machines, minor units
 */
record Standing(Objective objective, double aim, long price) {

    /** Aims are sums of fractions; closer than this they are equal. */
    static final double ROUNDING = 1e-4;
    private static final double MILLIONTH = 1e-6;

    static Standing of(Order order, Request request) {
        Figures figures = order.figures();
        long price = order.price().total();
        return new Standing(request.objective(), switch (request.objective()) {
            case CHEAPEST -> price;
            case LEAST_TOTAL -> order.total();
            case BEST_VALUE -> price - SurplusWorth.of(request, figures);
            case MOST_THROUGHPUT -> -figures.throughput();
            case MOST_BANDWIDTH -> -figures.bandwidthGbs();
            case MOST_MEMORY -> -figures.usableGb();
            case MOST_WORK -> -figures.work();
            case MOST_CORES -> -figures.cores();
        }, price);
    }

    /** Whether the objective is an amount of money. */
    boolean isMoney() {
        return objective.isMoney();
    }

    /** Whether it is better by what the objective measures. */
    boolean beats(Standing other) {
        return aim < other.aim - (isMoney() ? ROUNDING : MILLIONTH / 2);
    }

    /** Whether it comes before the other: better, or as good and cheaper where the price decides next. */
    boolean precedes(Standing other) {
        return beats(other) || !isMoney() && !other.beats(this) && price < other.price;
    }

    /** Whether one of them comes before the other. */
    boolean differs(Standing other) {
        return precedes(other) || other.precedes(this);
    }

    /** The same machines where each of a number of units costs more by an amount. */
    Standing dearer(int units, long each) {
        long more = units * each;
        return new Standing(objective, isMoney() ? aim + more : aim, price + more);
    }

    /** How much this is above another, as both are written: money, or a figure of one machine. */
    BigDecimal above(Standing other, Catalog catalog) {
        return measured(catalog).subtract(other.measured(catalog));
    }

    /** What the objective measures: units of the currency, or a figure of one machine. */
    BigDecimal measured(Catalog catalog) {
        return isMoney() ? catalog.amount(Math.round(aim)) : new BigDecimal(Numbers.exact(-aim));
    }
}
