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
import sledwright.rules.Rulebook;

/**
 * Machines that stand at a customer's, all alike.
 *
 * @param build    each of them
 * @param machines how many
 * @param tradeIn  the share of a part's price that it fetches, from 0 to 1
 * @param credits  sku -> what the shop gives for one unit of it, minor units
 */
public record Installed(Build build, int machines, double tradeIn, SortedMap<String, Long> credits) {

    public Installed {
        credits = Collections.unmodifiableSortedMap(new TreeMap<>(credits));
    }

    /**
     * The machines with what their parts would fetch: a share of the least unit price at which the shop can sell the part on the
     * request's terms, a price that its lot has units enough for; nothing for a part that it does not sell.
     */
    public static Installed of(Build build, int machines, double tradeIn, Limits limits, Catalog shop) {
        SortedMap<String, Long> credits = new TreeMap<>();
        for (String sku : build.partCounts().keySet()) {
            OptionalLong least = shop.lots(sku).stream()
                    .filter(lot -> Rulebook.accepts(lot, limits))
                    .flatMap(lot -> lot.breaks().stream().filter(step -> lot.sells(step.minQuantity())))
                    .mapToLong(PriceBreak::unitPrice).min();
            credits.put(sku, least.isEmpty() ? 0 : BigDecimal.valueOf(tradeIn).multiply(BigDecimal.valueOf(least.getAsLong()))
                    .setScale(0, RoundingMode.FLOOR).longValueExact());
        }
        return new Installed(build, machines, tradeIn, credits);
    }

    /** The same machines where the request's terms are others. */
    Installed on(Limits limits, Catalog shop) {
        return of(build, machines, tradeIn, limits, shop);
    }

    /** The same machines where a part fetches nothing. */
    Installed keeping(String sku) {
        SortedMap<String, Long> other = new TreeMap<>(credits);
        other.put(sku, 0L);
        return new Installed(build, machines, tradeIn, other);
    }

    /** What one unit of a part fetches, minor units; nothing for a part that is not in the machines. */
    public long credit(String sku) {
        return credits.getOrDefault(sku, 0L);
    }

    /** What the whole machines would fetch, minor units. */
    public long creditOfMachines() {
        return machines * (credit(build.platform().sku()) + creditOfParts());
    }

    /** What all parts of one machine would fetch that may be pulled, minor units: the platform stays. */
    long creditOfParts() {
        return build.partCounts().entrySet().stream().filter(part -> !part.getKey().equals(build.platform().sku()))
                .mapToLong(part -> credit(part.getKey()) * part.getValue()).sum();
    }

    /** Units of a part in all machines. */
    public int units(String sku) {
        return build.partCounts().getOrDefault(sku, 0) * machines;
    }
}
