package sledwright.planner.order.market;

/** Whole numbers from one to another. */
public record Range(int least, int most) {

    public static final Range ANY = new Range(0, Integer.MAX_VALUE / 4);

    public Range upTo(int bound) {
        return new Range(least, Math.min(most, bound));
    }

    public Range from(int bound) {
        return new Range(Math.max(least, bound), most);
    }

    public boolean contains(double value) {
        return least <= value && value <= most;
    }

    public boolean isEmpty() {
        return least > most;
    }
}
