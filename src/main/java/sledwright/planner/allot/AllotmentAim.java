package sledwright.planner.allot;

/**
 * What is made as little as can be, while what comes before it is kept.
 *
 * @param figure      what is counted
 * @param mostBroken  machines that may stay undelivered; {@link Integer#MAX_VALUE}: any number
 * @param mostChanged machines that may be changed; {@link Integer#MAX_VALUE}: any number
 */
record AllotmentAim(Figure figure, int mostBroken, int mostChanged) {

    /** What is counted. */
    enum Figure {
        BROKEN, CHANGED, COST
    }

    static AllotmentAim leastBroken() {
        return new AllotmentAim(Figure.BROKEN, Integer.MAX_VALUE, Integer.MAX_VALUE);
    }

    static AllotmentAim leastChanged(int mostBroken) {
        return new AllotmentAim(Figure.CHANGED, mostBroken, Integer.MAX_VALUE);
    }

    static AllotmentAim leastCost(int mostBroken, int mostChanged) {
        return new AllotmentAim(Figure.COST, mostBroken, mostChanged);
    }

    /** Of machines the count in millionths, so that what a unit is worth in them can be a whole number; of the cost minor units. */
    long scale() {
        return figure == Figure.COST ? 1 : 1_000_000;
    }

    boolean isFree() {
        return figure != Figure.COST;
    }

    /** What a way to keep a promise counts, not yet scaled. */
    long counts(Promise promise, Filling way) {
        return switch (figure) {
            case BROKEN -> way.order().isEmpty() ? promise.machines() : 0;
            case CHANGED -> way.changes(promise) ? promise.machines() : 0;
            case COST -> way.cost();
        };
    }

    /** What a promise that is not kept counts. */
    long ofBroken(Promise promise) {
        return figure == Figure.BROKEN ? promise.machines() : 0;
    }

    /** What machines that are changed count beside what their parts do. */
    long ofChanged(Promise promise) {
        return figure == Figure.CHANGED ? promise.machines() : 0;
    }
}
