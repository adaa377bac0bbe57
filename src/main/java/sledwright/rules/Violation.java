package sledwright.rules;

/**
 * A rule broken.
 *
 * @param rule    the rule's identifier
 * @param where   the slot, channel, socket or part that breaks it; empty: the whole machine or order
 * @param message a finished sentence with the numbers
 */
public record Violation(String rule, String where, String message) {
}
