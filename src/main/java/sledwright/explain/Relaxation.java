package sledwright.explain;

import java.util.List;

/**
 * A change to a request that makes it possible.
 *
 * @param keys    the request's keys that change, such as {@code limit.price}
 * @param message a finished sentence with the figures that would do
 */
public record Relaxation(List<String> keys, String message) {

    public Relaxation {
        keys = List.copyOf(keys);
    }
}
