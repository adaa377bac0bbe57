package sledwright.planner.upgrade;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiPredicate;
import sledwright.domain.Fitout.Seat;
import sledwright.planner.upgrade.BenchStep.Part;

/**
 * Which drive goes where: a volume keeps its own drives before it takes those of another, and what stands in its bay stays there where it
 * can.
 */
final class DriveMoves {

    private static final String END = "\n";

    private final List<BiPredicate<Seat, Seat>> likeliestFirst = List.of(
            (was, will) -> was.bay().equals(will.bay()) && was.volume().equals(will.volume()),
            (was, will) -> was.volume().equals(will.volume()),
            (was, will) -> was.bay().equals(will.bay()),
            (was, will) -> true);

    private final Map<String, String> before = new LinkedHashMap<>();
    private final Map<String, String> after = new LinkedHashMap<>();

    private DriveMoves() {
    }

    static Shifts between(List<Seat> were, List<Seat> willBe) {
        DriveMoves moves = new DriveMoves();
        moves.pair(new ArrayList<>(were), new ArrayList<>(willBe));
        Shifts shifts = Shifts.of(Part.DRIVE, moves.inOrder(were, moves.before), moves.inOrder(willBe, moves.after));
        return new Shifts(named(shifts.out()), named(shifts.move()), named(shifts.in()));
    }

    /** Gives drives that are one before and after the same name of their own. */
    private void pair(List<Seat> were, List<Seat> willBe) {
        int number = 0;
        for (BiPredicate<Seat, Seat> likely : likeliestFirst) {
            for (Seat was : List.copyOf(were)) {
                Optional<Seat> found = willBe.stream().filter(will -> will.drive().equals(was.drive()) && likely.test(was, will))
                        .findFirst();
                if (found.isPresent()) {
                    name(was, before, number);
                    name(found.get(), after, number++);
                    were.remove(was);
                    willBe.remove(found.get());
                }
            }
        }
        for (Seat was : were) {
            name(was, before, number++);
        }
        for (Seat will : willBe) {
            name(will, after, number++);
        }
    }

    private static void name(Seat seat, Map<String, String> names, int number) {
        names.put(seat.bay(), seat.drive().sku() + END + number);
    }

    private Map<String, String> inOrder(List<Seat> seats, Map<String, String> names) {
        Map<String, String> ordered = new LinkedHashMap<>();
        seats.forEach(seat -> ordered.put(seat.bay(), names.get(seat.bay())));
        return ordered;
    }

    private static List<BenchStep> named(List<BenchStep> steps) {
        return steps.stream().map(step -> new BenchStep(step.action(), step.part(), step.sku().substring(0, step.sku().indexOf(END)),
                step.from(), step.to())).toList();
    }
}
