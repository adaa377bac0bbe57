package sledwright.web.queue;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Works on as many questions at once as the machine has cores; others wait their turn, and of those that take long one core is kept
 * free, so that nobody on the telephone waits behind a stock plan.
 */
public final class SearchQueue implements AutoCloseable {

    private static final long ENDS_WITHIN_S = 5;

    private final int atOnce;
    private final int longAtOnce;
    private final int mostWaiting;
    private final Deque<Runnable> shortOnes = new ArrayDeque<>();
    private final Deque<Runnable> longOnes = new ArrayDeque<>();
    private final ExecutorService threads;
    private int running;
    private int runningLong;

    public SearchQueue(int atOnce, int mostWaiting) {
        this.atOnce = atOnce;
        this.longAtOnce = Math.max(1, atOnce - 1);
        this.mostWaiting = mostWaiting;
        AtomicInteger number = new AtomicInteger();
        threads = Executors.newFixedThreadPool(atOnce, work -> {
            Thread thread = new Thread(work, "search-" + number.incrementAndGet());
            thread.setDaemon(true);
            return thread;
        });
    }

    /**
     * Has a question worked on as soon as it is its turn.
     *
     * @throws BusyException when too many wait
     */
    public synchronized void submit(boolean takesLong, Runnable work) {
        Deque<Runnable> line = takesLong ? longOnes : shortOnes;
        if (line.size() >= mostWaiting) {
            throw new BusyException();
        }
        line.add(work);
        next();
    }

    private void next() {
        while (running < atOnce) {
            boolean takesLong = shortOnes.isEmpty();
            if (takesLong && (longOnes.isEmpty() || runningLong >= longAtOnce)) {
                return;
            }
            Runnable work = takesLong ? longOnes.remove() : shortOnes.remove();
            running++;
            runningLong += takesLong ? 1 : 0;
            threads.execute(() -> run(work, takesLong));
        }
    }

    private void run(Runnable work, boolean takesLong) {
        try {
            work.run();
        } finally {
            synchronized (this) {
                running--;
                runningLong -= takesLong ? 1 : 0;
                next();
            }
        }
    }

    @Override
    public void close() {
        synchronized (this) {
            shortOnes.clear();
            longOnes.clear();
        }
        threads.shutdown();
        try {
            threads.awaitTermination(ENDS_WITHIN_S, TimeUnit.SECONDS);
        } catch (InterruptedException hurried) {
            Thread.currentThread().interrupt();
        }
    }
}
