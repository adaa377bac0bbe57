package sledwright.planner;

import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sledwright.domain.Build;
import sledwright.domain.Pick;
import sledwright.metrics.PowerDraw;
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
    private final Machine heaviest;
    private final Map<Rule<?>, List<Violation>> broken = new HashMap<>();

    Candidate(Order order) {
        this.order = order;
        machines = distinct(order.machines()).stream().map(this::machine).toList();
        heaviest = machine(PowerDraw.heaviest(machines.stream().map(Machine::build).toList()));
    }

    /** The machines of several candidates over one stock; that of one is the candidate itself. */
    static Candidate together(List<Candidate> candidates) {
        if (candidates.size() == 1) {
            return candidates.get(0);
        }
        List<Build> machines = candidates.stream().flatMap(candidate -> candidate.order.machines().stream()).toList();
        List<Pick> picks = candidates.stream().flatMap(candidate -> candidate.order.picks().stream()).toList();
        Order first = candidates.get(0).order;
        return new Candidate(Order.of(machines, picks, first.request(), first.catalog()));
    }

    Order order() {
        return order;
    }

    /** The machine of the greatest load, whose figures stand for all. */
    Machine heaviest() {
        return heaviest;
    }

    /** Every breach of a machine's rule, machines alike in every part judged once. */
    List<Violation> brokenByMachines(Rule<Machine> rule) {
        return broken.computeIfAbsent(rule,
                key -> machines.stream().flatMap(machine -> rule.judge(machine).stream()).distinct().toList());
    }

    /** Every breach of an order's rule. */
    List<Violation> brokenByOrder(Rule<Order> rule) {
        return broken.computeIfAbsent(rule, key -> rule.judge(order));
    }

    private Machine machine(Build build) {
        return Machine.of(build, order.request(), order.catalog().throughputFactors());
    }

    /** One of each kind; the same object often stands for many machines, and comparing all its parts takes longer. */
    private static List<Build> distinct(List<Build> builds) {
        Set<Build> seen = Collections.newSetFromMap(new IdentityHashMap<>());
        return builds.stream().filter(seen::add).distinct().toList();
    }
}
