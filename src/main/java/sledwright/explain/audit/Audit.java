package sledwright.explain.audit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import sledwright.catalog.PlacedCatalog;
import sledwright.input.Place;

/** Looks a catalogue over for what is odd. */
public final class Audit {

    /** One thing to look for. */
    interface Check {

        /** @param odd receives the place of each that there is and a finished sentence */
        void look(PlacedCatalog placed, BiConsumer<Place, String> odd);
    }

    /** What is looked for by its identifier in results. */
    private static final List<Map.Entry<String, Check>> CHECKS = List.of(
            Map.entry("unsold-platform", new UnsoldPlatforms()), Map.entry("unsold-companion", new UnsoldCompanions()),
            Map.entry("speed-hole", new SpeedHoles()), Map.entry("dead-place", new DeadPlaces()),
            Map.entry("no-platform", new PartsWithoutPlatform()), Map.entry("unusable-offer", new OffersOfUnusableParts()),
            Map.entry("idle-companion", new IdleCompanions()), Map.entry("lot-over", new LotsOver()),
            Map.entry("price-off-trend", new PricesOffTrend()), Map.entry("below-cost", new SoldBelowCost()),
            Map.entry("case-twins", new CaseTwins()));

    private Audit() {
    }

    /** Every warning, by file and line. */
    public static List<Warning> of(PlacedCatalog placed) {
        List<Warning> warnings = new ArrayList<>();
        CHECKS.forEach(check -> check.getValue().look(placed,
                (place, message) -> warnings.add(new Warning(check.getKey(), place, message))));
        warnings.sort(Comparator.comparing((Warning warning) -> warning.place().file()).thenComparing(warning -> warning.place().line()));
        return List.copyOf(warnings);
    }
}
