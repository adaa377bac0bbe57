package sledwright.desk;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sledwright.desk.view.OtherLimits;
import sledwright.desk.view.OtherLimits.Wait;
import sledwright.desk.view.OtherLimits.Wider;
import sledwright.desk.view.QuoteAnswer;
import sledwright.domain.Condition;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.Objective;
import sledwright.domain.Request;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.planner.Outcome;
import sledwright.request.Job;
import sledwright.rules.Order;

/** Other times to wait and further conditions, each searched again: every figure is of a proved build. */
final class Limiting {

    /** Times to wait that are named to each side. */
    private static final int NAMED = 2;
    /** Longer times that are tried: what comes later seldom costs less. */
    private static final int TRIED = 8;

    private final Job.Quote job;
    private final Search search;
    private final Deadline deadline;

    private Limiting(Job.Quote job, Search search, Terms terms) {
        this.job = job;
        this.search = search;
        deadline = terms.deadline();
    }

    /** @param answer to the request as it is; nothing is said beside one that is not proved */
    static OtherLimits of(QuoteAnswer answer, Search search, Terms terms) {
        Job.Quote job = answer.job();
        Outcome outcome = answer.outcome();
        return job.request().objective() == Objective.CHEAPEST && outcome.status() == Status.PROVED
                ? new Limiting(job, search, terms).limits(outcome.ranked().get(0).order()) : OtherLimits.NONE;
    }

    private OtherLimits limits(Order best) {
        Limits limit = job.request().limit();
        return new OtherLimits(limit.by().isPresent() ? "limit.by" : limit.leadDays().isPresent() ? "limit.lead_days" : "",
                limit.mostDays().isPresent() ? waits(limit, best) : List.of(), wider(limit, best));
    }

    /** The cheapest build under other limits, if it is proved. */
    private Optional<Order> cheapest(Limits limits) {
        Request asked = job.request().withLimit(limits).withAlternatives(1, job.request().list().step());
        Findings findings = search.run(asked, deadline);
        return findings.status() == Status.PROVED ? findings.ranked().stream().findFirst() : Optional.empty();
    }

    private Optional<Order> within(Limits limits, int days) {
        return cheapest(limits.waiting().withLeadDays(OptionalInt.of(days)));
    }

    private static int days(Order order) {
        return order.picks().stream().mapToInt(pick -> pick.lot().leadDays()).max().orElse(0);
    }

    private Wait wait(Order order, Order best) {
        return new Wait(days(order), job.catalog().today().plusDays(days(order)), change(order, best));
    }

    /** The objective is the price, whatever electricity the request counts beside it. */
    private static long price(Order order) {
        return order.price().total();
    }

    private BigDecimal change(Order order, Order best) {
        return job.catalog().amount(price(order) - price(best));
    }

    private List<Wait> waits(Limits limit, Order best) {
        List<Wait> waits = new ArrayList<>();
        Order sooner = best;
        for (int i = 0; i < NAMED && days(sooner) > 0; i++) {
            Optional<Order> found = within(limit, days(sooner) - 1);
            if (found.isEmpty()) {
                break;
            }
            sooner = found.get();
            waits.add(0, wait(sooner, best));
        }
        Order later = best;
        int named = 0;
        for (int days : later(limit.mostDays().orElseThrow())) {
            Optional<Order> found = named < NAMED ? within(limit, days) : Optional.empty();
            if (found.isPresent() && price(found.get()) < price(later)) {
                later = found.get();
                waits.add(wait(later, best));
                named++;
            }
        }
        return waits;
    }

    /** The next times after which something more arrives. */
    private List<Integer> later(int days) {
        return job.catalog().lots().values().stream().flatMap(Collection::stream).map(Lot::leadDays).filter(lead -> lead > days)
                .collect(Collectors.toCollection(TreeSet::new)).stream().limit(TRIED).toList();
    }

    private List<Wider> wider(Limits limit, Order best) {
        List<Wider> wider = new ArrayList<>();
        if (limit.conditions().isEmpty()) {
            return wider;
        }
        for (Condition more : EnumSet.complementOf(EnumSet.copyOf(limit.conditions()))) {
            Set<Condition> accepted = EnumSet.copyOf(limit.conditions());
            accepted.add(more);
            cheapest(limit.withConditions(accepted)).filter(order -> price(order) < price(best)).ifPresent(order -> wider.add(
                    new Wider(more.label(), accepted.stream().map(Condition::label).toList(), change(order, best))));
        }
        return wider;
    }
}
