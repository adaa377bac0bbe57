package sledwright.generator.time;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import sledwright.generator.Recent;

class DeadlineTest {

    private static final Deadline OVER = Deadline.in(Duration.ZERO);

    @Test
    void neverAndAtOnceAndLater() {
        assertThat(Deadline.never().isOver()).isFalse();
        assertThat(OVER.isOver()).isTrue();
        assertThat(Deadline.in(Duration.ofHours(1)).isOver()).isFalse();
    }

    @Test
    void aShareOfNeverIsNeverAndOfNothingNothing() {
        Deadline never = Deadline.never();
        assertThat(never.share(3)).isSameAs(never);
        assertThat(OVER.share(3).isOver()).isTrue();
        assertThat(Deadline.in(Duration.ofHours(1)).share(3).isOver()).isFalse();
        assertThat(Deadline.in(Duration.ofHours(1)).share(Integer.MAX_VALUE).share(Integer.MAX_VALUE).isOver()).isTrue();
    }

    /** A processor's clock stands still while others have it. */
    @Test
    void anotherClockCountsForAllThatFollowsFromIt() {
        AtomicLong clock = new AtomicLong(5);
        Deadline deadline = Deadline.in(Duration.ofMillis(8), clock::get);
        Deadline half = deadline.share(2).or(() -> false);
        Deadline earlier = deadline.before(Duration.ofMillis(2));
        clock.addAndGet(3_999_999);
        assertThat(half.isOver()).isFalse();
        clock.incrementAndGet();
        assertThat(half.isOver()).isTrue();
        clock.addAndGet(2_000_000);
        assertThat(earlier.isOver()).isTrue();
        assertThat(deadline.isOver()).isFalse();
        assertThat(deadline.leftMillis()).isEqualTo(2);
    }

    @Test
    void whoeverAsksEndsIt() {
        AtomicBoolean asked = new AtomicBoolean();
        Deadline either = Deadline.never().or(asked::get);
        assertThat(either.isOver()).isFalse();
        asked.set(true);
        assertThat(either.isOver()).isTrue();
        assertThat(OVER.or(() -> false).isOver()).isTrue();
    }

    @Test
    void theLastAskedForAreKept() {
        Recent<String, Integer> recent = new Recent<>(2);
        recent.put("a", 1);
        recent.put("b", 2);
        assertThat(recent.get("a")).isEqualTo(1);
        recent.put("c", 3);
        assertThat(recent).containsOnlyKeys("a", "c");
    }
}
