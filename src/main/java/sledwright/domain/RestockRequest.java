package sledwright.domain;

import java.util.List;
import java.util.Map;
import java.util.OptionalLong;

/**
 * What a shop wants to stock for.
 *
 * @param horizonMonths how far ahead orders are looked at
 * @param budget        the most that may be spent on parts, minor units; empty: any amount
 * @param depreciation  kind of part -> the share of its cost that a unit loses in each month that it stands unsold
 * @param serviceLevel  the share of lead times in which a reorder level must suffice
 * @param samples       how many courses of events the plan is made on
 * @param offers        what suppliers offer
 */
public record RestockRequest(String name, List<DemandClass> classes, double horizonMonths, OptionalLong budget,
                             Map<PartKind, Double> depreciation, double serviceLevel, int samples, List<SupplyOffer> offers) {

    public static final double DAYS_A_MONTH = 365.0 / 12;
    public static final double DEFAULT_SERVICE_LEVEL = 0.95;
    public static final int DEFAULT_SAMPLES = 1000;

    public RestockRequest {
        classes = List.copyOf(classes);
        depreciation = Map.copyOf(depreciation);
        offers = List.copyOf(offers);
    }

    /** The share of its cost that an unsold unit has lost at the end. */
    public double lost(PartKind kind) {
        return depreciation.getOrDefault(kind, 0.0) * horizonMonths;
    }

    public double horizonDays() {
        return horizonMonths * DAYS_A_MONTH;
    }

    public RestockRequest withBudget(OptionalLong most) {
        return new RestockRequest(name, classes, horizonMonths, most, depreciation, serviceLevel, samples, offers);
    }

    public RestockRequest withClasses(List<DemandClass> others) {
        return new RestockRequest(name, others, horizonMonths, budget, depreciation, serviceLevel, samples, offers);
    }

    public RestockRequest withOffers(List<SupplyOffer> others) {
        return new RestockRequest(name, classes, horizonMonths, budget, depreciation, serviceLevel, samples, others);
    }

    public RestockRequest withSamples(int count) {
        return new RestockRequest(name, classes, horizonMonths, budget, depreciation, serviceLevel, count, offers);
    }
}
