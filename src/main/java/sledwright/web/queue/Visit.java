package sledwright.web.queue;

import java.util.concurrent.atomic.AtomicBoolean;

/** One question of somebody who waits for the answer; it is answered once, whoever is first. */
public final class Visit {

    private final AtomicBoolean answered = new AtomicBoolean();
    private volatile boolean over;

    /** Whether nobody waits any more. */
    public boolean isOver() {
        return over;
    }

    /** Nobody waits any more: the connection is gone, or something newer is asked in its place. */
    public void end() {
        over = true;
    }

    /** Answers, unless that has been done. */
    public void finish(Runnable answer) {
        if (answered.compareAndSet(false, true)) {
            answer.run();
        }
    }
}
