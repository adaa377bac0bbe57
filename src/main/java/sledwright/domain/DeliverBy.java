package sledwright.domain;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/**
 * The last day of a delivery.
 *
 * @param days days left until then on the day of the answer; below 0 nothing can be delivered any more, not even what is here
 */
public record DeliverBy(LocalDate day, int days) {

    private static final long MOST = 100_000;

    /** @param today the day of the answer */
    public static DeliverBy of(LocalDate day, LocalDate today) {
        return new DeliverBy(day, (int) Math.max(-MOST, Math.min(MOST, ChronoUnit.DAYS.between(today, day))));
    }

    /** The day on which something arrives that takes a given number of days from the day of the answer. */
    public LocalDate arrival(int leadDays) {
        return day.plusDays((long) leadDays - days);
    }
}
