package sledwright.planner.allot;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.optaplanner.core.api.score.director.ScoreDirector;
import org.optaplanner.core.impl.heuristic.move.AbstractMove;

/** Several promises are kept in other ways, all at once. */
final class GivingMove extends AbstractMove<AllotmentPlan> {

    private static final String VARIABLE = "filling";

    private final Map<PromisedMachines, Filling> given;

    GivingMove(Map<PromisedMachines, Filling> given) {
        this.given = given;
    }

    @Override
    public boolean isMoveDoable(ScoreDirector<AllotmentPlan> director) {
        return given.entrySet().stream().anyMatch(one -> one.getKey().filling() != one.getValue());
    }

    @Override
    protected GivingMove createUndoMove(ScoreDirector<AllotmentPlan> director) {
        Map<PromisedMachines, Filling> before = new LinkedHashMap<>();
        given.keySet().forEach(machines -> before.put(machines, machines.filling()));
        return new GivingMove(before);
    }

    @Override
    protected void doMoveOnGenuineVariables(ScoreDirector<AllotmentPlan> director) {
        given.forEach((machines, filling) -> {
            director.beforeVariableChanged(machines, VARIABLE);
            machines.give(filling);
            director.afterVariableChanged(machines, VARIABLE);
        });
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof GivingMove move && given.equals(move.given);
    }

    @Override
    public int hashCode() {
        return Objects.hash(given);
    }

    @Override
    public String toString() {
        return given.entrySet().stream().map(one -> "%s -> %s".formatted(one.getKey().name(), one.getValue().units()))
                .collect(Collectors.joining(", "));
    }
}
