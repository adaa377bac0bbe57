package sledwright.generator.keep;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;

/**
 * What has been worked out and may be asked for again, up to a fixed number of bytes: beyond them, what was asked for longest ago goes.
 *
 * <p>Threads may share it. None waits for another, since each has a deadline of its own: two that ask for the same at once both work it
 * out, and one of the two results is kept.
 */
public final class Kept {

    /** What an entry takes beside its value and the value's key. */
    private static final long BYTES_OF_ENTRY = 200;

    /** So much is left when room has been made, as a share of all. */
    private static final double LEFT = 0.75;

    /** What a value is kept under: all that it depends on. */
    public interface Key<V> {

        /** About how many bytes a value takes, and what of the key is the key's alone. */
        long bytes(V value);

        /** Whether it takes so long to work out that it goes only when nothing else is left. */
        default boolean isDear() {
            return false;
        }
    }

    private static final class Entry {
        private final Object value;
        private volatile long bytes;
        private volatile long asked;

        Entry(Object value, long bytes, long asked) {
            this.value = value;
            this.bytes = bytes;
            this.asked = asked;
        }
    }

    private record Aged(Key<?> key, Entry entry, long asked) {
    }

    private final long most;
    private final Map<Key<?>, Entry> entries = new ConcurrentHashMap<>();
    private final AtomicLong bytes = new AtomicLong();
    private final AtomicLong clock = new AtomicLong();
    private final AtomicBoolean makingRoom = new AtomicBoolean();

    public Kept(long mostBytes) {
        most = mostBytes;
    }

    /** The value of a key; whoever asks first works it out. */
    public <V> V get(Key<V> key, Supplier<V> work) {
        Entry known = entries.get(key);
        if (known == null) {
            V value = work.get();
            keep(key, value);
            return value;
        }
        known.asked = clock.incrementAndGet();
        @SuppressWarnings("unchecked") // Kept under its key only.
        V value = (V) known.value;
        return value;
    }

    private <V> void keep(Key<V> key, V value) {
        Entry entry = new Entry(value, key.bytes(value) + BYTES_OF_ENTRY, clock.incrementAndGet());
        if (entry.bytes <= most && entries.putIfAbsent(key, entry) == null) {
            bytes.addAndGet(entry.bytes);
            makeRoomWhereFull();
        }
    }

    /** A value takes about so many bytes besides; it need not be kept any more. */
    public <V> void grew(Key<V> key, V value, long more) {
        Entry entry = entries.get(key);
        if (entry == null || entry.value != value) {
            return;
        }
        synchronized (entry) {
            if (entries.get(key) != entry) {
                return;
            }
            entry.bytes += more;
            bytes.addAndGet(more);
        }
        makeRoomWhereFull();
    }

    private void makeRoomWhereFull() {
        if (bytes.get() > most && makingRoom.compareAndSet(false, true)) {
            try {
                makeRoom();
            } finally {
                makingRoom.set(false);
            }
        }
    }

    private void makeRoom() {
        List<Aged> oldestFirst = entries.entrySet().stream().map(entry
                -> new Aged(entry.getKey(), entry.getValue(), entry.getValue().asked))
                .sorted(Comparator.comparing((Aged aged) -> aged.key.isDear()).thenComparingLong(Aged::asked)).toList();
        for (Aged aged : oldestFirst) {
            if (bytes.get() <= LEFT * most) {
                break;
            }
            synchronized (aged.entry) {
                if (entries.remove(aged.key, aged.entry)) {
                    bytes.addAndGet(-aged.entry.bytes);
                }
            }
        }
    }

    /** About how many bytes all that is kept takes. */
    public long bytes() {
        return bytes.get();
    }
}
