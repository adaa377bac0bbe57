package sledwright.book;

import java.time.Instant;
import java.time.LocalDate;

/**
 * Who writes into the book, and when.
 *
 * @param who   as the shop calls its people
 * @param at    the moment
 * @param today the day that counts, in the shop's own time
 */
public record Signature(String who, Instant at, LocalDate today) {
}
