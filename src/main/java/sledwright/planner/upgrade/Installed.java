package sledwright.planner.upgrade;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Collections;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.TreeMap;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Limits;
import sledwright.domain.Lot.PriceBreak;
import sledwright.rules.stock.AcceptedCondition;
import sledwright.rules.stock.LeadTime;

/**
 * Machines that stand at a customer's, all alike.
 *
 * @param build    each of them
 * @param machines how many
 * @param credits  sku -> what the shop gives for one unit of it, minor units
 */
public record Installed(Build build, int machines, SortedMap<String, Long> credits) {

    public Installed {
        credits = Collections.unmodifiableSortedMap(new TreeMap<>(credits));
    }

    /**
     * The machines with what their parts would fetch: a share of the least unit price at which the shop sells the part on the
     * request's terms; nothing for a part that it does not sell.
     *
     * @param tradeIn the share, from 0 to 1
     */
    public static Installed of(Build build, int machines, double tradeIn, Limits limits, Catalog shop) {
        SortedMap<String, Long> credits = new TreeMap<>();
        for (String sku : build.partCounts().keySet()) {
            OptionalLong least = shop.lots(sku).stream()
                    .filter(lot -> lot.available() > 0 && LeadTime.allows(lot, limits) && AcceptedCondition.allows(lot, limits))
                    .flatMap(lot -> lot.breaks().stream()).mapToLong(PriceBreak::unitPrice).min();
            credits.put(sku, least.isEmpty() ? 0 : BigDecimal.valueOf(tradeIn).multiply(BigDecimal.valueOf(least.getAsLong()))
                    .setScale(0, RoundingMode.FLOOR).longValueExact());
        }
        return new Installed(build, machines, credits);
    }

    /** What one unit of a part fetches, minor units; nothing for a part that is not in the machines. */
    public long credit(String sku) {
        return credits.getOrDefault(sku, 0L);
    }

    /** What a whole machine would fetch, minor units. */
    public long creditOfMachine() {
        return build.partCounts().entrySet().stream().mapToLong(part -> credit(part.getKey()) * part.getValue()).sum();
    }

    /** Units of a part in all machines. */
    public int units(String sku) {
        return build.partCounts().getOrDefault(sku, 0) * machines;
    }
}
