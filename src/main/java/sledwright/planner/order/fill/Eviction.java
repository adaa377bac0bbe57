package sledwright.planner.order.fill;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.fill.Tally.Step;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.Draws;
import sledwright.planner.order.market.Market;

/** Fills machines whose parts others hold: takes a few of these apart and has them take something else. */
record Eviction(Filler filler, Tally tally) {

    /** A machine for which more lines would have to change stays missing. */
    private static final int MOST_LINES = 12;

    /** One try for each machine that a line lacks, for as long as that helps. */
    void run(int line, Deadline deadline) {
        boolean helped = true;
        while (helped && tally.missing(line) > 0 && !deadline.isOver()) {
            // What the line would take if it were alone.
            Tally alone = tally.empty();
            filler.fill(alone, line, deadline);
            helped = alone.columnsOf(line).stream().anyMatch(column -> place(column, deadline));
        }
    }

    private boolean place(Column column, Deadline deadline) {
        Step step = new Step(column, 1);
        if (column.machines() > tally.missing(column.line())) {
            return false;
        }
        if (tally.difference(List.of(step)) < Draws.IMPOSSIBLE) {
            return tally.change(List.of(step));
        }
        List<Integer> holders = holders(column);
        int before = tally.missing();
        tally.renew(holders, () -> {
            if (tally.change(List.of(step))) {
                holders.forEach(other -> filler.fill(tally, other, deadline));
            }
        });
        return tally.missing() < before;
    }

    /** Lines of no more weight that hold what a column lacks: those that hold most of it, as few as suffice. */
    private List<Integer> holders(Column column) {
        Market market = tally.market();
        List<Integer> holders = new ArrayList<>();
        for (int part : column.parts()) {
            int lacking = column.unitsOf(part) - market.available(part, market.poolOf(column.line()));
            for (int[] pool : tally.need()) {
                lacking += pool[part];
            }
            for (int line : holders) {
                lacking -= held(line, part);
            }
            List<Integer> others = IntStream.range(0, market.lines().size()).filter(line -> line != column.line() && !holders.contains(line)
                    && market.line(line).priority() <= market.line(column.line()).priority() && held(line, part) > 0).boxed()
                    .sorted(Comparator.comparing((Integer line) -> market.line(line).priority()).thenComparing(line -> -held(line, part)))
                    .toList();
            for (int i = 0; i < others.size() && lacking > 0 && holders.size() < MOST_LINES; i++) {
                holders.add(others.get(i));
                lacking -= held(others.get(i), part);
            }
        }
        return holders;
    }

    private int held(int line, int part) {
        return tally.columnsOf(line).stream().mapToInt(column -> column.unitsOf(part) * tally.count(column)).sum();
    }
}
