package sledwright.explain.steps;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import sledwright.domain.Objective;
import sledwright.domain.Request;
import sledwright.explain.ask.Oracle;
import sledwright.explain.ask.WhatIf;
import sledwright.explain.ask.UnsettledException;
import sledwright.explain.steps.Steps.Curve;
import sledwright.explain.steps.Steps.Step;
import sledwright.rules.Order;
import sledwright.rules.stock.Budget;

/**
 * What more or less of one required figure costs. The least price as a function of the figure asked for is a staircase: it rises
 * behind the figure that a best build reaches, and the next stair ends at the figure that the next best build reaches. Where the
 * objective makes most of a figure, a stair ends where that falls or where it stays and the price rises. Stairs of cards may fall, too:
 * three from a lot can cost less than two.
 *
 * @param terms where the price is what changes, without its limit: what is above it is shown, too
 * @param best  the proved best order of the request
 */
public record RequirementSteps(AskedFigure asked, Request request, WhatIf terms, Order best, Oracle oracle) {

    /** How many steps are listed on either side. */
    static final int EACH_WAY = 3;

    /**
     * Adds a curve for each requirement of a request.
     *
     * @throws UnsettledException when time runs out; those that were found are there
     */
    public static void addTo(List<Curve> curves, Request request, Order best, Oracle oracle) {
        WhatIf terms = WhatIf.of(request.objective() == Objective.CHEAPEST
                ? request.withLimit(request.limit().withPrice(OptionalLong.empty())) : request, Optional.empty());
        for (AskedFigure asked : AskedFigure.of(request, oracle.catalog())) {
            curves.add(new RequirementSteps(asked, request, terms, best, oracle).find());
        }
    }

    private Curve find() {
        List<Step> steps = new ArrayList<>();
        boolean first = addLess(steps);
        Collections.reverse(steps);
        boolean last = addMore(steps);
        AskedFigure.Entry entry = asked.entry();
        return new Curve(entry.key(), entry.name(), entry.unit(), entry.least(), steps, first, last);
    }

    /** Adds the stairs below, the next first; whether there are no more. */
    private boolean addLess(List<Step> steps) {
        double figure = asked.entry().least();
        Standing standing = standing(best);
        for (int i = 0; i <= EACH_WAY; i++) {
            Optional<Order> found = less(figure, standing);
            if (found.isEmpty()) {
                return true;
            }
            if (i < EACH_WAY) {
                steps.add(step(found.get(), figure(found.get())));
            }
            figure = figure(found.get());
            standing = standing(found.get());
        }
        return false;
    }

    /** The best order of those that reach the greatest figure which still makes it better. */
    private Optional<Order> less(double than, Standing standing) {
        Optional<Order> free = best(0).filter(order -> standing(order).precedes(standing));
        if (free.isEmpty()) {
            return Optional.empty();
        }
        Optional<Objective> most = asked.most();
        if (most.isPresent() && request.objective() == Objective.CHEAPEST) {
            return oracle.best(asking(0).with(terms.request().limit().withPrice(OptionalLong.of(standing.price() - 1))), most.get());
        }
        double figure = asked.greatest(figure(free.get()), than, least -> {
            Optional<Order> found = best(least).filter(order -> standing(order).precedes(standing));
            return found.isPresent() ? OptionalDouble.of(figure(found.get())) : OptionalDouble.empty();
        });
        return best(figure);
    }

    /** Adds the request's own stair and those above; whether there are no more. */
    private boolean addMore(List<Step> steps) {
        Optional<Order> found = Optional.of(best);
        for (int i = 0; i <= EACH_WAY && found.isPresent(); i++) {
            Order order = found.get();
            double figure = figure(order);
            Optional<Order> beyond = best(figure + asked.entry().grain());
            while (beyond.isPresent() && !standing(order).differs(standing(beyond.get()))) {
                figure = figure(beyond.get());
                beyond = best(figure + asked.entry().grain());
            }
            steps.add(step(order, figure));
            found = beyond;
        }
        return found.isEmpty();
    }

    /** @param upTo the greatest figure that costs as much as the order */
    private Step step(Order order, double upTo) {
        Standing standing = standing(order);
        return new Step(upTo, standing.measured(oracle.catalog()), standing.above(standing(best), oracle.catalog()),
                oracle.catalog().amount(standing.price()), Budget.allows(request.limit(), standing.price()));
    }

    private Optional<Order> best(double least) {
        return oracle.best(asking(least), request.objective());
    }

    private WhatIf asking(double least) {
        return asked.asking(terms, least);
    }

    private double figure(Order order) {
        return asked.figure(order);
    }

    private Standing standing(Order order) {
        return Standing.of(order, request);
    }
}
