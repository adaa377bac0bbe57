package sledwright.domain;

import java.util.NavigableMap;
import java.util.TreeMap;

/**
 * A power supply option of a platform: {@code count} equal supplies, of which {@code redundant} may fail.
 *
 * @param watts        what one supply delivers at high-line mains
 * @param lowLineWatts what one delivers at low-line mains; 0 where it cannot be used there
 * @param efficiency   percent of load -> percent efficiency; may be empty
 */
public record Supply(String sku, String name, int count, int redundant, double watts, double lowLineWatts,
                     NavigableMap<Integer, Double> efficiency) implements Part {

    /** Mains below this many volts are low line. */
    public static final double LOW_LINE_BELOW_V = 180;

    public Supply {
        efficiency = new TreeMap<>(efficiency);
    }

    @Override
    public String description() {
        return name;
    }

    /** The same part, called otherwise. */
    public Supply named(String other) {
        return new Supply(sku, other, count, redundant, watts, lowLineWatts, efficiency);
    }

    /** Watts that one supply delivers at the site's mains. */
    public double ratedW(Limits limits) {
        return limits.lowLine() ? lowLineWatts : watts;
    }

    /** Part numbers are unique; all that is said of a part takes long. */
    @Override
    public int hashCode() {
        return sku.hashCode();
    }
}
