package sledwright.explain;

import java.util.List;

/**
 * Demands of a request that cannot hold together, none of which could be left out of the conflict.
 *
 * @param keys    the request's keys, such as {@code limit.price}
 * @param message a finished sentence
 */
public record Conflict(List<String> keys, String message) {

    public Conflict {
        keys = List.copyOf(keys);
    }
}
