package sledwright.web.queue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class SearchQueueTest {

    private final List<String> done = new CopyOnWriteArrayList<>();
    private final CountDownLatch end = new CountDownLatch(1);

    private Runnable waiting(String name, CountDownLatch begun) {
        return () -> {
            done.add(name);
            begun.countDown();
            try {
                end.await(10, TimeUnit.SECONDS);
            } catch (InterruptedException hurried) {
                Thread.currentThread().interrupt();
            }
        };
    }

    @Test
    void ofTwoCoresOneIsKeptFreeOfWhatTakesLong() throws Exception {
        CountDownLatch both = new CountDownLatch(2);
        try (SearchQueue queue = new SearchQueue(2, 5)) {
            queue.submit(true, waiting("plan", both));
            queue.submit(true, waiting("another plan", new CountDownLatch(1)));
            queue.submit(false, waiting("quote", both));
            queue.submit(false, waiting("another quote", new CountDownLatch(1)));
            assertThat(both.await(10, TimeUnit.SECONDS)).isTrue();
            assertThat(done).containsExactlyInAnyOrder("plan", "quote");
            end.countDown();
            CountDownLatch last = new CountDownLatch(1);
            queue.submit(true, last::countDown);
            assertThat(last.await(10, TimeUnit.SECONDS)).isTrue();
            assertThat(done).containsExactlyInAnyOrder("plan", "quote", "another plan", "another quote");
        }
    }

    @Test
    void oneMoreThanMayWaitIsNotTaken() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        try (SearchQueue queue = new SearchQueue(1, 1)) {
            queue.submit(false, waiting("first", begun));
            assertThat(begun.await(10, TimeUnit.SECONDS)).isTrue();
            queue.submit(false, () -> done.add("second"));
            assertThatThrownBy(() -> queue.submit(false, () -> done.add("third"))).isInstanceOf(BusyException.class);
            queue.submit(true, () -> done.add("a plan waits in its own line"));
            end.countDown();
        }
    }

    @Test
    void aQuestionThatFailsLeavesItsPlaceToTheNext() throws Exception {
        CountDownLatch next = new CountDownLatch(1);
        try (SearchQueue queue = new SearchQueue(1, 5)) {
            queue.submit(false, () -> {
                Thread.currentThread().setUncaughtExceptionHandler((thread, failed) -> done.add(failed.getMessage()));
                throw new IllegalStateException("broken");
            });
            queue.submit(false, next::countDown);
            assertThat(next.await(10, TimeUnit.SECONDS)).isTrue();
        }
    }
}
