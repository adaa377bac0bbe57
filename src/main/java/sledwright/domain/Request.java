package sledwright.domain;

import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a customer asks for: a number of identical machines.
 *
 * @param goal  what is best, and what a machine costs the customer beside its price
 * @param list  which builds are answered with
 * @param parts which parts they are of
 */
public record Request(String name, int machines, Requirements require, Limits limit, Goal goal, Shortlist list, PartChoice parts) {

    /** A request for one machine that asks for nothing yet. */
    public static Request named(String name) {
        return new Request(name, 1, Requirements.NONE, Limits.NONE, Goal.CHEAPEST, Shortlist.PLAIN, PartChoice.ANY);
    }

    public Set<String> platforms() {
        return parts.platforms();
    }

    public Objective objective() {
        return goal.objective();
    }

    public Worth worth() {
        return goal.worth();
    }

    public Licence licence() {
        return goal.licence();
    }

    public Optional<Energy> energy() {
        return goal.energy();
    }

    public int alternatives() {
        return list.alternatives();
    }

    public double step() {
        return list.step();
    }

    public Set<String> forbid() {
        return parts.forbid();
    }

    public Set<String> use() {
        return parts.use();
    }

    public Map<String, Integer> onHand() {
        return parts.onHand();
    }

    public Equipment equipment() {
        return parts.equipment();
    }

    /** The same under another name. */
    public Request withName(String other) {
        return new Request(other, machines, require, limit, goal, list, parts);
    }

    public Request withMachines(int count) {
        return new Request(name, count, require, limit, goal, list, parts);
    }

    public Request withRequire(Requirements figures) {
        return new Request(name, machines, figures, limit, goal, list, parts);
    }

    public Request withLimit(Limits limits) {
        return new Request(name, machines, require, limits, goal, list, parts);
    }

    public Request withGoal(Goal other) {
        return new Request(name, machines, require, limit, other, list, parts);
    }

    public Request withObjective(Objective aim) {
        return withGoal(goal.withObjective(aim));
    }

    public Request withEnergy(Optional<Energy> counted) {
        return withGoal(goal.withEnergy(counted));
    }

    public Request withAlternatives(int count, double share) {
        return new Request(name, machines, require, limit, goal, new Shortlist(count, share), parts);
    }

    public Request withParts(PartChoice choice) {
        return new Request(name, machines, require, limit, goal, list, choice);
    }

    public Request withPlatforms(Set<String> skus) {
        return withParts(parts.withPlatforms(skus));
    }

    public Request withForbid(Set<String> skus) {
        return withParts(parts.withForbid(skus));
    }

    public Request withUse(Set<String> skus) {
        return withParts(parts.withUse(skus));
    }

    /** The request whose machines must hold a part, too. */
    public Request using(String sku) {
        return withParts(parts.using(sku));
    }

    public Request withOnHand(Map<String, Integer> units) {
        return withParts(parts.withOnHand(units));
    }

    public Request withEquipment(Equipment wanted) {
        return withParts(parts.withEquipment(wanted));
    }
}
