package sledwright.planner.upgrade;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import sledwright.planner.upgrade.BenchStep.Action;
import sledwright.planner.upgrade.BenchStep.Part;

/**
 * How parts get from the places they have to the places they shall have, in three goes.
 *
 * @param out  what leaves
 * @param move what changes its place, so that each place is empty when something goes there
 * @param in   what comes in
 */
record Shifts(List<BenchStep> out, List<BenchStep> move, List<BenchStep> in) {

    private record Move(String sku, String from, String to) {
    }

    /**
     * @param before place -> sku, in order
     * @param after  place -> sku, in order
     */
    static Shifts of(Part part, Map<String, String> before, Map<String, String> after) {
        List<BenchStep> out = new ArrayList<>();
        List<Move> moves = new ArrayList<>();
        Map<String, List<String>> wanted = new LinkedHashMap<>();
        after.forEach((place, sku) -> {
            if (!sku.equals(before.get(place))) {
                wanted.computeIfAbsent(sku, key -> new ArrayList<>()).add(place);
            }
        });
        before.forEach((place, sku) -> {
            List<String> places = wanted.getOrDefault(sku, List.of());
            if (!sku.equals(after.get(place))) {
                if (places.isEmpty()) {
                    out.add(new BenchStep(Action.TAKE_OUT, part, sku, Optional.of(place), Optional.empty()));
                } else {
                    moves.add(new Move(sku, place, places.remove(0)));
                }
            }
        });
        List<BenchStep> in = new ArrayList<>();
        after.forEach((place, sku) -> {
            if (wanted.getOrDefault(sku, List.of()).contains(place)) {
                in.add(new BenchStep(Action.PUT_IN, part, sku, Optional.empty(), Optional.of(place)));
            }
        });
        return new Shifts(out, ordered(part, moves), in);
    }

    /** Each move once its place is empty; where moves wait for one another in a ring, one part is laid aside first. */
    private static List<BenchStep> ordered(Part part, List<Move> moves) {
        List<BenchStep> steps = new ArrayList<>();
        List<Move> waiting = new ArrayList<>(moves);
        List<Move> aside = new ArrayList<>();
        Set<String> taken = new HashSet<>();
        moves.forEach(move -> taken.add(move.from));
        while (!waiting.isEmpty() || !aside.isEmpty()) {
            Optional<Move> back = aside.stream().filter(move -> !taken.contains(move.to)).findFirst();
            Optional<Move> next = waiting.stream().filter(move -> !taken.contains(move.to)).findFirst();
            if (back.isPresent()) {
                aside.remove(back.get());
                steps.add(new BenchStep(Action.PUT_IN, part, back.get().sku, Optional.empty(), Optional.of(back.get().to)));
            } else if (next.isPresent()) {
                waiting.remove(next.get());
                taken.remove(next.get().from);
                steps.add(new BenchStep(Action.MOVE, part, next.get().sku, Optional.of(next.get().from), Optional.of(next.get().to)));
            } else {
                Move lifted = waiting.remove(0);
                aside.add(lifted);
                taken.remove(lifted.from);
                steps.add(new BenchStep(Action.LAY_ASIDE, part, lifted.sku, Optional.of(lifted.from), Optional.empty()));
            }
        }
        return steps;
    }
}
