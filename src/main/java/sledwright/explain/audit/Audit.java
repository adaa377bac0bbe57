package sledwright.explain.audit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sledwright.catalog.PlacedCatalog;

/** Looks a catalogue over for what is odd. */
public final class Audit {

    /** One thing to look for. */
    interface Check {

        /** Its identifier in results. */
        String id();

        List<Warning> look(PlacedCatalog placed);
    }

    static final List<Check> CHECKS = List.of(new UnsoldPlatforms(), new UnsoldCompanions(), new SpeedHoles(), new DeadPlaces(),
            new PartsWithoutPlatform(), new OffersOfUnusableParts(), new IdleCompanions(), new LotsOver(), new PricesOffTrend(),
            new SoldBelowCost(), new CaseTwins());

    private Audit() {
    }

    /** Every warning, by file and line. */
    public static List<Warning> of(PlacedCatalog placed) {
        List<Warning> warnings = new ArrayList<>();
        CHECKS.forEach(check -> warnings.addAll(check.look(placed)));
        warnings.sort(Comparator.comparing((Warning warning) -> warning.place().file()).thenComparing(warning -> warning.place().line()));
        return List.copyOf(warnings);
    }
}
