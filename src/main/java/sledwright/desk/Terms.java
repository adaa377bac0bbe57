package sledwright.desk;

import java.time.Duration;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import sledwright.generator.time.Deadline;

/**
 * On what terms a question is answered.
 *
 * @param time      after which the best found is given, counted from when everything has been read; for an order, from when it came
 * @param seed      where chance decides, it decides as before with the same
 * @param cancelled whether nobody waits for more: the best found is then given at once; asked often, from the thread that answers
 * @param listener  hears how far the answer has come, from the thread that answers
 */
public record Terms(Duration time, long seed, BooleanSupplier cancelled, Consumer<Progress> listener) {

    /** So much time, and nobody who listens or cancels. */
    public static Terms within(Duration time) {
        return new Terms(time, 0, () -> false, progress -> { });
    }

    public Terms withSeed(long other) {
        return new Terms(time, other, cancelled, listener);
    }

    public Terms until(BooleanSupplier asked) {
        return new Terms(time, seed, asked, listener);
    }

    public Terms heardBy(Consumer<Progress> other) {
        return new Terms(time, seed, cancelled, other);
    }

    /** The same for a question that came some time ago, of which at least half of the time is left. */
    Terms after(Duration gone) {
        Duration left = time.minus(gone);
        Duration half = time.dividedBy(2);
        return new Terms(left.compareTo(half) < 0 ? half : left, seed, cancelled, listener);
    }

    /** The moment at which an answer that begins now must be there. */
    Deadline deadline() {
        return Deadline.in(time).or(cancelled);
    }
}
