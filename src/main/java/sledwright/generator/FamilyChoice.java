package sledwright.generator;

import java.util.List;
import java.util.function.Supplier;

/**
 * The families that a zone's builds come from. What is heavier and no better is of use only where a machine takes a lighter, dearer set
 * of drives and cards because it is too heavy for the cheapest, and where that makes it light enough for a zone.
 */
final class FamilyChoice {

    private final List<Family> light;
    private final Supplier<List<Family>> every;
    private final double forcedFromW;
    private List<Family> all;

    /**
     * @param light       without what is heavier and no better
     * @param every       with all of it
     * @param forcedFromW no machine that takes another set than the cheapest loads less; below 0: what is heavier may come first anywhere
     */
    FamilyChoice(List<Family> light, Supplier<List<Family>> every, double forcedFromW) {
        this.light = light;
        this.every = every;
        this.forcedFromW = forcedFromW;
    }

    static FamilyChoice of(List<Family> families) {
        return new FamilyChoice(families, () -> families, Double.POSITIVE_INFINITY);
    }

    /** The families of a zone's builds. */
    List<Family> in(Zone zone) {
        boolean mayBeForced = forcedFromW < 0 || zone.loadW() < Double.POSITIVE_INFINITY && zone.loadW() > forcedFromW;
        if (mayBeForced && all == null) {
            all = every.get();
        }
        return mayBeForced ? all : light;
    }
}
