package sledwright.web.queue;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Works on as many questions at once as the machine has cores; others wait their turn, each kind in its own line. Of those that take long,
 * and of customers', one core is kept free, so that nobody on the telephone waits behind a stock plan or a crowd.
 */
public final class SearchQueue implements AutoCloseable {

    private static final long ENDS_WITHIN_S = 5;

    /** Questions of a kind: those that wait, and how many are worked on. */
    private static final class Line {
        private final Deque<Runnable> waiting = new ArrayDeque<>();
        private int running;
    }

    private final int atOnce;
    private final int mostWaiting;
    private final Map<Turn, Line> lines = new EnumMap<>(Turn.class);
    private final ExecutorService threads;
    private int running;

    public SearchQueue(int atOnce, int mostWaiting) {
        this.atOnce = atOnce;
        this.mostWaiting = mostWaiting;
        for (Turn turn : Turn.values()) {
            lines.put(turn, new Line());
        }
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
    public synchronized void submit(Turn turn, Runnable work) {
        Line line = lines.get(turn);
        if (line.waiting.size() >= mostWaiting) {
            throw new BusyException();
        }
        line.waiting.add(work);
        next();
    }

    private void next() {
        for (Optional<Line> next = nextLine(); next.isPresent(); next = nextLine()) {
            Line line = next.get();
            Runnable work = line.waiting.remove();
            running++;
            line.running++;
            threads.execute(() -> run(work, line));
        }
    }

    private Optional<Line> nextLine() {
        return running >= atOnce ? Optional.empty() : lines.entrySet().stream().filter(line -> !line.getValue().waiting.isEmpty()
                && line.getValue().running < line.getKey().most(atOnce)).map(Map.Entry::getValue).findFirst();
    }

    private void run(Runnable work, Line line) {
        try {
            work.run();
        } finally {
            synchronized (this) {
                running--;
                line.running--;
                next();
            }
        }
    }

    @Override
    public void close() {
        synchronized (this) {
            lines.values().forEach(line -> line.waiting.clear());
        }
        threads.shutdown();
        try {
            threads.awaitTermination(ENDS_WITHIN_S, TimeUnit.SECONDS);
        } catch (InterruptedException hurried) {
            Thread.currentThread().interrupt();
        }
    }
}
