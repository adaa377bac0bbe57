package sledwright.domain;

import java.util.Map;

/**
 * What must be bought with what is fitted.
 *
 * @param cause what calls for the parts
 * @param from  fitted processors from which they are called for, once; 0 for empty sockets, each of which calls for them
 * @param parts units by sku of extras
 */
public record Need(Cause cause, int from, Map<String, Integer> parts) {

    /** What calls for parts. */
    public enum Cause {
        PROCESSORS, EMPTY_SOCKETS
    }

    public Need {
        parts = Map.copyOf(parts);
    }

    /** How many times the parts are called for. */
    public int times(int processors, int sockets) {
        return switch (cause) {
            case PROCESSORS -> processors >= from ? 1 : 0;
            case EMPTY_SOCKETS -> Math.max(0, sockets - processors);
        };
    }
}
