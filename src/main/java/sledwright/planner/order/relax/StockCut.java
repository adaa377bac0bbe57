package sledwright.planner.order.relax;

import java.util.List;
import java.util.Set;
import sledwright.planner.order.market.OfferedLot;

/**
 * A rounding cut on a part's stock: of 20 units at most two machines take 8 each, where a linear program has two and a half. Any units
 * from further lots make room again. By mixed-integer rounding: with {@code stock = times * block + rest} and whole columns
 * {@code sum of(units) <= times * (block - rest) + units from further lots}.
 *
 * <p>No two are equal: what an answer of the search depends on is compared by which they are.
 */
final class StockCut {

    private final int part;
    private final Set<Integer> lines;
    private final List<OfferedLot> beyond;
    private final int block;
    private final int rest;
    private final long most;

    /**
     * @param lines  whose columns are counted
     * @param stock  units of the lots that these may draw on, but for some
     * @param beyond those lots
     * @param block  at least 1
     */
    StockCut(int part, Set<Integer> lines, int stock, List<OfferedLot> beyond, int block) {
        this.part = part;
        this.lines = lines;
        this.beyond = beyond;
        this.block = block;
        rest = stock % block;
        most = stock / block * (long) (block - rest);
    }

    int part() {
        return part;
    }

    /** Whether it counts what machines of a line take of a part. */
    boolean counts(int line, int of) {
        return part == of && lines.contains(line);
    }

    /** The lots whose units make room. */
    List<OfferedLot> beyond() {
        return beyond;
    }

    /** What units in one column count; together never less than by themselves. */
    long of(int units) {
        return units / block * (long) (block - rest) + Math.max(0, units % block - rest);
    }

    /** The number of units from which on they count. */
    int first() {
        return rest + 1;
    }

    /** What all columns may count where no further lots are drawn on. */
    long most() {
        return most;
    }

    /** A violation of so much, in blocks. */
    double blocks(double violation) {
        return violation / (block - rest);
    }
}
