package sledwright.planner.order.market;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToLongFunction;

/** The columns known so far; one that takes the same from the stock as another is the same. */
public final class Columns {

    /** Beyond this many, those that promise least are dropped again. */
    private static final int MANY = 500;

    /** Or this many for each line. */
    private static final int MANY_OF_LINE = 4;

    private final int many;
    private final Map<Column.Key, Column> known = new LinkedHashMap<>();

    public Columns(int lines) {
        many = Math.max(MANY, MANY_OF_LINE * lines);
    }

    public boolean isNew(Column column) {
        return !known.containsKey(column.key());
    }

    /** The column that takes the same, this one where there is none yet. */
    public Column add(Column column) {
        return known.computeIfAbsent(column.key(), key -> column);
    }

    public List<Column> all() {
        return List.copyOf(known.values());
    }

    /**
     * Drops what promises least where there are very many.
     *
     * @param reduced what a column takes beyond what its machines are worth
     * @param needed  stay in any case
     */
    public void tidy(ToLongFunction<Column> reduced, Set<Column> needed) {
        if (known.size() > many) {
            long[] sorted = known.values().stream().mapToLong(reduced).sorted().toArray();
            long most = sorted[many / 2];
            known.values().removeIf(column -> reduced.applyAsLong(column) > most && !needed.contains(column));
        }
    }
}
