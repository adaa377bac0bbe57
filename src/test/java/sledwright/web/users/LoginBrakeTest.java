package sledwright.web.users;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class LoginBrakeTest {

    private final AtomicLong now = new AtomicLong(5_000_000);
    private final LoginBrake brake = new LoginBrake(now::get);

    private long wait(String name, String address) {
        return brake.tries(name, address).map(Duration::toMillis).orElse(0L);
    }

    @Test
    void aNameWaitsTwiceAsLongAfterEachFailureButAMinuteAtMost() {
        for (int i = 0; i < 5; i++) {
            assertThat(wait("anna", "a" + i)).as("try " + i).isZero();
        }
        long expected = 1_000;
        for (int i = 0; i < 10; i++) {
            assertThat(wait("anna", "b" + i)).as("failure " + i).isEqualTo(expected);
            now.addAndGet(expected - 1);
            assertThat(wait("anna", "c" + i)).isEqualTo(1);
            now.addAndGet(1);
            assertThat(wait("anna", "d" + i)).isZero();
            expected = Math.min(60_000, expected * 2);
        }
        assertThat(wait("bert", "d0")).as("another name").isZero();
    }

    @Test
    void anAddressIsSlowedDownWhateverNamesItTries() {
        for (int i = 0; i < 20; i++) {
            assertThat(wait("name" + i, "here")).isZero();
        }
        assertThat(wait("name20", "here")).isEqualTo(1_000);
        assertThat(wait("name20", "there")).isZero();
    }

    @Test
    void whoIsLetInIsFreeAgain() {
        for (int i = 0; i < 5; i++) {
            wait("anna", "here");
        }
        now.addAndGet(1_000);
        assertThat(wait("anna", "here")).isZero();
        brake.succeeded("anna", "here");
        for (int i = 0; i < 5; i++) {
            assertThat(wait("anna", "here")).as("try " + i).isZero();
        }
        assertThat(wait("anna", "here")).isEqualTo(1_000);
    }

    @Test
    void failuresAreForgotten() {
        for (int i = 0; i < 5; i++) {
            wait("anna", "here");
        }
        now.addAndGet(Duration.ofMinutes(15).toMillis() + 1);
        assertThat(wait("anna", "here")).isZero();
        assertThat(wait("anna", "here")).isZero();
    }

    @Test
    void nobodyFillsTheMemory() {
        for (int i = 0; i < 30_000; i++) {
            wait("name" + i, "address" + i);
        }
        assertThat(brake.size()).isEqualTo(20_000);
    }
}
