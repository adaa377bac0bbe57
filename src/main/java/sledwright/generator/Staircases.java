package sledwright.generator;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import sledwright.domain.Catalog;
import sledwright.domain.Energy;
import sledwright.domain.Objective;
import sledwright.domain.Request;
import sledwright.generator.memory.MemoryMarket;
import sledwright.generator.memory.MemoryPoint;
import sledwright.generator.time.Deadline;
import sledwright.rules.Order;

/**
 * Climbs the staircases of one request: the cheapest build, then the cheapest that is better in the figure, and so on until there
 * is none. Of equally cheap builds the best in the figure is taken, so each climb is a step. What costs time is worked out once and
 * serves all figures.
 */
public final class Staircases {

    private final Catalog catalog;
    private final Request request;
    private final MemoryMarket market;
    private final Assembler assembler;
    private final Map<Optional<Energy>, FamilyChoice> families = new HashMap<>();
    private final Map<MemoryPoint, Map<Frame, Order>> assembled = new IdentityHashMap<>();

    /** @param request asks for the cheapest */
    Staircases(Catalog catalog, Request request, MemoryMarket market) {
        this.catalog = catalog;
        this.request = request;
        this.market = market;
        assembler = new Assembler(catalog, request, market.shelf());
    }

    /**
     * The staircase of a figure over the price, or over the price and the energy.
     *
     * @param deadline ends the climb; the steps that it has by then stand
     */
    public Staircase of(Axis axis, Optional<Energy> energy, Deadline deadline) {
        // Over price and energy a build has the drives, cards and enclosures of the least total, as in a quote by it.
        Request asked = energy.isPresent() ? request.withObjective(Objective.LEAST_TOTAL) : request;
        Ranking ranking = new Ranking(asked, energy, axis.betterFirst());
        Query query = new Query(asked, families(asked, energy, ranking, deadline), ranking, deadline);
        List<Combination> steps = new ArrayList<>();
        int proved = 0;
        // Where a greater load may run cheaper, a build that was dropped as heavier and no cheaper may have been the one.
        Doubts doubts = energy.isEmpty() || Search.runsDearerUnderLoad(catalog) ? Doubts.NONE : Doubts.of(Doubts.Cause.EFFICIENCY);
        OptionalDouble bound = OptionalDouble.empty();
        Query.Answer answer = query.best(Zone.EVERYTHING);
        while (answer.best() != null) {
            Combination next = answer.best();
            if (doubts.none() && !answer.isFirst()) {
                doubts = answer.doubts();
                bound = OptionalDouble.of(Math.min(answer.openAim(), next.aim()));
            }
            // An earlier step that was not proved may prove to be none.
            while (!steps.isEmpty() && steps.get(steps.size() - 1).aim() >= next.aim()) {
                steps.remove(steps.size() - 1);
            }
            steps.add(next);
            proved = doubts.none() ? steps.size() : proved;
            answer = query.best(axis.beyond(next));
        }
        if (doubts.none() && !answer.isProved()) {
            doubts = answer.doubts();
            bound = OptionalDouble.of(answer.openAim());
        }
        return new Staircase(axis, steps.stream().map(step -> new Staircase.Step(order(step), (long) step.aim(), axis.of(step))).toList(),
                proved, doubts, bound);
    }

    private FamilyChoice families(Request asked, Optional<Energy> energy, Ranking ranking, Deadline deadline) {
        return families.computeIfAbsent(energy, same -> Families.of(catalog, asked, Set.of(), market, ranking, deadline));
    }

    private Order order(Combination step) {
        return assembled.computeIfAbsent(step.point(), point -> new IdentityHashMap<>())
                .computeIfAbsent(step.frame(), frame -> assembler.assemble(step));
    }
}
