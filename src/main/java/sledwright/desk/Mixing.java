package sledwright.desk;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import sledwright.desk.view.TooMany;
import sledwright.domain.Objective;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Request;
import sledwright.explain.Explanation;
import sledwright.explain.conflict.Relaxation;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.OrderOutcome;
import sledwright.planner.order.OrderPlanner;
import sledwright.request.Job;

/** What becomes of a request for more alike machines than can be had. */
final class Mixing {

    private static final String MACHINES = "machines";

    private Mixing() {
    }

    /** Empty where the number of machines is not what is in the way, or not alone. */
    static Optional<TooMany> of(Job.Quote job, Search search, Explanation explanation, Terms terms, Deadline deadline) {
        return explanation.relaxations().stream().filter(way -> way.keys().equals(List.of(MACHINES))).findFirst()
                .map(fewer -> of(job, search, fewer, terms, deadline));
    }

    private static TooMany of(Job.Quote job, Search search, Relaxation fewer, Terms terms, Deadline deadline) {
        Request request = job.request();
        // What surrounds machines is chosen for a whole order and cannot be wished for in a line of it.
        boolean canBeAnOrder = request.use().stream().noneMatch(job.catalog()::isOfEnclosuresAlone) && !deadline.isOver();
        return TooMany.of(request, job.catalog(), fewer,
                canBeAnOrder ? Optional.of(filled(job, search, terms, deadline)) : Optional.empty());
    }

    private static OrderOutcome filled(Job.Quote job, Search search, Terms terms, Deadline deadline) {
        Request request = job.request();
        Request line = request.withLimit(request.limit().withPrice(OptionalLong.empty())).withOnHand(Map.of())
                .withObjective(request.objective() == Objective.BEST_VALUE ? Objective.BEST_VALUE : Objective.CHEAPEST);
        OrderRequest order = new OrderRequest(request.name(), List.of(new OrderLine(request.name(), line, OrderLine.LEAST_PRIORITY, false)),
                OptionalInt.empty(), 0, 0, request.onHand());
        // It is an answer beside the answer: the first that is found will do, which no clock decides.
        return new OrderPlanner(job.catalog(), search, terms.seed()).first(order, deadline);
    }
}
