package sledwright.planner.upgrade;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.domain.Card;
import sledwright.domain.Drive;
import sledwright.domain.Fitout;
import sledwright.planner.upgrade.BenchStep.Action;
import sledwright.planner.upgrade.BenchStep.Part;

/** Which drives are connected to what drives them, and which hung on something else before. */
record Cabling(Fitout before, Fitout after) {

    /** A step for each drive that is new or changes its driver. */
    List<BenchStep> steps() {
        List<BenchStep> steps = new ArrayList<>();
        Map<String, Integer> had = hanging(before);
        boolean stays = what(before).equals(what(after));
        hanging(after).forEach((sku, units) -> {
            int old = !isDriven(before) ? 0 : Math.min(units, had.getOrDefault(sku, 0));
            for (int unit = 0; unit < units; unit++) {
                if (unit >= old) {
                    steps.add(new BenchStep(Action.PUT_IN, Part.CABLE, sku, Optional.empty(), after.driver()));
                } else if (!stays) {
                    steps.add(new BenchStep(Action.MOVE, Part.CABLE, sku, before.driver(), after.driver()));
                }
            }
        });
        return steps;
    }

    /** The driver itself: a controller stays the same one in another slot. */
    private static Optional<Object> what(Fitout fitout) {
        return fitout.driver().map(driver -> fitout.cards().containsKey(driver) ? fitout.cards().get(driver) : driver);
    }

    /** Whether the driver of a machine is one; a machine that stands may break rules. */
    private static boolean isDriven(Fitout fitout) {
        return fitout.driver().filter(driver -> driver.equals(Fitout.ONBOARD)
                || Optional.ofNullable(fitout.cards().get(driver)).flatMap(Card::support).isPresent()).isPresent();
    }

    private static Map<String, Integer> hanging(Fitout fitout) {
        Map<String, Integer> units = new LinkedHashMap<>();
        for (Drive drive : fitout.drives()) {
            if (drive.link().needsDriver()) {
                units.merge(drive.sku(), 1, Integer::sum);
            }
        }
        return units;
    }
}
