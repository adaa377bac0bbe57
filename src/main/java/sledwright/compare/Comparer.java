package sledwright.compare;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import sledwright.domain.Catalog;
import sledwright.domain.Energy;
import sledwright.domain.Objective;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Supply;
import sledwright.generator.Axis;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Staircase;
import sledwright.generator.Staircase.Step;
import sledwright.generator.Staircases;
import sledwright.generator.time.Deadline;
import sledwright.metrics.EnergyCost;
import sledwright.planner.DefectException;
import sledwright.planner.Judge;
import sledwright.planner.Judged;
import sledwright.rules.Order;

/** Compares what requests get for their money; no build comes out of it that a judge has not found valid. */
public final class Comparer {

    private final Catalog catalog;
    private final Search search;
    private final Judge judge = new Judge();
    private final Set<Order> judged = Collections.newSetFromMap(new IdentityHashMap<>());

    /** @param search of the catalogue; what it has learnt serves on */
    public Comparer(Catalog catalog, Search search) {
        this.catalog = catalog;
        this.search = search;
    }

    /**
     * The curves of a request. Each has an equal share of the time that those before it leave.
     *
     * @param costs      what to weigh; {@link Cost#TOTAL} needs {@code energy}
     * @param byPlatform whether to draw a curve for each platform instead of one for all
     * @throws DefectException where a build that was found breaks a rule, or is not what it was found as
     */
    public Comparison compare(Request request, Optional<Energy> energy, List<Cost> costs, List<Axis> axes, boolean byPlatform,
                              Deadline deadline) {
        List<Optional<String>> platforms = byPlatform ? platforms(request) : List.of(Optional.empty());
        int left = platforms.size() * costs.size() * axes.size();
        List<Curve> curves = new ArrayList<>();
        for (Optional<String> platform : platforms) {
            Request asked = platform.map(sku -> request.withPlatforms(Set.of(sku))).orElse(request);
            Staircases staircases = search.staircases(asked);
            for (Cost cost : costs) {
                for (Axis axis : axes) {
                    Optional<Energy> counted = cost == Cost.TOTAL ? energy : Optional.empty();
                    Staircase found = staircases.of(axis, counted, deadline.share(left--));
                    curves.add(curve(found, cost, platform, asked, energy));
                }
            }
        }
        return new Comparison(request, energy, byPlatform, curves, Optional.empty());
    }

    /**
     * The builds of a request of which each beats every cheaper one by a share in some figure.
     *
     * @throws DefectException where a build that was found breaks a rule
     */
    public Together together(Request request, double share, Deadline deadline) {
        Findings findings = search.run(request.withObjective(Objective.CHEAPEST).withAlternatives(Together.MOST, share), deadline);
        findings.ranked().forEach(this::requireValid);
        return new Together(share, findings.ranked(), findings.doubts());
    }

    /** The platforms that a request allows, in the order of the catalogue. */
    private List<Optional<String>> platforms(Request request) {
        Stream<String> all = catalog.platforms().stream().map(Platform::sku);
        return all.filter(sku -> request.platforms().isEmpty() || request.platforms().contains(sku)).map(Optional::of).toList();
    }

    private Curve curve(Staircase found, Cost cost, Optional<String> platform, Request request, Optional<Energy> energy) {
        List<Point> points = new ArrayList<>();
        for (Step step : found.steps()) {
            Point point = point(step, request, energy);
            requireAsFound(step, point, found.axis(), cost);
            points.add(point);
        }
        return new Curve(new CurveAxes(found.axis(), cost, platform), request.machines(), points, found.proved(), found.doubts(),
                found.bound().isPresent() && Double.isFinite(found.bound().getAsDouble()) ? found.bound() : OptionalDouble.empty());
    }

    private static Point point(Step step, Request request, Optional<Energy> energy) {
        Order order = step.order();
        Optional<Supply> supply = order.machines().get(0).supply();
        long electricity = energy.map(asked -> EnergyCost.of(request.machines(), order.figures().loadW(), supply, request.limit(), asked))
                .orElse(0L);
        return new Point(order, step.figure(), order.price().total(), electricity);
    }

    private void requireValid(Order order) {
        if (judged.add(order)) {
            Judged verdict = judge.judge(order);
            if (!verdict.valid()) {
                throw new DefectException("A build that was found breaks the rules:\n  %s\n  machines %s\n  picks %s".formatted(
                        verdict.broken(), order.needed(), order.picks()));
            }
        }
    }

    private void requireAsFound(Step step, Point point, Axis axis, Cost cost) {
        requireValid(step.order());
        if (point.cost(cost) != step.cost() || axis.of(step.order().figures()) != step.figure()) {
            throw new DefectException("A build was found at %s %s with %s %s and comes to %s with %s:\n  machines %s"
                    .formatted(cost.noun(), step.cost(), axis.noun(), step.figure(), point.cost(cost), axis.of(step.order().figures()),
                    step.order().needed()));
        }
    }
}
