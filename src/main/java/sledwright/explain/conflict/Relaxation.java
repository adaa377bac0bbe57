package sledwright.explain.conflict;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import sledwright.words.Sentence;

/**
 * Changes that together make a request possible, none of which could be left out.
 *
 * @param price   what the cheapest build costs that they open, all machines, in units of the currency
 * @param sentence finished, with the figures that would suffice
 */
public record Relaxation(List<Change> changes, BigDecimal price, Sentence sentence) {

    /**
     * One change.
     *
     * @param key  the request's key, such as {@code limit.price}; {@code stock}: what the lots hold
     * @param sku  the volume or extra that is meant where the key holds several of them, each by itself
     * @param from as a request file writes it; empty for stock
     * @param to   the nearest that is possible, as a request file writes it; empty where the key must go, and for stock
     */
    public record Change(String key, Optional<String> sku, String from, String to) {

        Change to(String other) {
            return new Change(key, sku, from, other);
        }
    }

    public Relaxation {
        changes = List.copyOf(changes);
    }

    public List<String> keys() {
        return changes.stream().map(Change::key).toList();
    }

    /** The sentence as on a command line. */
    public String message() {
        return sentence.toString();
    }
}
