package sledwright.planner.order.fill;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import sledwright.domain.Build;
import sledwright.domain.Request;
import sledwright.metrics.Figures;
import sledwright.planner.order.fill.Tally.Step;
import sledwright.planner.order.market.Bay;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.Draws;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.relax.Pricer;
import sledwright.rules.Machine;
import sledwright.rules.Rulebook;
import sledwright.rules.target.Target;

/** Machines that were found for some line and may suit others, so that an order of very many lines needs no search for each of them. */
final class KnownMachines {

    private final Market market;
    private final Pricer pricer;
    private final Set<Known> known = new LinkedHashSet<>();

    /** @param bay where it stands; null: on its own feet */
    private record Known(Build build, Bay bay) {
    }

    /** A machine for a line, and by how much it changes what the order costs. */
    private record Offer(Known machine, Column column, long difference) {
    }

    KnownMachines(Market market, Pricer pricer) {
        this.market = market;
        this.pricer = pricer;
    }

    /** Takes up what a line's machines are. */
    void learn(Tally tally, int line) {
        tally.columnsOf(line).forEach(column -> known.add(new Known(column.builds().get(0), column.bay())));
    }

    /** The cheapest known machine that suits a line and is in stock, or as many as a uniform line has; null: there is none. */
    Column suiting(Tally tally, int line) {
        List<Offer> offers = new ArrayList<>();
        for (Known machine : known) {
            if (mayHold(machine, line)) {
                int together = market.line(line).uniform() ? market.line(line).machines() : 1;
                Column column = pricer.column(line, Collections.nCopies(together, machine.build), machine.bay);
                long difference = tally.difference(List.of(new Step(column, 1)));
                if (difference < Draws.IMPOSSIBLE) {
                    offers.add(new Offer(machine, column, difference));
                }
            }
        }
        offers.sort(Comparator.comparingLong(Offer::difference));
        return offers.stream().filter(offer -> isValid(offer.machine.build, line)).map(Offer::column).findFirst().orElse(null);
    }

    /** Quick to check. */
    private boolean mayHold(Known machine, int line) {
        Request request = market.line(line).request();
        return Target.CORES.allows(request.require(), machine.build.cores())
                && (request.platforms().isEmpty() || request.platforms().contains(machine.build.platform().sku()))
                && (machine.bay == null ? market.standsAlone(line, machine.build.platform().sku()) : market.suits(machine.bay, line));
    }

    private boolean isValid(Build build, int line) {
        Request request = market.line(line).request();
        Figures figures = Figures.of(build, request, market.catalog().throughputFactors());
        Machine machine = new Machine(build, request, figures);
        return Target.ALL.stream().allMatch(target -> target.allows(request.require(), target.figure(figures)))
                && Rulebook.ofMachine().stream().allMatch(rule -> rule.judge(machine).isEmpty());
    }
}
