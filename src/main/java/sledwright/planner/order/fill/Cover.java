package sledwright.planner.order.fill;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToLongFunction;
import java.util.stream.Collectors;
import sledwright.domain.Lot;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.fill.Tally.Step;
import sledwright.planner.order.market.Bay;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.Columns;
import sledwright.planner.order.market.LineGroup;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.relax.Pricer;

/**
 * Orders of very many lines, for which a search for each line takes too long: one machine that does what any line of a group asks for is
 * searched for and given to all of them.
 */
record Cover(Market market, Pricer pricer, Columns columns, KnownMachines known) {

    /** Groups of a first order, as far as lines differ in figures alone. */
    private static final int GROUPS = 12;

    /** A part of which there is less than for one in so many machines of a group is not looked at first. */
    private static final int BITES = 3;

    /** Fills lines, of which some lack machines, as far as the stock and the time go. */
    void fill(Tally tally, Collection<Integer> lines, Deadline deadline) {
        LineGroup.of(market, lines.stream().filter(line -> tally.missing(line) > 0).toList(), GROUPS, false)
                .forEach(group -> fill(tally, group, deadline));
    }

    private void fill(Tally tally, LineGroup group, Deadline deadline) {
        List<Integer> open = group.lines();
        LineGroup rest = group;
        while (!open.isEmpty() && !deadline.isOver()) {
            rest = open.size() == rest.lines().size() ? rest : rest.only(open);
            if (!fillSome(tally, rest, deadline)) {
                if (rest.isSplittable()) {
                    rest.split().forEach(half -> fill(tally, half, deadline));
                }
                return;
            }
            open = open.stream().filter(line -> tally.missing(line) > 0).toList();
        }
    }

    /** Gives a machine that suits all lines of a group to as many of them as there is stock for; whether to any. */
    private boolean fillSome(Tally tally, LineGroup group, Deadline deadline) {
        Column found = find(tally, group, deadline);
        if (found == null) {
            return false;
        }
        List<Step> steps = new ArrayList<>();
        for (int line : group.lines()) {
            Column column = known.columnOf(found, line);
            int times = column == null ? 0 : tally.missing(line) / column.machines();
            if (times > 0) {
                steps.add(new Step(columns.add(column), times));
            }
        }
        return give(tally, steps);
    }

    private Column find(Tally tally, LineGroup group, Deadline deadline) {
        Set<Integer> pools = group.lines().stream().map(market::poolOf).collect(Collectors.toSet());
        Map<Integer, List<Lot>> left = Leftovers.of(tally, pools);
        int missing = group.lines().stream().mapToInt(tally::missing).sum();
        // What there is little of is for few machines, and each search should serve many.
        Map<Integer, List<Lot>> plenty = new HashMap<>(left);
        plenty.values().removeIf(lots -> lots.stream().mapToLong(Lot::available).sum() < missing / BITES);
        Column found = find(tally, group, plenty, missing, deadline);
        return found == null && plenty.size() < left.size() ? find(tally, group, left, missing, deadline) : found;
    }

    private Column find(Tally tally, LineGroup group, Map<Integer, List<Lot>> left, int missing, Deadline deadline) {
        Leftovers leftovers = new Leftovers(tally, left);
        ToLongFunction<Bay> place = leftovers.places(missing);
        return pricer.quick(group.lines().get(0), group.most(), place, leftovers.offers(place), deadline).column();
    }

    /** All steps, or the first of them that the stock allows; whether there are any. */
    private static boolean give(Tally tally, List<Step> steps) {
        if (steps.isEmpty()) {
            return false;
        }
        if (tally.change(steps)) {
            return true;
        }
        if (steps.size() > 1) {
            int half = steps.size() / 2;
            boolean some = give(tally, steps.subList(0, half));
            if (some && all(tally, steps.subList(0, half))) {
                give(tally, steps.subList(half, steps.size()));
            }
            return some;
        }
        Step only = steps.get(0);
        for (int times = only.times() - 1; times > 0; times--) {
            if (tally.change(List.of(new Step(only.column(), times)))) {
                return true;
            }
        }
        return false;
    }

    private static boolean all(Tally tally, List<Step> steps) {
        return steps.stream().allMatch(step -> tally.count(step.column()) >= step.times());
    }
}
