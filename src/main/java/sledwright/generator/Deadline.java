package sledwright.generator;

import java.time.Duration;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;

/** The moment at which a search gives what it has. */
public final class Deadline {

    private final BooleanSupplier over;

    private Deadline(BooleanSupplier over) {
        this.over = over;
    }

    /** No end. */
    public static Deadline never() {
        return new Deadline(() -> false);
    }

    /** So long from now. */
    public static Deadline in(Duration time) {
        long endNanos = System.nanoTime() + time.toNanos();
        return new Deadline(() -> System.nanoTime() - endNanos >= 0);
    }

    /** Whichever is current when it is asked, for what outlives one search. */
    static Deadline current(Supplier<Deadline> current) {
        return new Deadline(() -> current.get().isOver());
    }

    /** The same moment, or an earlier one at which somebody asks for what there is; once asked, always asked. */
    public Deadline or(BooleanSupplier asked) {
        return new Deadline(() -> asked.getAsBoolean() || over.getAsBoolean());
    }

    public boolean isOver() {
        return over.getAsBoolean();
    }
}
