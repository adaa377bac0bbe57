package sledwright.web.users;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * Who is logged in. Kept in memory alone, under digests of the names that browsers hold; a session ends when nobody has used it for a
 * while, at the end of a working day, and when it is one of too many and has not been used for longest.
 */
public final class Sessions {

    public static final Duration IDLE = Duration.ofHours(1);
    public static final Duration LONGEST = Duration.ofHours(12);

    private static final int MOST = 2_000;

    private static final class Held {
        private final Session session;
        private final long begun;
        private long used;

        private Held(Session session, long now) {
            this.session = session;
            this.begun = now;
            this.used = now;
        }

        private boolean isOver(long now) {
            return now - used > IDLE.toMillis() || now - begun > LONGEST.toMillis();
        }
    }

    private final LongSupplier clock;
    /** Digest of a session's name -> session, the one not used for longest first. */
    private final Map<String, Held> held = new LinkedHashMap<>(64, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Held> eldest) {
            return size() > MOST;
        }
    };

    /** @param clock gives milliseconds */
    public Sessions(LongSupplier clock) {
        this.clock = clock;
    }

    /** Begins one and gives the name that the browser keeps. */
    public synchronized String begin(User user) {
        long now = clock.getAsLong();
        held.values().removeIf(one -> one.isOver(now));
        String name = Secrets.fresh();
        held.put(Secrets.digest(name), new Held(new Session(user, Secrets.fresh()), now));
        return name;
    }

    /** The session of that name; it counts as used now. */
    public synchronized Optional<Session> use(String name) {
        String key = Secrets.digest(name);
        Held found = held.get(key);
        long now = clock.getAsLong();
        if (found == null || found.isOver(now)) {
            held.remove(key);
            return Optional.empty();
        }
        found.used = now;
        return Optional.of(found.session);
    }

    public synchronized void end(String name) {
        held.remove(Secrets.digest(name));
    }

    synchronized int size() {
        return held.size();
    }
}
