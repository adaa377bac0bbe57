package sledwright.metrics;

import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.OptionalDouble;
import sledwright.domain.Energy;
import sledwright.domain.Limits;
import sledwright.domain.Supply;

/**
 * What the electricity of machines costs over the years.
 *
 * <p>A machine carries its load times the duty on average. What it takes from the wall at that mean load, which the supply's
 * efficiency at that share decides, runs for {@value #HOURS_A_YEAR} hours a year. Cooling of the room is not in it.
 */
public final class EnergyCost {

    /** 365 days of 24 hours. */
    public static final int HOURS_A_YEAR = 8760;

    private static final double WATTS_IN_KW = 1000;

    private EnergyCost() {
    }

    /**
     * Minor units for a number of machines of one load.
     *
     * @param loadW  full load of one machine
     * @param supply where there is none, or none whose efficiency is known, the loss is left out
     */
    public static long of(int machines, double loadW, Optional<Supply> supply, Limits limits, Energy energy) {
        return Math.round(kwh(machines, loadW, supply, limits, energy) * energy.pricePerKwh());
    }

    /** kWh from the wall over all years, all machines. */
    public static double kwh(int machines, double loadW, Optional<Supply> supply, Limits limits, Energy energy) {
        return machines * meanW(loadW, supply, limits, energy.duty()) / WATTS_IN_KW * HOURS_A_YEAR * energy.years();
    }

    /** Watts that one machine takes from the wall at its mean load; the mean load itself where no efficiency is known. */
    public static double meanW(double loadW, Optional<Supply> supply, Limits limits, double duty) {
        double mean = duty * loadW;
        OptionalDouble wall = supply.map(known -> PowerDraw.wallW(mean, known, limits)).orElse(OptionalDouble.empty());
        return wall.orElse(mean);
    }

    /**
     * Whether more load never takes less from the wall. A table of efficiencies that rises faster than the load does not say so:
     * 10 % at a tenth and 90 % at a fifth would make twice the load cheaper to run.
     */
    public static boolean risesWithLoad(Supply supply) {
        NavigableMap<Integer, Double> table = supply.efficiency();
        double before = 0;
        for (Map.Entry<Integer, Double> point : table.entrySet()) {
            double fromWall = point.getKey() / point.getValue();
            if (fromWall < before) {
                return false;
            }
            before = fromWall;
        }
        return true;
    }
}
