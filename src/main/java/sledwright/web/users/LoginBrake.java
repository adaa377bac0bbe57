package sledwright.web.users;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * Slows down whoever guesses passwords: after a few failures of a name, or of an address, each further one has to wait twice as long as
 * the one before. A name waits a minute at most, so that nobody can lock somebody else out for long.
 */
public final class LoginBrake {

    private static final int MOST = 10_000;

    /** How a name or an address is slowed down. */
    private enum Pace {
        NAME(5, Duration.ofMinutes(1), Duration.ofMinutes(15)),
        ADDRESS(20, Duration.ofMinutes(15), Duration.ofHours(1));

        private final int free;
        private final long mostMillis;
        private final long forgottenAfter;

        Pace(int free, Duration most, Duration forgotten) {
            this.free = free;
            this.mostMillis = most.toMillis();
            this.forgottenAfter = forgotten.toMillis();
        }

        private long pause(int failures) {
            int doubled = Math.min(failures - free, 20);
            return doubled < 0 ? 0 : Math.min(mostMillis, 1_000L << doubled);
        }
    }

    private record Failures(int count, long last) {

        private long waitsUntil(Pace pace) {
            return last + pace.pause(count);
        }
    }

    private final LongSupplier clock;
    private final Map<Pace, Map<String, Failures>> failures = Map.of(Pace.NAME, bounded(), Pace.ADDRESS, bounded());

    /** @param clock gives milliseconds */
    public LoginBrake(LongSupplier clock) {
        this.clock = clock;
    }

    private static Map<String, Failures> bounded() {
        return new LinkedHashMap<>(64, 0.75f, true) {
            @Override
            protected boolean removeEldestEntry(Map.Entry<String, Failures> eldest) {
                return size() > MOST;
            }
        };
    }

    /**
     * Asked before a password is looked at. What may be tried counts as a failure until {@link #succeeded} says otherwise, so that many
     * tries at once are as slow as one after the other.
     *
     * @return for how long to wait; empty: it may be tried
     */
    public synchronized Optional<Duration> tries(String name, String address) {
        long now = clock.getAsLong();
        long wait = Math.max(wait(Pace.NAME, name, now), wait(Pace.ADDRESS, address, now));
        if (wait > 0) {
            return Optional.of(Duration.ofMillis(wait));
        }
        count(Pace.NAME, name, now);
        count(Pace.ADDRESS, address, now);
        return Optional.empty();
    }

    private long wait(Pace pace, String key, long now) {
        Failures known = failures.get(pace).get(key);
        return known == null ? 0 : known.waitsUntil(pace) - now;
    }

    private void count(Pace pace, String key, long now) {
        failures.get(pace).compute(key, (same, known) ->
                new Failures(known == null || now - known.last() > pace.forgottenAfter ? 1 : known.count() + 1, now));
    }

    /** The password was right: the name is free again, and the address has failed once less. */
    public synchronized void succeeded(String name, String address) {
        failures.get(Pace.NAME).remove(name);
        failures.get(Pace.ADDRESS).computeIfPresent(address, (same, known) ->
                known.count() == 1 ? null : new Failures(known.count() - 1, known.last()));
    }

    synchronized int size() {
        return failures.values().stream().mapToInt(Map::size).sum();
    }
}
