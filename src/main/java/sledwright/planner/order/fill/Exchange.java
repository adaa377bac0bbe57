package sledwright.planner.order.fill;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.fill.Tally.Step;
import sledwright.planner.order.market.Column;

/** Betters an order by putting other columns in the place of those it uses: one by one, then two at a time. */
public final class Exchange {

    /** How many exchanges, those that lose least by themselves, are tried in pairs. */
    private static final int PAIRED = 20;

    private Exchange() {
    }

    /** Until no exchange gains, or the time is over. */
    public static void improve(Tally tally, List<Column> columns, Deadline deadline) {
        boolean gained = true;
        while (gained && !deadline.isOver()) {
            gained = singly(tally, columns, deadline) || pairs(tally, columns, deadline);
        }
    }

    private record Swap(List<Step> steps, long difference) {
    }

    /** Each column once in the place of every other of its line; whether that gains. */
    public static boolean singly(Tally tally, List<Column> columns, Deadline deadline) {
        boolean gained = false;
        for (Column in : columns) {
            if (deadline.isOver()) {
                return gained;
            }
            while (!deadline.isOver() && tally.missing(in.line()) >= in.machines() && tally.difference(List.of(new Step(in, 1))) < 0) {
                gained |= tally.change(List.of(new Step(in, 1)));
            }
            for (Column out : List.copyOf(tally.columnsOf(in.line()))) {
                if (out != in) {
                    gained |= repeat(tally, List.of(new Step(out, -1), new Step(in, 1)), deadline);
                    int all = tally.count(out);
                    // A lot that is sold in numbers may suit all machines and not one of them.
                    gained |= all > 1 && repeat(tally, List.of(new Step(out, -all), new Step(in, all)), deadline);
                }
            }
        }
        return gained;
    }

    private static boolean repeat(Tally tally, List<Step> steps, Deadline deadline) {
        boolean gained = false;
        while (!deadline.isOver() && tally.count(steps.get(0).column()) > 0 && tally.difference(steps) < 0 && tally.change(steps)) {
            gained = true;
        }
        return gained;
    }

    /** An exchange that the stock does not allow by itself may be allowed beside another. */
    private static boolean pairs(Tally tally, List<Column> columns, Deadline deadline) {
        List<Swap> swaps = new ArrayList<>();
        for (Column in : columns) {
            if (deadline.isOver()) {
                return false;
            }
            for (Column out : List.copyOf(tally.columnsOf(in.line()))) {
                if (out != in) {
                    List<Step> steps = List.of(new Step(out, -1), new Step(in, 1));
                    swaps.add(new Swap(steps, tally.difference(steps)));
                }
            }
        }
        swaps.sort(Comparator.comparingLong(Swap::difference));
        List<Swap> first = swaps.subList(0, Math.min(PAIRED, swaps.size()));
        for (Swap one : first) {
            for (Swap other : first) {
                if (deadline.isOver()) {
                    return false;
                }
                if (one != other) {
                    List<Step> both = new ArrayList<>(one.steps());
                    both.addAll(other.steps());
                    if (tally.difference(both) < 0 && tally.change(both)) {
                        return true;
                    }
                }
            }
        }
        return false;
    }
}
