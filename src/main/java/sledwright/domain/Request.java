package sledwright.domain;

import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a customer asks for: a number of identical machines.
 *
 * @param platforms    skus to choose from; empty: all
 * @param alternatives most builds to answer with, the best included
 * @param step         share by which an alternative must beat each better-ranked one in some figure
 * @param forbid       skus that must not be in a machine
 * @param use          skus that must be in every machine
 * @param onHand       sku -> units that the customer already has
 * @param equipment    drives, cards, extras and enclosures
 * @param energy       what electricity costs the customer; empty where nobody says
 */
public record Request(String name, int machines, Set<String> platforms, Requirements require, Limits limit,
                      Objective objective, Worth worth, Licence licence, int alternatives, double step,
                      Set<String> forbid, Set<String> use, Map<String, Integer> onHand, Equipment equipment, Optional<Energy> energy) {

    public static final int DEFAULT_ALTERNATIVES = 5;
    public static final double DEFAULT_STEP = 0.05;

    public Request {
        platforms = Set.copyOf(platforms);
        forbid = Set.copyOf(forbid);
        use = Set.copyOf(use);
        onHand = Map.copyOf(onHand);
    }

    /** A request that asks for no drives, cards and extras. */
    public Request(String name, int machines, Set<String> platforms, Requirements require, Limits limit,
                   Objective objective, Worth worth, Licence licence, int alternatives, double step,
                   Set<String> forbid, Set<String> use, Map<String, Integer> onHand) {
        this(name, machines, platforms, require, limit, objective, worth, licence, alternatives, step, forbid, use, onHand, Equipment.NONE);
    }

    /** A request that says nothing of electricity. */
    public Request(String name, int machines, Set<String> platforms, Requirements require, Limits limit,
                   Objective objective, Worth worth, Licence licence, int alternatives, double step,
                   Set<String> forbid, Set<String> use, Map<String, Integer> onHand, Equipment equipment) {
        this(name, machines, platforms, require, limit, objective, worth, licence, alternatives, step, forbid, use, onHand, equipment,
                Optional.empty());
    }

    /** A request for one machine that asks for nothing yet. */
    public static Request named(String name) {
        return new Request(name, 1, Set.of(), Requirements.NONE, Limits.NONE, Objective.CHEAPEST, Worth.NOTHING,
                Licence.NONE, DEFAULT_ALTERNATIVES, DEFAULT_STEP, Set.of(), Set.of(), Map.of());
    }

    public Request withMachines(int count) {
        return new Request(name, count, platforms, require, limit, objective, worth, licence, alternatives, step, forbid, use,
                onHand, equipment, energy);
    }

    public Request withPlatforms(Set<String> skus) {
        return new Request(name, machines, skus, require, limit, objective, worth, licence, alternatives, step, forbid, use,
                onHand, equipment, energy);
    }

    public Request withRequire(Requirements figures) {
        return new Request(name, machines, platforms, figures, limit, objective, worth, licence, alternatives, step, forbid, use,
                onHand, equipment, energy);
    }

    public Request withLimit(Limits limits) {
        return new Request(name, machines, platforms, require, limits, objective, worth, licence, alternatives, step, forbid, use,
                onHand, equipment, energy);
    }

    public Request withObjective(Objective aim) {
        return new Request(name, machines, platforms, require, limit, aim, worth, licence, alternatives, step, forbid, use,
                onHand, equipment, energy);
    }

    public Request withAlternatives(int count, double share) {
        return new Request(name, machines, platforms, require, limit, objective, worth, licence, count, share, forbid, use,
                onHand, equipment, energy);
    }

    public Request withForbid(Set<String> skus) {
        return new Request(name, machines, platforms, require, limit, objective, worth, licence, alternatives, step, skus, use,
                onHand, equipment, energy);
    }

    public Request withUse(Set<String> skus) {
        return new Request(name, machines, platforms, require, limit, objective, worth, licence, alternatives, step, forbid, skus,
                onHand, equipment, energy);
    }

    /** The request whose machines must hold a part, too. */
    public Request using(String sku) {
        Set<String> skus = new HashSet<>(use);
        skus.add(sku);
        return withUse(skus);
    }

    public Request withOnHand(Map<String, Integer> units) {
        return new Request(name, machines, platforms, require, limit, objective, worth, licence, alternatives, step, forbid, use,
                units, equipment, energy);
    }

    public Request withEquipment(Equipment wanted) {
        return new Request(name, machines, platforms, require, limit, objective, worth, licence, alternatives, step, forbid, use,
                onHand, wanted, energy);
    }

    public Request withEnergy(Optional<Energy> counted) {
        return new Request(name, machines, platforms, require, limit, objective, worth, licence, alternatives, step, forbid, use,
                onHand, equipment, counted);
    }
}
