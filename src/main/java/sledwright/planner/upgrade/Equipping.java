package sledwright.planner.upgrade;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import sledwright.domain.Fitout;
import sledwright.planner.upgrade.BenchStep.Action;
import sledwright.planner.upgrade.BenchStep.Part;

/** What hands do with drives, cards and extras of a machine that has none of them yet, in the order of {@link Bench}. */
public final class Equipping {

    private Equipping() {
    }

    public static List<BenchStep> of(Fitout fitout) {
        List<BenchStep> steps = new ArrayList<>();
        fitout.extrasBySku().forEach((sku, units) -> steps.addAll(Collections.nCopies(units, in(Part.EXTRA, sku, Bench.MACHINE))));
        fitout.cards().forEach((slot, card) -> steps.add(in(Part.CARD, card.sku(), slot)));
        fitout.seats().forEach(seat -> steps.add(in(Part.DRIVE, seat.drive().sku(), seat.bay())));
        steps.addAll(new Cabling(Fitout.NONE, fitout).steps());
        return steps;
    }

    private static BenchStep in(Part part, String sku, String place) {
        return new BenchStep(Action.PUT_IN, part, sku, Optional.empty(), Optional.of(place));
    }
}
