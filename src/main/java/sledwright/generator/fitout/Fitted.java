package sledwright.generator.fitout;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Drives, cards and extras of a machine.
 *
 * @param volumes what its volumes are made of
 * @param cards   its cards, what drives, and its extras
 */
public record Fitted(VolumePlan volumes, CardPlan cards) {

    static final Fitted NOTHING = new Fitted(new VolumePlan(0, 0, 0, 0, List.of(), Map.of()),
            new CardPlan(0, 0, new TreeMap<>(), new TreeMap<>(), Optional.empty(), Optional.empty(), false));

    /** The cheapest first; of equals the lightest, then that of fewest parts. */
    static final Comparator<Fitted> ORDER = Comparator.comparingLong(Fitted::price)
            .thenComparingLong(Fitted::microwatts).thenComparingInt(Fitted::parts);

    /** All machines with labour, minor units. */
    public long price() {
        return volumes.price() + cards.price();
    }

    /** Microwatts of the heaviest machine's. */
    public long microwatts() {
        return volumes.microwatts() + cards.microwatts();
    }

    /** By how much another deal of drives could make that less. */
    public long range() {
        return volumes.range();
    }

    /** Kinds of drive of which machines may get units of unequal watts; one by itself is dealt as well as can be. */
    public int uneven() {
        return volumes.uneven();
    }

    int parts() {
        return volumes.parts() + cards.parts();
    }
}
