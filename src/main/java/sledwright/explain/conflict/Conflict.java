package sledwright.explain.conflict;

import java.util.List;
import java.util.Optional;
import sledwright.words.Sentence;

/**
 * Demands of a request that cannot be met together, though any all but one of them can.
 *
 * @param members empty where nothing can be built, whatever is asked
 * @param rules   identifiers of the rules that a build breaks which does not meet them
 * @param sentence finished
 */
public record Conflict(List<Member> members, List<String> rules, Sentence sentence) {

    /**
     * One of the demands.
     *
     * @param key   the request's key, such as {@code limit.price}; {@code stock}: what the lots hold
     * @param sku   the part that is meant, under a key that lists parts
     * @param words the demand as people say it
     */
    public record Member(String key, Optional<String> sku, Sentence words) {
    }

    public Conflict {
        members = List.copyOf(members);
        rules = List.copyOf(rules);
    }

    /** The keys of the members, each once. */
    public List<String> keys() {
        return members.stream().map(Member::key).distinct().toList();
    }

    /** The sentence as on a command line. */
    public String message() {
        return sentence.toString();
    }
}
