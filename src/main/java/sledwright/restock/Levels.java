package sledwright.restock;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.statistics.distribution.NormalDistribution;
import sledwright.domain.RestockRequest;
import sledwright.domain.SupplyOffer;
import sledwright.restock.RestockPlan.PartOutlook;

/**
 * Reorder levels part by part: buy again when no more than some units are left. Formulas of continuous review with normal demand
 * (Chopra, "Supply Chain Management", chapters 11 and 12).
 */
public final class Levels {

    private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

    private Levels() {
    }

    /**
     * How a level does.
     *
     * @param safetyStock      units that are left on average when the delivery comes
     * @param cycleService     share of lead times in which no unit is missing
     * @param expectedShortage units missing before a delivery, mean
     * @param fillRate         share of demand that is met from stock
     */
    public record Service(double safetyStock, double cycleService, double expectedShortage, double fillRate) {
    }

    /**
     * The level of one part.
     *
     * @param offer     what it is bought again from
     * @param perMonth  units that orders take, mean
     * @param deviation its standard deviation
     * @param point     reorder when this many units are left
     * @param lot       units that are then bought
     */
    public record Level(SupplyOffer offer, double perMonth, double deviation, int point, int lot, Service service) {
    }

    /**
     * What a reorder point achieves.
     *
     * @param mean      demand in a period
     * @param deviation its standard deviation
     * @param leadTime  periods
     */
    public static Service service(double mean, double deviation, double leadTime, double lot, double point) {
        double safety = point - mean * leadTime;
        double spread = deviation * Math.sqrt(leadTime);
        if (spread == 0) {
            double shortage = Math.max(0, -safety);
            return new Service(safety, safety >= 0 ? 1 : 0, shortage, 1 - shortage / lot);
        }
        double z = safety / spread;
        double shortage = -safety * STANDARD.survivalProbability(z) + spread * STANDARD.density(z);
        return new Service(safety, STANDARD.cumulativeProbability(z), shortage, 1 - shortage / lot);
    }

    /** The reorder point that suffices in a share of lead times. */
    public static double point(double mean, double deviation, double leadTime, double cycleService) {
        return mean * leadTime + STANDARD.inverseCumulativeProbability(cycleService) * deviation * Math.sqrt(leadTime);
    }

    /**
     * A level for every part that the plan buys, or that its orders take and that can be bought: by what the plan's orders take of it, each
     * from the offer that the plan buys the most of, else from the cheapest.
     */
    public static List<Level> of(RestockPlan plan) {
        double months = plan.request().horizonMonths();
        List<Level> levels = new ArrayList<>();
        plan.parts().stream().filter(part -> part.units().used() > 0 || part.units().bought() > 0)
                .sorted(Comparator.comparing(PartOutlook::sku)).forEach(part -> offer(part.sku(), plan).ifPresent(offer ->
                        levels.add(level(offer, part.units().used() / months, part.units().deviation() / Math.sqrt(months), plan))));
        return levels;
    }

    private static Optional<SupplyOffer> offer(String sku, RestockPlan plan) {
        return plan.buys().stream().filter(buy -> buy.offer().sku().equals(sku)).max(Comparator.comparingInt(RestockPlan.Buy::quantity))
                .map(RestockPlan.Buy::offer)
                .or(() -> plan.request().offers().stream().filter(offer -> offer.sku().equals(sku) && offer.available() > 0)
                        .min(Comparator.comparingLong(SupplyOffer::unitCost)));
    }

    private static Level level(SupplyOffer offer, double perMonth, double deviation, RestockPlan plan) {
        double months = offer.leadDays() / RestockRequest.DAYS_A_MONTH;
        int point = (int) Math.ceil(point(perMonth, deviation, months, plan.request().serviceLevel()) - 1e-9);
        int planned = plan.buys().stream().filter(buy -> buy.offer().equals(offer)).mapToInt(RestockPlan.Buy::quantity).sum();
        int lot = Math.max(Math.max(1, Math.max(planned, offer.minQuantity())), (int) Math.ceil(perMonth - 1e-9));
        return new Level(offer, perMonth, deviation, Math.max(0, point), lot,
                service(perMonth, deviation, months, lot, Math.max(0, point)));
    }
}
