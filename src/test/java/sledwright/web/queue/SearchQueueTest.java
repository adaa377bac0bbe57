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
            queue.submit(Turn.LONG, waiting("plan", both));
            queue.submit(Turn.LONG, waiting("another plan", new CountDownLatch(1)));
            queue.submit(Turn.SOON, waiting("quote", both));
            queue.submit(Turn.SOON, waiting("another quote", new CountDownLatch(1)));
            assertThat(both.await(10, TimeUnit.SECONDS)).isTrue();
            assertThat(done).containsExactlyInAnyOrder("plan", "quote");
            end.countDown();
            CountDownLatch last = new CountDownLatch(1);
            queue.submit(Turn.LONG, last::countDown);
            assertThat(last.await(10, TimeUnit.SECONDS)).isTrue();
            assertThat(done).containsExactlyInAnyOrder("plan", "quote", "another plan", "another quote");
        }
    }

    @Test
    void customersLeaveOneCoreToTheShopAndWhatTakesLongDoesNotHoldThemUp() throws Exception {
        CountDownLatch two = new CountDownLatch(2);
        CountDownLatch three = new CountDownLatch(3);
        try (SearchQueue queue = new SearchQueue(3, 5)) {
            queue.submit(Turn.CUSTOMER, waiting("customer", three));
            queue.submit(Turn.CUSTOMER, waiting("another customer", three));
            queue.submit(Turn.CUSTOMER, waiting("a third customer", new CountDownLatch(1)));
            queue.submit(Turn.SOON, waiting("quote", three));
            assertThat(three.await(10, TimeUnit.SECONDS)).isTrue();
            assertThat(done).containsExactlyInAnyOrder("customer", "another customer", "quote");
            end.countDown();
        }
        try (SearchQueue queue = new SearchQueue(2, 5)) {
            queue.submit(Turn.LONG, waiting("plan", two));
            queue.submit(Turn.CUSTOMER, waiting("customer beside a plan", two));
            assertThat(two.await(10, TimeUnit.SECONDS)).isTrue();
        }
    }

    @Test
    void oneMoreThanMayWaitIsNotTaken() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        try (SearchQueue queue = new SearchQueue(1, 1)) {
            queue.submit(Turn.SOON, waiting("first", begun));
            assertThat(begun.await(10, TimeUnit.SECONDS)).isTrue();
            queue.submit(Turn.SOON, () -> done.add("second"));
            assertThatThrownBy(() -> queue.submit(Turn.SOON, () -> done.add("third"))).isInstanceOf(BusyException.class);
            queue.submit(Turn.LONG, () -> done.add("a plan waits in its own line"));
            end.countDown();
        }
    }

    @Test
    void aQuestionThatFailsLeavesItsPlaceToTheNext() throws Exception {
        CountDownLatch next = new CountDownLatch(1);
        try (SearchQueue queue = new SearchQueue(1, 5)) {
            queue.submit(Turn.SOON, () -> {
                Thread.currentThread().setUncaughtExceptionHandler((thread, failed) -> done.add(failed.getMessage()));
                throw new IllegalStateException("broken");
            });
            queue.submit(Turn.SOON, next::countDown);
            assertThat(next.await(10, TimeUnit.SECONDS)).isTrue();
        }
    }
}
