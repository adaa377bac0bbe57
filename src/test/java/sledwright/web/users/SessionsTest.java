package sledwright.web.users;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class SessionsTest {

    private static final User ANNA = new User("anna", Role.SALES, "hash");

    private final AtomicLong now = new AtomicLong(1_000_000);
    private final Sessions sessions = new Sessions(now::get);

    private void pass(Duration time) {
        now.addAndGet(time.toMillis());
    }

    @Test
    void namesAndTokensCannotBeGuessed() {
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < 100; i++) {
            String name = sessions.begin(ANNA);
            // 256 bits in base64 without padding (RFC 4648, section 5).
            assertThat(name).matches("[A-Za-z0-9_-]{43}");
            assertThat(seen.add(name) && seen.add(sessions.use(name).orElseThrow().token())).isTrue();
        }
        assertThat(sessions.use("")).isEmpty();
        assertThat(sessions.use(seen.iterator().next() + "x")).isEmpty();
    }

    @Test
    void aSessionEndsWhenNobodyUsesItAndAtTheEndOfADay() {
        String idle = sessions.begin(ANNA);
        pass(Sessions.IDLE);
        assertThat(sessions.use(idle)).isPresent();
        pass(Sessions.IDLE.plusMillis(1));
        assertThat(sessions.use(idle)).isEmpty();
        assertThat(sessions.size()).isZero();
        String busy = sessions.begin(ANNA);
        Duration used = Duration.ZERO;
        for (; used.compareTo(Sessions.LONGEST) < 0; used = used.plusMinutes(30)) {
            assertThat(sessions.use(busy)).as("after " + used).isPresent();
            pass(Duration.ofMinutes(30));
        }
        assertThat(sessions.use(busy)).isPresent();
        pass(Duration.ofMillis(1));
        assertThat(sessions.use(busy)).isEmpty();
    }

    @Test
    void whoeverLeavesIsOut() {
        String one = sessions.begin(ANNA);
        String other = sessions.begin(ANNA);
        sessions.end(one);
        assertThat(sessions.use(one)).isEmpty();
        assertThat(sessions.use(other)).map(Session::user).contains(ANNA);
    }

    @Test
    void thereAreNeverTooManyOfThem() {
        String first = sessions.begin(ANNA);
        String second = sessions.begin(ANNA);
        for (int i = 0; i < 1_999; i++) {
            sessions.use(first);
            sessions.begin(ANNA);
        }
        assertThat(sessions.size()).isEqualTo(2_000);
        assertThat(sessions.use(second)).as("not used for longest").isEmpty();
        assertThat(sessions.use(first)).isPresent();
    }
}
