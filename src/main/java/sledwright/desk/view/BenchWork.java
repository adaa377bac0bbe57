package sledwright.desk.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sledwright.domain.Board;
import sledwright.domain.Build;
import sledwright.domain.Slot;
import sledwright.planner.upgrade.BenchStep;
import sledwright.planner.upgrade.BenchStep.Action;
import sledwright.planner.upgrade.BenchStep.Part;
import sledwright.planner.upgrade.Equipping;
import sledwright.planner.upgrade.Refit;

/** What hands do with the parts of a machine, in their order; modules go in by {@link Slot#FILLING_ORDER}. */
public final class BenchWork {

    private BenchWork() {
    }

    /** The steps that put a machine together from its parts, from the board up as in a {@link Refit}. */
    public static List<BenchStep> of(Build build) {
        List<BenchStep> steps = new ArrayList<>();
        for (int socket = 0; socket < build.processors().size(); socket++) {
            steps.add(in(Part.PROCESSOR, build.processors().get(socket).sku(), "socket " + (socket + 1)));
        }
        for (int socket = 0; socket < build.processors().size(); socket++) {
            steps.add(in(Part.HEAT_SINK, build.cooling().sku(), "socket " + (socket + 1)));
        }
        build.modules().forEach((slot, module) -> steps.add(in(Part.MODULE, module.sku(), slot.name())));
        steps.addAll(Equipping.of(build.fitout()));
        build.supply().ifPresent(supply -> {
            for (int bay = 1; bay <= supply.count(); bay++) {
                steps.add(in(Part.SUPPLY, supply.sku(), "supply " + bay));
            }
        });
        return inFillingOrder(steps, build.platform().board());
    }

    /** The steps that change a machine. */
    public static List<BenchStep> of(Refit refit) {
        return inFillingOrder(refit.steps(), refit.after().platform().board());
    }

    private static BenchStep in(Part part, String sku, String place) {
        return new BenchStep(Action.PUT_IN, part, sku, Optional.empty(), Optional.of(place));
    }

    /**
     * Modules that go in one after another change places with each other; nothing passes a step of another kind, which may have to come
     * first.
     */
    private static List<BenchStep> inFillingOrder(List<BenchStep> steps, Board board) {
        List<BenchStep> ordered = new ArrayList<>(steps);
        int from = 0;
        while (from < ordered.size()) {
            int to = from;
            while (to < ordered.size() && fillsSlot(ordered.get(to))) {
                to++;
            }
            ordered.subList(from, to)
                    .sort(Comparator.comparing(step -> board.slot(step.to().orElseThrow()).orElseThrow(), Slot.FILLING_ORDER));
            from = to + 1;
        }
        return List.copyOf(ordered);
    }

    private static boolean fillsSlot(BenchStep step) {
        return step.part() == Part.MODULE && step.action() == Action.PUT_IN;
    }
}
