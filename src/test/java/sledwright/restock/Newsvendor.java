package sledwright.restock;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The best quantity of one part that is bought once (Snyder and Shen, "Fundamentals of Supply Chain Theory", section 4.3): what a plan
 * comes to with one part and one class.
 *
 * @param quantity units, which may be broken
 * @param cost     expected cost of too many and too few
 */
public record Newsvendor(double quantity, double cost) {

    /**
     * @param over  what a unit costs that is left over
     * @param under what a unit costs that is missing
     */
    public static Newsvendor normal(double over, double under, double mean, double deviation) {
        NormalDistribution standard = NormalDistribution.of(0, 1);
        double z = standard.inverseCumulativeProbability(under / (under + over));
        return new Newsvendor(mean + z * deviation, (over + under) * deviation * standard.density(z));
    }
}
