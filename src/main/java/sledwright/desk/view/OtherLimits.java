package sledwright.desk.view;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;

/**
 * What the cheapest build costs with another time to wait or further conditions, each changed by itself.
 *
 * @param key        what the request limits the wait by: {@code limit.lead_days} or {@code limit.by}; empty: by nothing
 * @param waits      the sooner first
 * @param conditions one for each condition that is not accepted and makes it cheaper
 */
public record OtherLimits(String key, List<Wait> waits, List<Wider> conditions) {

    public static final OtherLimits NONE = new OtherLimits("", List.of(), List.of());

    /** Another time to wait. {@code change}: against the answer to the request, in units of the currency. */
    public record Wait(int days, LocalDate day, BigDecimal change) {
    }

    /** A condition more. {@code accepted}: all that are accepted then, in the words of requests. */
    public record Wider(String condition, List<String> accepted, BigDecimal change) {
    }

    public OtherLimits {
        waits = List.copyOf(waits);
        conditions = List.copyOf(conditions);
    }
}
