package sledwright.book;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;

/**
 * One change of the book.
 *
 * @param at     the moment, in the form of ISO 8601
 * @param step   what was done
 * @param detail how it came out; may be empty
 */
public record HistoryEntry(long entry, String at, String who, QuoteNumber number, int version, String step, String detail) {

    /** The day on which it was done. Where a day was said, the moment is the first of that day; otherwise it is told in the shop's time. */
    public LocalDate day() {
        ZonedDateTime told = Instant.parse(at).atZone(ZoneOffset.UTC);
        return told.toLocalTime().equals(LocalTime.MIDNIGHT) ? told.toLocalDate()
                : told.withZoneSameInstant(ZoneId.systemDefault()).toLocalDate();
    }
}
