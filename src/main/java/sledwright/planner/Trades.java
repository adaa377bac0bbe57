package sledwright.planner;

import java.util.OptionalLong;
import sledwright.domain.Objective;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.metrics.Figures;
import sledwright.metrics.SurplusWorth;
import sledwright.rules.Order;
import sledwright.rules.target.Target;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/** Puts into words what a candidate gives and takes. */
final class Trades {

    private final Order order;
    private final Figures figures;
    private final Request request;
    private final int machines;

    private Trades(Candidate candidate) {
        order = candidate.order();
        figures = candidate.figures();
        request = order.request();
        machines = order.machines().size();
    }

    /** A candidate under one criterion. */
    static Trade of(Criterion criterion, Candidate candidate) {
        return new Trades(candidate).under(criterion);
    }

    private Trade under(Criterion criterion) {
        Requirements least = request.require();
        return switch (criterion) {
            case OBJECTIVE -> objective();
            case PRICE -> price();
            case THROUGHPUT -> gain(criterion, least.work().isOfWorkload() ? Target.WORK : Target.THROUGHPUT, "unit",
                    worth(least.cores(), least.memoryGb(), least.bandwidthGbs(), figures.throughput(), figures.work()));
            case BANDWIDTH -> gain(criterion, Target.BANDWIDTH, "GB/s",
                    worth(least.cores(), least.memoryGb(), figures.bandwidthGbs(), least.throughput(), least.work().least()));
            case USABLE_MEMORY -> gain(criterion, Target.MEMORY_CAPACITY, "GB",
                    worth(least.cores(), figures.usableGb(), least.bandwidthGbs(), least.throughput(), least.work().least()));
            case LOAD -> new Trade(criterion, figures.loadW(), Sentence.of("The load of %s is %s W.",
                    machines == 1 ? "the machine" : "the heaviest machine", Numbers.plain(figures.loadW())));
            case CORES -> gain(criterion, Target.CORES, "core",
                    worth(figures.cores(), least.memoryGb(), least.bandwidthGbs(), least.throughput(), least.work().least()));
        };
    }

    /** What all machines are worth beyond the request with those figures each, whole minor units. */
    private long worth(int cores, double usableGb, double bandwidthGbs, double throughput, double work) {
        return Math.round(SurplusWorth.of(request, cores, usableGb, bandwidthGbs, throughput, work));
    }

    private Trade objective() {
        Objective objective = request.objective();
        return switch (objective) {
            case CHEAPEST -> new Trade(Criterion.OBJECTIVE, order.price().total(), Sentence.plain("What counts first is the price, the"
                    + " least."));
            case LEAST_TOTAL -> new Trade(Criterion.OBJECTIVE, order.total(), Sentence.of("What counts first is the price and the energy,"
                    + " the least: %s and %s come to %s.", order.words(order.price().total()), order.words(order.energy()),
                    order.words(order.total())));
            case MOST_THROUGHPUT -> most(Target.THROUGHPUT);
            case MOST_BANDWIDTH -> most(Target.BANDWIDTH);
            case MOST_MEMORY -> most(Target.MEMORY_CAPACITY);
            case MOST_WORK -> most(Target.WORK);
            case MOST_CORES -> most(Target.CORES);
            case BEST_VALUE -> priceLessWorth();
        };
    }

    private Trade most(Target target) {
        return new Trade(Criterion.OBJECTIVE, target.figure(figures), Sentence.of("What counts first is the %s, the most.", target.noun()));
    }

    private Trade priceLessWorth() {
        long price = order.price().total();
        double value = Criterion.priceLessWorth(order, figures);
        long worth = price - Math.round(value);
        return new Trade(Criterion.OBJECTIVE, value, Sentence.of("What counts first is the price less worth, the least: %s less %s is %s.",
                order.words(price), order.words(worth), order.words(price - worth)));
    }

    private Trade price() {
        long price = order.price().total();
        OptionalLong each = order.price().perUnit(figures.throughput() * machines);
        return new Trade(Criterion.PRICE, price, Sentence.of("%s %s%s.",
                machines == 1 ? "The machine costs" : Sentence.of("The %s machines cost", machines), order.words(price),
                each.isPresent() ? Sentence.of(", %s for each unit of throughput", order.words(each.getAsLong())) : ""));
    }

    /**
     * @param worth what all machines' surplus of the figure is worth, minor units
     */
    private Trade gain(Criterion criterion, Target target, String unit, long worth) {
        double reached = target.figure(figures);
        OptionalLong each = order.price().perUnit(reached * machines);
        Object cost = each.isPresent() && criterion != Criterion.THROUGHPUT
                ? Sentence.of("; the price comes to %s for each %s", order.words(each.getAsLong()), unit) : "";
        Object surplus = worth > 0 ? Sentence.of("; %s%s beyond the request are worth %s%s",
                Numbers.plain(reached - target.least(request.require())), target.unit(), order.words(worth),
                machines == 1 ? "" : " over all machines") : "";
        return new Trade(criterion, reached, Sentence.of("The %s%s is %s%s%s%s.", target.noun(),
                machines == 1 ? "" : " of a machine", Numbers.plain(reached), target.unit(), cost, surplus));
    }
}
