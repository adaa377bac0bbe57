package sledwright.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import sledwright.domain.Enclosure;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Supply;
import sledwright.oracle.EveryMachine.Machine;
import sledwright.planner.order.OrderOutcome;
import sledwright.planner.order.OrderOutcome.Shortages;
import sledwright.planner.order.OrderOutcome.TooFewSuppliers;
import sledwright.planner.order.OrderOutcome.Unfed;

/** Holds what a short order says is in its way to the outside solver and to the list of every machine. */
final class OrderCauses {

    private static final CpSatOrder.Effort TIME = CpSatOrder.Effort.deterministic(3);

    private final OrderOutcome outcome;
    private final RandomOrder that;
    private final List<List<Machine>> machines;
    private final List<String> wrong = new ArrayList<>();

    private OrderCauses(OrderOutcome outcome, RandomOrder that, List<List<Machine>> machines) {
        this.outcome = outcome;
        this.that = that;
        this.machines = machines;
    }

    /** What is wrong with what is said about an order that cannot be delivered in full; empty for nothing. */
    static String wrong(OrderOutcome outcome, RandomOrder that, List<List<Machine>> machines) {
        OrderCauses causes = new OrderCauses(outcome, that, machines);
        if (outcome.shortages().looked()) {
            causes.suppliers();
            causes.enclosures();
        }
        return String.join("; ", causes.wrong);
    }

    private void suppliers() {
        Shortages shortages = outcome.shortages();
        OrderRequest order = that.order();
        if (shortages.suppliers().isPresent()) {
            TooFewSuppliers few = shortages.suppliers().get();
            if (few.allowed() != order.suppliersMax().orElse(-1) || few.enough() <= few.allowed()) {
                wrong.add("%s where %s are allowed".formatted(few, order.suppliersMax()));
            }
            if (shortages.parts().isEmpty() && !isWhole(OptionalInt.of(few.enough()))) {
                wrong.add("%s suppliers do not do, either".formatted(few.enough()));
            }
        } else if (order.suppliersMax().isPresent() && isWhole(OptionalInt.empty())) {
            wrong.add("nothing is said of suppliers_max %d, without which there are all machines; lacking are %s".formatted(order.suppliersMax().getAsInt(), shortages.parts()));
        }
        if (shortages.parts().isEmpty() && shortages.suppliers().isEmpty() && isWhole(OptionalInt.empty()) && order.suppliersMax().isEmpty()) {
            wrong.add("all machines can be had, and nothing is said to be lacking");
        }
    }

    /** Whether all machines are available from a given number of suppliers. */
    private boolean isWhole(OptionalInt suppliers) {
        RandomOrder other = new RandomOrder(that.seed(), that.catalog(), that.order().withSuppliersMax(suppliers));
        return !OrderAgainstCpSatTest.decided(CpSatOrder.cheapest(other, machines, TIME)).impossible();
    }

    private void enclosures() {
        for (int i = 0; i < machines.size(); i++) {
            OrderLine line = that.order().lines().get(i);
            List<Unfed> unfed = outcome.shortages().enclosures().unfed().stream().filter(one -> one.sled().line().equals(line.name())).toList();
            boolean fed = line.request().equipment().enclosure() == EnclosureFrom.OWN || machines.get(i).stream().anyMatch(machine -> !isSled(machine) || options(line, machine).stream().anyMatch(most -> most >= machine.microwatts()));
            if (!unfed.isEmpty()) {
                if (fed) {
                    wrong.add("%s is said to be unfed".formatted(unfed));
                }
                long sled = Math.round(unfed.get(0).sled().loadW() * 1e6);
                Set<String> taken = that.catalog().enclosure(unfed.get(0).enclosure()).orElseThrow().takes();
                if (machines.get(i).stream().anyMatch(machine -> taken.contains(machine.build().platform().sku()) && machine.microwatts() < sled)) {
                    wrong.add("%s has lighter sleds for it than %s".formatted(line.name(), unfed));
                }
            } else if (!machines.get(i).isEmpty() && !fed && machines.get(i).stream().anyMatch(machine -> !options(line, machine).isEmpty())) {
                wrong.add("nothing is said of enclosures that feed no sled of %s".formatted(line.name()));
            }
            boolean unhoused = outcome.shortages().enclosures().unhoused().stream().anyMatch(one -> one.line().equals(line.name()));
            boolean housed = fed || machines.get(i).stream().anyMatch(machine -> !options(line, machine).isEmpty());
            if (unhoused && housed) {
                wrong.add("no enclosure of %s is said to be on offer".formatted(line.name()));
            } else if (!unhoused && !housed && !machines.get(i).isEmpty()) {
                wrong.add("nothing is said of enclosures that are not on offer for %s".formatted(line.name()));
            }
        }
    }

    private boolean isSled(Machine machine) {
        return that.catalog().enclosures().stream().anyMatch(any -> any.takes().contains(machine.build().platform().sku()));
    }

    private boolean isOffered(String sku) {
        return !that.catalog().lots(sku).isEmpty() || that.order().onHand().getOrDefault(sku, 0) > 0;
    }

    /** What enclosures that suit the line and take the machine feed, microwatts. */
    private List<Long> options(OrderLine line, Machine machine) {
        List<Long> options = new ArrayList<>();
        boolean lowLine = line.request().limit().mainsV().isPresent() && line.request().limit().mainsV().getAsDouble() < 180;
        Set<String> forbid = line.request().forbid();
        for (Enclosure enclosure : that.catalog().enclosures()) {
            for (Supply supply : enclosure.supplies()) {
                if (enclosure.takes().contains(machine.build().platform().sku()) && !forbid.contains(enclosure.sku()) && !forbid.contains(supply.sku())
                        && isOffered(enclosure.sku()) && isOffered(supply.sku())) {
                    options.add(CpSatEnclosures.capacity(enclosure, supply, lowLine));
                }
            }
        }
        return options;
    }
}
