package sledwright.rules;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import sledwright.domain.PartKind;
import sledwright.domain.Request;

/**
 * A rule that a few parts break together whatever else is chosen. The search asks it as soon as these parts are chosen, before it
 * looks at populations, so that it needs no place of its own there.
 */
public abstract class PartRule extends Rule<Machine> {

    /** What is chosen one after the other before the memory. */
    private static final List<PartKind> FRAME = List.of(PartKind.PLATFORMS, PartKind.PROCESSORS, PartKind.COOLING, PartKind.SUPPLIES);
    private static final Set<PartKind> BOARD = EnumSet.of(PartKind.PLATFORMS, PartKind.MEMORY);

    /** A rule that no key of a request has to do with. */
    protected PartRule(String id, String law, PartKind first, PartKind... more) {
        this(id, law, EnumSet.of(first, more));
    }

    /**
     * @param concerns the kinds of part that it is about: of a platform, the number and part of its processors, its heat sink and its
     *                 supply; or of a platform and one module
     */
    protected PartRule(String id, String law, Set<PartKind> concerns, String... answersTo) {
        super(id, law, concerns, answersTo);
        if (!FRAME.containsAll(concerns) && !BOARD.containsAll(concerns)) {
            throw new IllegalArgumentException("rule %s is about %s, which are not chosen together".formatted(id, concerns));
        }
    }

    /** The kind of these that is chosen last. */
    final PartKind lastChosen() {
        return bars().contains(PartKind.MEMORY) ? PartKind.MEMORY
                : FRAME.stream().filter(bars()::contains).reduce((earlier, later) -> later).orElseThrow();
    }

    /** Whether the parts may stand in one machine that answers the request. */
    public abstract boolean allows(Parts parts, Request request);

    /** What is to be said of parts that are not allowed. */
    protected abstract List<Violation> breaches(Parts parts, Request request);

    /** Every way in which parts break it; empty: they are allowed. */
    public final List<Violation> judge(Parts parts, Request request) {
        return allows(parts, request) ? List.of() : breaches(parts, request);
    }

    @Override
    public List<Violation> judge(Machine machine) {
        return Parts.of(machine.build(), bars()).stream().flatMap(parts -> judge(parts, machine.request()).stream()).distinct().toList();
    }
}
