package sledwright.desk;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.desk.view.OrderAnswer;
import sledwright.desk.view.OrderView;
import sledwright.domain.Catalog;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Request;
import sledwright.explain.Explainer;
import sledwright.explain.Explanation;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.OrderOutcome;
import sledwright.planner.order.OrderOutcome.LineFill;
import sledwright.planner.order.OrderPlanner;
import sledwright.planner.order.OrderProgress;
import sledwright.request.Job;

/** Lines of machines filled from one stock. */
final class Ordering {

    private final Catalog catalog;
    private final Search search;
    private final Deadline deadline;

    private Ordering(Catalog catalog, Search search, Deadline deadline) {
        this.catalog = catalog;
        this.search = search;
        this.deadline = deadline;
    }

    static OrderAnswer answer(Job.Order job, Search search, Terms terms) {
        Deadline deadline = terms.deadline();
        Ordering ordering = new Ordering(job.catalog(), search, deadline);
        OrderOutcome outcome = new OrderPlanner(job.catalog(), terms.seed()).plan(job.order(), deadline,
                progress -> terms.listener().accept(ordering.told(progress)));
        return new OrderAnswer(OrderView.of(outcome, ordering.why(outcome), job.discount()), job, outcome,
                Optional.empty());
    }

    private Progress told(OrderProgress now) {
        return new Progress.Found(now.seconds(), amount(now.best()), amount(now.bound()), catalog.currency().getCurrencyCode(),
                now.missing());
    }

    private Optional<BigDecimal> amount(double minor) {
        return Double.isFinite(minor) ? Optional.of(catalog.amount(Math.round(minor))) : Optional.empty();
    }

    /** Name of each line of which not one machine can be built, even if it stood alone -> what conflicts. */
    private Map<String, Explanation> why(OrderOutcome outcome) {
        Map<String, Explanation> why = new LinkedHashMap<>();
        for (LineFill fill : outcome.lines()) {
            // What needs a search beyond the time is left unsaid.
            if (fill.delivered() == 0 && !deadline.isOver()) {
                explained(fill.line().request().withOnHand(outcome.order().onHand())).ifPresent(said -> why.put(fill.line().name(), said));
            }
        }
        return why;
    }

    /** One machine of a line; enclosures are the whole order's. */
    private static Request alone(Request asked) {
        return asked.withMachines(1).withEquipment(asked.equipment().withEnclosure(EnclosureFrom.OWN));
    }

    private Optional<Explanation> explained(Request asked) {
        Findings findings = search.run(alone(asked), deadline);
        return findings.status() == Status.IMPOSSIBLE ? Optional.of(new Explainer(catalog, search, deadline).explain(findings, List.of()))
                : Optional.empty();
    }
}
