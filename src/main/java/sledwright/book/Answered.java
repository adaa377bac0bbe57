package sledwright.book;

import sledwright.desk.view.OfferAnswer;

/**
 * An answer with all that it came from.
 *
 * @param digest of the catalogue's files
 */
public record Answered(Asked asked, OfferAnswer answer, String digest) {
}
