package sledwright.planner;

import java.util.OptionalLong;
import sledwright.domain.Objective;
import sledwright.domain.Worth;
import sledwright.metrics.Figures;
import sledwright.metrics.Quantity;
import sledwright.metrics.Surplus;
import sledwright.rules.Numbers;
import sledwright.rules.Order;
import sledwright.rules.target.Target;

/** Puts into words what a candidate gives and takes. */
final class Trades {

    private final Order order;
    private final Figures figures;
    private final Surplus beyond;
    private final int machines;

    private Trades(Candidate candidate) {
        order = candidate.order();
        figures = candidate.heaviest().figures();
        beyond = Surplus.of(order.request().require(), figures);
        machines = order.machines().size();
    }

    /** A candidate under one criterion. */
    static Trade of(Criterion criterion, Candidate candidate) {
        return new Trades(candidate).under(criterion);
    }

    private Trade under(Criterion criterion) {
        Worth worth = order.request().worth();
        return switch (criterion) {
            case OBJECTIVE -> objective();
            case PRICE -> price();
            case THROUGHPUT -> gain(criterion, Target.THROUGHPUT, "unit", beyond.throughput(), worth.throughput());
            case BANDWIDTH -> gain(criterion, Target.BANDWIDTH, "GB/s", beyond.bandwidthGbs(), worth.gbs());
            case USABLE_MEMORY -> gain(criterion, Target.MEMORY_CAPACITY, "GB", beyond.usableGb(), worth.gb());
            case LOAD -> new Trade(criterion, figures.loadW(), "The load of %s is %s W."
                    .formatted(machines == 1 ? "the machine" : "the heaviest machine", Numbers.plain(figures.loadW())));
            case CORES -> gain(criterion, Target.CORES, "core", beyond.cores(), worth.core());
        };
    }

    private Trade objective() {
        Objective objective = order.request().objective();
        return switch (objective) {
            case CHEAPEST -> new Trade(Criterion.OBJECTIVE, order.price().total(), "What counts first is the price, the least.");
            case MOST_THROUGHPUT -> most(Target.THROUGHPUT);
            case MOST_BANDWIDTH -> most(Target.BANDWIDTH);
            case MOST_MEMORY -> most(Target.MEMORY_CAPACITY);
            case BEST_VALUE -> priceLessWorth();
        };
    }

    private Trade most(Target target) {
        return new Trade(Criterion.OBJECTIVE, target.figure(figures), "What counts first is the %s, the most.".formatted(target.noun()));
    }

    private Trade priceLessWorth() {
        long price = order.price().total();
        long value = Math.round(beyond.microPriceLess(price, machines, order.request().worth()) / (double) Quantity.micro(1));
        return new Trade(Criterion.OBJECTIVE, value, "What counts first is the price less worth, the least: %s less %s is %s."
                .formatted(order.words(price), order.words(price - value), order.words(value)));
    }

    private Trade price() {
        long price = order.price().total();
        OptionalLong each = order.price().perUnit(figures.throughput() * machines);
        return new Trade(Criterion.PRICE, price, "%s %s%s.".formatted(
                machines == 1 ? "The machine costs" : "The %d machines cost".formatted(machines), order.words(price),
                each.isPresent() ? ", %s for each unit of throughput".formatted(order.words(each.getAsLong())) : ""));
    }

    private Trade gain(Criterion criterion, Target target, String unit, double surplus, double worthOfOne) {
        double reached = target.figure(figures);
        OptionalLong each = order.price().perUnit(reached * machines);
        String cost = each.isPresent() && criterion != Criterion.THROUGHPUT
                ? "; the price comes to %s for each %s".formatted(order.words(each.getAsLong()), unit) : "";
        String worth = surplus > 0 && worthOfOne > 0 ? "; %s%s beyond the request are worth %s".formatted(
                Numbers.plain(surplus), target.unit(), order.words(Math.round(surplus * worthOfOne))) : "";
        return new Trade(criterion, reached, "The %s%s is %s%s%s%s.".formatted(target.noun(),
                machines == 1 ? "" : " of a machine", Numbers.plain(reached), target.unit(), cost, worth));
    }
}
