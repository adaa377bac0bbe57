package sledwright.book;

import java.time.LocalDate;

/**
 * What must not be offered on a day.
 *
 * @param today the day of the answers
 */
public record OnDay(Reserved reserved, LocalDate today) {
}
