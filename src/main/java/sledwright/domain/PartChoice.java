package sledwright.domain;

import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * Which parts a machine is of.
 *
 * @param platforms skus to choose from; empty: all
 * @param forbid    skus that must not be in a machine
 * @param use       skus that must be in every machine
 * @param onHand    sku -> units that the customer already has
 * @param equipment drives, cards, extras and enclosures
 */
public record PartChoice(Set<String> platforms, Set<String> forbid, Set<String> use, Map<String, Integer> onHand, Equipment equipment) {

    public static final PartChoice ANY = of(Set.of());

    public PartChoice {
        platforms = Set.copyOf(platforms);
        forbid = Set.copyOf(forbid);
        use = Set.copyOf(use);
        onHand = Map.copyOf(onHand);
    }

    /** Any parts on some platforms; empty: on all. */
    public static PartChoice of(Set<String> platforms) {
        return new PartChoice(platforms, Set.of(), Set.of(), Map.of(), Equipment.NONE);
    }

    public PartChoice withPlatforms(Set<String> skus) {
        return new PartChoice(skus, forbid, use, onHand, equipment);
    }

    public PartChoice withForbid(Set<String> skus) {
        return new PartChoice(platforms, skus, use, onHand, equipment);
    }

    public PartChoice withUse(Set<String> skus) {
        return new PartChoice(platforms, forbid, skus, onHand, equipment);
    }

    /** The same where machines must hold a part, too. */
    public PartChoice using(String sku) {
        Set<String> skus = new HashSet<>(use);
        skus.add(sku);
        return withUse(skus);
    }

    public PartChoice withOnHand(Map<String, Integer> units) {
        return new PartChoice(platforms, forbid, use, units, equipment);
    }

    public PartChoice withEquipment(Equipment wanted) {
        return new PartChoice(platforms, forbid, use, onHand, wanted);
    }
}
