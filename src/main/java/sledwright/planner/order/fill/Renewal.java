package sledwright.planner.order.fill;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.fill.Tally.Step;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.Columns;

/**
 * Brings down the price of an order of very many lines: machines of the line that seems to have most to gain are searched for again, and
 * what is found is offered to all others.
 *
 * @param known what suits which line
 * @param least what a machine of each line takes at least, as far as is known
 */
record Renewal(Filler filler, Columns columns, KnownMachines known, Tally tally, long[] least) {

    /** Until every line was searched for, or the deadline comes. */
    void run(Deadline deadline) {
        boolean[] searched = new boolean[tally.market().lines().size()];
        for (int line = mostToGain(searched); line >= 0 && !deadline.isOver(); line = mostToGain(searched)) {
            int asked = line;
            searched[line] = true;
            tally.renew(List.of(line), () -> filler.fill(tally, asked, deadline));
            for (Column found : List.copyOf(tally.columnsOf(line))) {
                known.learn(found);
                offer(found, deadline);
            }
        }
    }

    private int mostToGain(boolean[] searched) {
        int most = -1;
        long gain = Long.MIN_VALUE;
        for (int line = 0; line < searched.length; line++) {
            if (!searched[line]) {
                long gains = toGain(line);
                if (gains > gain) {
                    gain = gains;
                    most = line;
                }
            }
        }
        return most;
    }

    private long toGain(int line) {
        long gains = tally.missing(line) > 0 ? Long.MAX_VALUE / 2 : 0;
        for (Column column : tally.columnsOf(line)) {
            gains += (known.atLeast(column, line) - least[line] * column.machines()) * tally.count(column);
        }
        return gains;
    }

    private void offer(Column found, Deadline deadline) {
        for (int line = 0; line < tally.market().lines().size() && !deadline.isOver(); line++) {
            Set<Column> had = tally.columnsOf(line);
            if (line != found.line() && !had.isEmpty()) {
                long dearest = 0;
                for (Column column : had) {
                    dearest = Math.max(dearest, known.atLeast(column, line) / column.machines());
                }
                if (known.atLeast(found, line) / found.machines() < dearest) {
                    exchange(found, line);
                }
            }
        }
    }

    private void exchange(Column found, int line) {
        Column column = known.suiting(found, line);
        if (column == null || tally.count(column) > 0) {
            return;
        }
        List<Step> steps = new ArrayList<>();
        int machines = 0;
        for (Column old : tally.columnsOf(line)) {
            steps.add(new Step(old, -tally.count(old)));
            machines += tally.count(old) * old.machines();
        }
        steps.add(new Step(columns.add(column), machines / column.machines()));
        if (tally.difference(steps) < 0) {
            tally.change(steps);
        }
    }
}
