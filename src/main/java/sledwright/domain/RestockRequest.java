package sledwright.domain;

import java.util.List;
import java.util.Map;
import java.util.OptionalLong;

/**
 * What a shop wants to stock for.
 *
 * @param horizonMonths how far ahead orders are looked at
 * @param purchases     what may be bought
 * @param depreciation  kind of part -> the share of its cost that a unit loses in each month that it stands unsold
 * @param serviceLevel  the share of lead times in which a reorder level must suffice
 * @param samples       how many courses of events the plan is made on
 */
public record RestockRequest(String name, List<DemandClass> classes, double horizonMonths, Purchases purchases,
                             Map<PartKind, Double> depreciation, double serviceLevel, int samples) {

    public static final double DAYS_A_MONTH = 365.0 / 12;
    public static final double DEFAULT_SERVICE_LEVEL = 0.95;
    public static final int DEFAULT_SAMPLES = 1000;

    public RestockRequest {
        classes = List.copyOf(classes);
        depreciation = Map.copyOf(depreciation);
    }

    /**
     * What may be bought.
     *
     * @param budget the most that may be spent on parts, minor units; empty: any amount
     * @param offers what suppliers offer
     */
    public record Purchases(OptionalLong budget, List<SupplyOffer> offers) {

        public Purchases {
            offers = List.copyOf(offers);
        }
    }

    public OptionalLong budget() {
        return purchases.budget;
    }

    public List<SupplyOffer> offers() {
        return purchases.offers;
    }

    /** The share of its cost that an unsold unit has lost at the end. */
    public double lost(PartKind kind) {
        return depreciation.getOrDefault(kind, 0.0) * horizonMonths;
    }

    public double horizonDays() {
        return horizonMonths * DAYS_A_MONTH;
    }
}
