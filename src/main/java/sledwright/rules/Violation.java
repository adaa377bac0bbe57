package sledwright.rules;

import sledwright.words.Sentence;

/**
 * A rule broken.
 *
 * @param rule     the rule's identifier
 * @param where    the slot, channel, socket or part that breaks it; empty: the whole machine or order
 * @param sentence finished, with the numbers
 */
public record Violation(String rule, String where, Sentence sentence) {

    /** The sentence as on a command line. */
    public String message() {
        return sentence.toString();
    }
}
