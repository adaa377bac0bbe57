package sledwright.web.api;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/** What was done by names that were given to it, so that whoever has lost the answer can ask again; the newest few are remembered. */
final class DoneOnce<T> {

    private static final int MOST = 500;

    private final Map<List<String>, Deed<T>> deeds = new LinkedHashMap<>() {

        @Override
        protected boolean removeEldestEntry(Map.Entry<List<String>, Deed<T>> eldest) {
            return size() > MOST;
        }
    };

    private static final class Deed<T> {

        private T outcome;

        /** Whoever asks again while it is being done waits for it; what came to nothing is begun anew. */
        private synchronized T outcome(Supplier<T> act) {
            if (outcome == null) {
                outcome = act.get();
            }
            return outcome;
        }
    }

    /** @param name what tells it from everything else that is asked */
    T of(List<String> name, Supplier<T> act) {
        Deed<T> deed;
        synchronized (deeds) {
            deed = deeds.computeIfAbsent(name, fresh -> new Deed<>());
        }
        return deed.outcome(act);
    }
}
