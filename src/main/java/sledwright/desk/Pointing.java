package sledwright.desk;

import java.util.List;
import java.util.Optional;
import sledwright.compare.Comparer;
import sledwright.compare.Comparison;
import sledwright.compare.Cost;
import sledwright.compare.Curve;
import sledwright.compare.PricePoints;
import sledwright.compare.PricePoints.Marked;
import sledwright.domain.Objective;
import sledwright.domain.Requirements;
import sledwright.generator.Axis;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.request.Job;
import sledwright.rules.Order;

/**
 * Price points of a request: a few builds of the curve of the asked figure over the price.
 *
 * @param findings the builds, by price, as if the cheapest had been asked for
 * @param marks    what each is chosen for
 */
record Pointing(Findings findings, List<PricePoints.Mark> marks) {

    /** Empty where no price points are asked for, or nothing was found. */
    static Optional<Pointing> of(Job.Quote job, Search search, Deadline deadline) {
        if (job.points() == 0) {
            return Optional.empty();
        }
        Comparison comparison = new Comparer(job.catalog(), search).compare(job.request(), Optional.empty(), List.of(Cost.PRICE),
                List.of(figure(job.request().objective(), job.request().require())), false, deadline);
        Curve curve = comparison.curves().get(0);
        return curve.points().isEmpty() ? Optional.empty() : Optional.of(of(job, curve));
    }

    private static Pointing of(Job.Quote job, Curve curve) {
        List<Marked> marked = PricePoints.of(curve, job.points());
        List<Order> orders = marked.stream().map(point -> curve.points().get(point.point()).order()).toList();
        double cheapest = curve.cost(0);
        double bound = curve.proved() > 0 ? cheapest : 0;
        return new Pointing(new Findings(job.request().withObjective(Objective.CHEAPEST), curve.status() == Status.PROVED ? Status.PROVED
                : Status.BEST_FOUND, cheapest, bound, orders, curve.doubts()), marked.stream().map(Marked::mark).toList());
    }

    /** The figure that is asked for; where none is, how much the machine does. */
    private static Axis figure(Objective objective, Requirements require) {
        return switch (objective) {
            case MOST_BANDWIDTH -> Axis.BANDWIDTH;
            case MOST_MEMORY -> Axis.MEMORY;
            case MOST_CORES -> Axis.CORES;
            case CHEAPEST, BEST_VALUE, LEAST_TOTAL, MOST_THROUGHPUT, MOST_WORK -> Axis.of(require).get(0);
        };
    }
}
