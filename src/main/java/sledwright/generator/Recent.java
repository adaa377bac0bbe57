package sledwright.generator;

import java.util.LinkedHashMap;
import java.util.Map;

/** Keeps what was asked for last, and no more than so much. */
public final class Recent<K, V> extends LinkedHashMap<K, V> {

    private final int most;

    public Recent(int most) {
        super(16, 0.75f, true);
        this.most = most;
    }

    @Override
    protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
        return size() > most;
    }
}
