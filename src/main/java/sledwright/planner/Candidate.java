package sledwright.planner;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import sledwright.domain.Build;
import sledwright.domain.Pick;
import sledwright.metrics.Figures;
import sledwright.metrics.PowerDraw;
import sledwright.rules.Housing;
import sledwright.rules.Machine;
import sledwright.rules.Order;
import sledwright.rules.Rule;
import sledwright.rules.Violation;

/**
 * What a line may be filled with: all its machines with their picks. The search asks after the same candidates again and
 * again, so each rule judges a candidate once.
 */
final class Candidate {

    private final Order order;
    private final List<Machine> machines;
    private final List<Housing> housings;
    private final Machine heaviest;
    private final Figures figures;
    private final Map<Rule<?>, List<Violation>> broken = new HashMap<>();

    Candidate(Order order) {
        this.order = order;
        machines = order.kinds().stream().map(this::machine).toList();
        housings = order.housings();
        heaviest = machine(PowerDraw.heaviest(machines.stream().map(Machine::build).toList()));
        figures = Figures.ofEach(machines.stream().map(Machine::figures).toList());
    }

    Order order() {
        return order;
    }

    /** The machine of the greatest load. */
    Machine heaviest() {
        return heaviest;
    }

    /** What each machine reaches. */
    Figures figures() {
        return figures;
    }

    /** Every breach of a machine's rule, also by what is around it; machines alike in every part are judged once. */
    List<Violation> brokenByMachines(Rule<Machine> rule) {
        return broken.computeIfAbsent(rule, key -> Stream.concat(machines.stream().flatMap(machine -> rule.judge(machine).stream()),
                housings.stream().flatMap(housing -> rule.judgeAround(housing).stream())).distinct().toList());
    }

    /** Every breach of a rule of the enclosures that the machines stand in. */
    List<Violation> brokenByEnclosures(Rule<Housing> rule) {
        return broken.computeIfAbsent(rule,
                key -> housings.stream().flatMap(housing -> rule.judge(housing).stream()).distinct().toList());
    }

    /** Every breach of an order's rule. */
    List<Violation> brokenByOrder(Rule<Order> rule) {
        return broken.computeIfAbsent(rule, key -> rule.judge(order));
    }

    /** Every breach of an order's rule by several candidates over one stock. */
    static List<Violation> brokenTogether(List<Candidate> candidates, Rule<Order> rule) {
        Candidate first = candidates.get(0);
        if (candidates.size() == 1) {
            return first.brokenByOrder(rule);
        }
        List<Build> machines = candidates.stream().flatMap(candidate -> candidate.order.machines().stream()).toList();
        List<Pick> picks = candidates.stream().flatMap(candidate -> candidate.order.picks().stream()).toList();
        return rule.judge(Order.of(machines, picks, first.order.request(), first.order.catalog()));
    }

    private Machine machine(Build build) {
        return Machine.of(build, order.request(), order.catalog().throughputFactors());
    }
}
