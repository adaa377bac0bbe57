package sledwright.generator.keep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class KeptTest {

    /** A text of which each letter takes a thousand bytes; one in capitals is dear. */
    private record Word(String word) implements Kept.Key<String> {
        @Override
        public long bytes(String value) {
            return 1000L * value.length();
        }

        @Override
        public boolean isDear() {
            return word.chars().allMatch(Character::isUpperCase);
        }
    }

    private final Kept kept = new Kept(10_000);
    private final AtomicInteger worked = new AtomicInteger();

    private String ask(String word) {
        return kept.get(new Word(word), () -> {
            worked.incrementAndGet();
            return word.toUpperCase();
        });
    }

    @Test
    void whatIsKnownIsNotWorkedOutAgain() {
        assertThat(ask("ab")).isEqualTo("AB").isSameAs(ask("ab"));
        assertThat(worked).hasValue(1);
        assertThat(kept.bytes()).isEqualTo(2200);
    }

    @Test
    void whatWasAskedForLongestAgoGoes() {
        for (String word : List.of("aa", "bb", "cc", "dd")) {
            ask(word);
        }
        ask("aa");
        assertThat(worked).hasValue(4);
        // The fifth is too much: the two that were asked for longest ago go, so that three quarters are left.
        ask("ee");
        assertThat(worked).hasValue(5);
        assertThat(kept.bytes()).isEqualTo(3 * 2200);
        ask("aa");
        ask("dd");
        ask("ee");
        assertThat(worked).hasValue(5);
        ask("bb");
        assertThat(worked).hasValue(6);
    }

    /** What is dear goes last, however long ago it was asked for. */
    @Test
    void whatIsDearStaysWhileAnythingElseIsLeft() {
        ask("DE");
        for (String word : List.of("bb", "cc", "dd", "ee")) {
            ask(word);
        }
        assertThat(worked).hasValue(5);
        ask("DE");
        assertThat(worked).hasValue(5);
        ask("bb");
        assertThat(worked).hasValue(6);
    }

    @Test
    void whatIsMoreThanAllIsNotKept() {
        ask("a");
        ask("abcdefghijklm");
        ask("abcdefghijklm");
        assertThat(worked).hasValue(3);
        assertThat(kept.bytes()).isEqualTo(1200);
    }

    @Test
    void whatFailsIsNotKept() {
        assertThatThrownBy(() -> kept.get(new Word("a"), () -> {
            throw new IllegalStateException("late");
        })).hasMessage("late");
        assertThat(kept.bytes()).isZero();
        assertThat(ask("a")).isEqualTo("A");
    }

    /** Four threads ask for more than there is room for; each has the right answer, and the count of bytes stays right and within bounds. */
    @Test
    void threadsMayShareIt() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(4);
        try {
            List<Future<?>> all = new ArrayList<>();
            for (int thread = 0; thread < 4; thread++) {
                SplittableRandom random = new SplittableRandom(thread);
                all.add(threads.submit(() -> IntStream.range(0, 20_000).forEach(i -> {
                    String word = "x".repeat(random.nextInt(1, 5)) + random.nextInt(5);
                    assertThat(ask(word)).isEqualTo(word.toUpperCase());
                })));
            }
            for (Future<?> one : all) {
                one.get();
            }
        } finally {
            threads.shutdownNow();
        }
        // One more makes room, should the last of several at once have been refused.
        ask("z");
        assertThat(kept.bytes()).isBetween(1L, 10_000L + 4 * 5200);
        for (int i = 0; i < 100; i++) {
            ask("y" + i);
        }
        assertThat(kept.bytes()).isBetween(1L, 10_000L);
    }

    @Test
    void whatGrowsCounts() {
        Word word = new Word("ab");
        String value = ask("ab");
        ask("cd");
        kept.grew(word, value, 500);
        assertThat(kept.bytes()).isEqualTo(2 * 2200 + 500);
        kept.grew(word, new String(value), 500);
        assertThat(kept.bytes()).as("one that is not kept").isEqualTo(2 * 2200 + 500);
        kept.grew(word, value, 6_000);
        assertThat(kept.bytes()).as("the first is gone, with all it had").isEqualTo(2200);
        kept.grew(word, value, 500);
        assertThat(kept.bytes()).isEqualTo(2200);
        assertThat(worked).hasValue(2);
    }
}
