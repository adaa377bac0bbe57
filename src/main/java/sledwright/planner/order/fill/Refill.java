package sledwright.planner.order.fill;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.fill.Tally.Step;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.Columns;

/** Takes some machines apart and puts others together from what is then on the shelf, and keeps what is cheaper. */
public final class Refill {

    private static final int MOST_TAKEN_APART = 4;

    private final Filler filler;
    private final Columns columns;
    private final Random random;

    public Refill(Filler filler, Columns columns, long seed) {
        this.filler = filler;
        this.columns = columns;
        random = new Random(seed);
    }

    /** One try; the better of the order and what became of it. */
    public Tally step(Tally tally, Deadline deadline) {
        Tally tried = tally.copy(tally.draws());
        List<Column> used = new ArrayList<>(tried.counts().keySet());
        if (used.isEmpty()) {
            return tally;
        }
        List<Integer> lines = new ArrayList<>();
        for (int i = 1 + random.nextInt(MOST_TAKEN_APART); i > 0; i--) {
            Column out = used.get(random.nextInt(used.size()));
            if (tried.count(out) > 0) {
                tried.change(List.of(new Step(out, -1)));
                lines.add(out.line());
            }
        }
        IntStream.range(0, tally.market().lines().size()).filter(line -> tally.missing(line) > 0).forEach(lines::add);
        Collections.shuffle(lines, random);
        filler.fill(tried, lines.stream().distinct().toList(), deadline);
        Exchange.improve(tried, columns.all(), deadline);
        return tried.cost() < tally.cost() ? tried : tally;
    }
}
