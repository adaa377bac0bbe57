package sledwright.book;

import sledwright.desk.view.QuoteAnswer;

/**
 * An answer with all that it came from.
 *
 * @param digest of the catalogue's files
 */
public record Answered(Asked asked, QuoteAnswer answer, String digest) {
}
