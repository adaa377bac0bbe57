package sledwright.generator;

import java.time.Duration;

/** The moment at which a search gives what it has. */
public final class Deadline {

    private final long endNanos;
    private final boolean never;

    private Deadline(long endNanos, boolean never) {
        this.endNanos = endNanos;
        this.never = never;
    }

    /** No end. */
    public static Deadline never() {
        return new Deadline(0, true);
    }

    /** So long from now. */
    public static Deadline in(Duration time) {
        return new Deadline(System.nanoTime() + time.toNanos(), false);
    }

    /** The moment at which one of so many equal parts of the time that is left is over. */
    public Deadline share(int parts) {
        return never ? this : new Deadline(System.nanoTime() + Math.max(0, endNanos - System.nanoTime()) / parts, false);
    }

    public boolean isOver() {
        return !never && System.nanoTime() - endNanos >= 0;
    }
}
