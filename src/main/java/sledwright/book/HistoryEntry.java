package sledwright.book;

/**
 * One change of the book.
 *
 * @param at     the moment, in the form of ISO 8601
 * @param step   what was done
 * @param detail how it came out; may be empty
 */
public record HistoryEntry(long entry, String at, String who, QuoteNumber number, int version, String step, String detail) {
}
