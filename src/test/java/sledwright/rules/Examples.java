package sledwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import sledwright.samples.MachineSketch;

/** Offenders and innocents of one rule, side by side, each with what the whole rulebook is to say of it. */
final class Examples {

    /** A finding that an offender must draw: where, and the whole sentence. */
    record Finding(String where, String sentence) {
    }

    /**
     * A machine, a filled enclosure or an order under judgement.
     *
     * @param name     what it is, in words
     * @param judged   every breach that the rulebook finds
     * @param findings the breaches of the rule in question, all of them; empty: the example is innocent
     * @param others   identifiers of other rules that it cannot help breaking
     */
    record Example(String name, List<Violation> judged, List<Finding> findings, Set<String> others, boolean offends) {

        List<Finding> found(String rule) {
            return judged.stream().filter(violation -> violation.rule().equals(rule))
                    .map(violation -> new Finding(violation.where(), violation.message())).toList();
        }

        /** Identifiers of the rules that the rulebook finds broken, {@code rule} aside. */
        Set<String> foundBeside(String rule) {
            Set<String> ids = new TreeSet<>();
            judged.forEach(violation -> ids.add(violation.rule()));
            ids.remove(rule);
            return ids;
        }
    }

    private final List<Example> examples = new ArrayList<>();

    private Examples() {
    }

    static Examples offender(String name, MachineSketch machine) {
        return new Examples().andOffender(name, machine);
    }

    static Examples offender(String name, Order order) {
        return new Examples().andOffender(name, order);
    }

    static Examples offender(String name, Housing housing) {
        return new Examples().andOffender(name, housing);
    }

    Examples andOffender(String name, MachineSketch machine) {
        return add(name, Rulebook.judge(machine.make()), true);
    }

    Examples andOffender(String name, Order order) {
        return add(name, Rulebook.judge(order), true);
    }

    Examples andOffender(String name, Housing housing) {
        return add(name, Rulebook.judge(housing), true);
    }

    Examples innocent(String name, MachineSketch machine) {
        return add(name, Rulebook.judge(machine.make()), false);
    }

    Examples innocent(String name, Order order) {
        return add(name, Rulebook.judge(order), false);
    }

    Examples innocent(String name, Housing housing) {
        return add(name, Rulebook.judge(housing), false);
    }

    /** The last example draws this finding, too. */
    Examples says(String where, String sentence) {
        last().findings().add(new Finding(where, sentence));
        return this;
    }

    /** The last example breaks these other rules as well, and no further one. */
    Examples alsoBreaks(String... rules) {
        last().others().addAll(Set.of(rules));
        return this;
    }

    List<Example> all() {
        return List.copyOf(examples);
    }

    private Examples add(String name, List<Violation> judged, boolean offends) {
        examples.add(new Example(name, judged, new ArrayList<>(), new TreeSet<>(), offends));
        return this;
    }

    private Example last() {
        return examples.get(examples.size() - 1);
    }
}
