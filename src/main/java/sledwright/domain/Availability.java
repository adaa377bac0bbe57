package sledwright.domain;

import java.time.LocalDate;
import java.util.Optional;

/**
 * How many units of a lot there are, and when.
 *
 * @param leadDays days until they arrive
 * @param lastDay  the last day on which they are sold; empty: not known
 */
public record Availability(int units, int leadDays, Optional<LocalDate> lastDay) {

    /** Units that are sold until they are gone. */
    public Availability(int units, int leadDays) {
        this(units, leadDays, Optional.empty());
    }
}
