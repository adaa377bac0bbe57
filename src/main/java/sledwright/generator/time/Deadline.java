package sledwright.generator.time;

import java.time.Duration;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;

/** The moment at which a search gives what it has. */
public final class Deadline {

    private static final long FOREVER = Long.MAX_VALUE;

    private final LongSupplier leftNanos;

    private Deadline(LongSupplier leftNanos) {
        this.leftNanos = leftNanos;
    }

    /** No end. */
    public static Deadline never() {
        return new Deadline(() -> FOREVER);
    }

    /** So long from now. */
    public static Deadline in(Duration time) {
        long endNanos = System.nanoTime() + time.toNanos();
        return new Deadline(() -> endNanos - System.nanoTime());
    }

    /** The moment at which one of a number of equal parts of the time that is left is over. */
    public Deadline share(int parts) {
        long left = leftNanos.getAsLong();
        return left == FOREVER ? this : in(Duration.ofNanos(Math.max(0, left) / parts)).or(this::isOver);
    }

    /** So much earlier, but at least half of the time that is left stays. */
    public Deadline before(Duration time) {
        long left = leftNanos.getAsLong();
        return left == FOREVER ? this : in(Duration.ofNanos(Math.max(left / 2, left - time.toNanos()))).or(this::isOver);
    }

    /** The same moment, or an earlier one at which somebody asks for what there is; once asked, always asked. */
    public Deadline or(BooleanSupplier asked) {
        return new Deadline(() -> asked.getAsBoolean() ? 0 : leftNanos.getAsLong());
    }

    /** Milliseconds until then; 0 where it is over. */
    public long leftMillis() {
        return Math.max(0, leftNanos.getAsLong()) / 1_000_000;
    }

    public boolean isOver() {
        return leftNanos.getAsLong() <= 0;
    }
}
