package sledwright.planner.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.FilledEnclosure;
import sledwright.domain.Limits;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.planner.Judge;
import sledwright.planner.order.OrderOutcome.Fill;
import sledwright.planner.order.OrderOutcome.LineFill;
import sledwright.rules.Housing;
import sledwright.rules.Order;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;

/** Holds a filled order against the rulebook: every machine and line, the stock over all lines, and the enclosures. */
final class OrderJudge {

    private final Catalog catalog;
    private final Judge judge = new Judge();

    OrderJudge(Catalog catalog) {
        this.catalog = catalog;
    }

    List<Violation> judge(OrderOutcome outcome) {
        List<Violation> broken = new ArrayList<>();
        List<Order> orders = new ArrayList<>();
        for (LineFill line : outcome.lines()) {
            if (line.delivered() > 0) {
                List<Build> machines = new ArrayList<>();
                List<Pick> picks = new ArrayList<>();
                for (Fill fill : line.fills()) {
                    fill.picks().forEach(some -> {
                        machines.add(fill.build());
                        picks.addAll(some);
                    });
                }
                orders.add(Order.of(machines, picks,
                        line.line().request().withMachines(line.delivered()).withOnHand(outcome.order().onHand()), catalog));
            }
        }
        broken.addAll(judge.judgeTogether(orders));
        Map<Build, Set<Request>> askedFor = outcome.enclosures().isEmpty() ? Map.of() : askedFor(outcome);
        for (FilledEnclosure filled : outcome.enclosures()) {
            broken.addAll(filled.sleds().stream().distinct().flatMap(sled -> askedFor.get(sled).stream()).distinct()
                    .map(request -> Rulebook.judge(new Housing(filled, request)))
                    .min(Comparator.comparingInt(List::size)).orElse(List.of()));
        }
        return broken;
    }

    /** An enclosure stands at the site of a line whose sleds it houses; lines with equal sleds may stand at different ones. */
    private static Map<Build, Set<Request>> askedFor(OrderOutcome outcome) {
        Map<Build, Set<Request>> askedFor = new HashMap<>();
        outcome.lines().forEach(line -> line.fills().forEach(fill -> askedFor.computeIfAbsent(fill.build(), build -> new LinkedHashSet<>())
                .add(atSite(line.line().request()))));
        return askedFor;
    }

    /** What rules of enclosures ask about. */
    private static Request atSite(Request request) {
        return Request.named("").withLimit(Limits.NONE.withMainsV(request.limit().mainsV())).withForbid(request.forbid());
    }
}
