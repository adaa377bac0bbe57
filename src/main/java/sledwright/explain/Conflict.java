package sledwright.explain;

import java.util.List;

/**
 * Demands of a request that cannot be met together, though any all but one of them can.
 *
 * @param keys    the request's keys, such as {@code limit.price}; {@code stock}: what the lots hold
 * @param rules   identifiers of the rules that a build breaks which does not meet them
 * @param message a finished sentence
 */
public record Conflict(List<String> keys, List<String> rules, String message) {

    public Conflict {
        keys = List.copyOf(keys);
        rules = List.copyOf(rules);
    }
}
