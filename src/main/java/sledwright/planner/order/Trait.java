package sledwright.planner.order;

/** What machines of a line may have in common, so that an order can be told to have more or fewer of them; those of a uniform line count as one. */
sealed interface Trait {

    int line();

    /** Whether the machines of a column have it. */
    boolean isOf(Column column);

    /** At least so many units of a part. */
    record Takes(int line, int part, int least) implements Trait {

        @Override
        public boolean isOf(Column column) {
            return column.line() == line && column.unitsOf(part) >= least;
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
