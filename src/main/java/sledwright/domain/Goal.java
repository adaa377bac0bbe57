package sledwright.domain;

import java.util.Optional;

/**
 * What makes one build better than another.
 *
 * @param worth   what more of a figure than is required is worth, where that is the objective
 * @param licence software that the customer pays by the core, part of the price
 * @param energy  what electricity costs the customer; empty where nobody says
 */
public record Goal(Objective objective, Worth worth, Licence licence, Optional<Energy> energy) {

    public static final Goal CHEAPEST = new Goal(Objective.CHEAPEST, Worth.NOTHING, Licence.NONE);

    /** A goal that says nothing of electricity. */
    public Goal(Objective objective, Worth worth, Licence licence) {
        this(objective, worth, licence, Optional.empty());
    }

    public Goal withObjective(Objective other) {
        return new Goal(other, worth, licence, energy);
    }

    public Goal withEnergy(Optional<Energy> counted) {
        return new Goal(objective, worth, licence, counted);
    }
}
