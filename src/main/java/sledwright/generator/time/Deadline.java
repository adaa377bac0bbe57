package sledwright.generator.time;

import java.time.Duration;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;

/** The moment at which a search gives what it has. */
public final class Deadline {

    private static final long FOREVER = Long.MAX_VALUE;
    private static final int LOOK_EVERY = 1_000;

    private final LongSupplier leftNanos;
    private final LongSupplier clock;

    private Deadline(LongSupplier leftNanos, LongSupplier clock) {
        this.leftNanos = leftNanos;
        this.clock = clock;
    }

    /** No end. */
    public static Deadline never() {
        return new Deadline(() -> FOREVER, System::nanoTime);
    }

    /** So long from now. */
    public static Deadline in(Duration time) {
        return in(time, System::nanoTime);
    }

    /** So long from now by another clock, which gives nanoseconds: that of a processor counts no time in which others have it. */
    public static Deadline in(Duration time, LongSupplier clock) {
        long endNanos = clock.getAsLong() + time.toNanos();
        return new Deadline(() -> endNanos - clock.getAsLong(), clock);
    }

    /** The moment at which one of a number of equal parts of the time that is left is over. */
    public Deadline share(int parts) {
        long left = leftNanos.getAsLong();
        return left == FOREVER ? this : in(Duration.ofNanos(Math.max(0, left) / parts), clock).or(this::isOver);
    }

    /** So much earlier, but at least half of the time that is left stays. */
    public Deadline before(Duration time) {
        long left = leftNanos.getAsLong();
        return left == FOREVER ? this : in(Duration.ofNanos(Math.max(left / 2, left - time.toNanos())), clock).or(this::isOver);
    }

    /** The same moment, or an earlier one at which somebody asks for what there is; once asked, always asked. */
    public Deadline or(BooleanSupplier asked) {
        return new Deadline(() -> asked.getAsBoolean() ? 0 : leftNanos.getAsLong(), clock);
    }

    /** Milliseconds until then; 0 where it is over. */
    public long leftMillis() {
        return Math.max(0, leftNanos.getAsLong()) / 1_000_000;
    }

    public boolean isOver() {
        return leftNanos.getAsLong() <= 0;
    }

    /** @throws OutOfTimeException when it is over */
    public void check() {
        if (isOver()) {
            throw new OutOfTimeException();
        }
    }

    /**
     * The same at every thousandth of many steps, each of which takes less time than a look at the clock.
     *
     * @throws OutOfTimeException when it is over
     */
    public void check(int step) {
        if (step % LOOK_EVERY == 0) {
            check();
        }
    }
}
