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
import sledwright.planner.order.market.AsAsked;
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
    record Known(Build build, Bay bay) {
    }

    /** A machine for a line, and by how much it changes what the order costs. */
    private record Offer(Known machine, Column column, long difference) {
    }

    KnownMachines(Market market, Pricer pricer) {
        this.market = market;
        this.pricer = pricer;
    }

    /** Takes up what a line's machines are. */
    Known learn(Column column) {
        Known machine = new Known(column.builds().get(0), column.bay());
        known.add(machine);
        return machine;
    }

    /** A machine that does all that a line asks for, or as many as a uniform one has; null where the line may not stand so. */
    Column columnOf(Column found, int line) {
        Known machine = learn(found);
        return mayHold(machine, line) ? column(machine, line) : null;
    }

    /** A machine that was found, for another line, or as many as a uniform one has; null where it does not suit. */
    Column suiting(Column found, int line) {
        Known machine = new Known(found.builds().get(0), found.bay());
        return mayHold(machine, line) && isValid(machine.build, line) ? column(machine, line) : null;
    }

    /** What a column takes beside worth and at the least price of each part, for a line that it need not be of; scaled. */
    long atLeast(Column column, int line) {
        long sum = column.own();
        for (int i = 0; i < column.parts().length; i++) {
            sum += market.cheapest(column.parts()[i], market.poolOf(line)) * column.units()[i];
        }
        return sum;
    }

    private Column column(Known machine, int line) {
        int together = market.line(line).uniform() ? market.line(line).machines() : 1;
        return pricer.column(line, Collections.nCopies(together, machine.build), machine.bay);
    }

    /** The cheapest known machine that suits a line and is in stock, or as many as a uniform line has; null: there is none. */
    Column suiting(Tally tally, int line) {
        List<Offer> offers = new ArrayList<>();
        for (Known machine : known) {
            if (mayHold(machine, line)) {
                Column column = column(machine, line);
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
        return AsAsked.allows(build, request)
                && Target.ALL.stream().allMatch(target -> target.allows(request.require(), target.figure(figures)))
                && Rulebook.ofMachine().stream().allMatch(rule -> rule.judge(machine).isEmpty());
    }
}
