package sledwright.planner.order.relax;

import sledwright.planner.order.market.Bay;
import sledwright.planner.order.market.Column;

/**
 * What machines of a line may have in common, so that an order can be made to have more or fewer of them; those of a uniform line count as
 * one.
 */
sealed interface Trait {

    int line();

    /** Whether the machines of a column have it. */
    boolean isOf(Column column);

    /** Whether what has this has the other, too. */
    default boolean implies(Trait other) {
        return equals(other);
    }

    /** At least a given number of units of a part. */
    record Takes(int line, int part, int least) implements Trait {

        @Override
        public boolean isOf(Column column) {
            return column.line() == line && column.unitsOf(part) >= least;
        }

        @Override
        public boolean implies(Trait other) {
            return other instanceof Takes fewer && fewer.line == line && fewer.part == part && fewer.least <= least;
        }
    }

    /** A place in a kind of enclosure. */
    record Stands(int line, Bay bay) implements Trait {

        @Override
        public boolean isOf(Column column) {
            return column.line() == line && bay.equals(column.bay());
        }
    }
}
