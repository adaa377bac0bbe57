package sledwright.report.build;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sledwright.domain.Fitout;
import sledwright.domain.Volume;
import sledwright.planner.upgrade.BenchStep;
import sledwright.planner.upgrade.BenchStep.Action;
import sledwright.planner.upgrade.BenchStep.Part;
import sledwright.words.Numbers;
import sledwright.words.Sentences;

/** Words for what is done at the bench. */
public final class BenchText {

    private BenchText() {
    }

    /** One sentence for each step; like steps that follow each other share one. */
    public static List<String> sentences(List<BenchStep> steps) {
        List<List<BenchStep>> groups = new ArrayList<>();
        for (BenchStep step : steps) {
            List<BenchStep> last = groups.isEmpty() ? List.of() : groups.get(groups.size() - 1);
            if ((step.action() != Action.MOVE || step.part() == Part.CABLE) && !last.isEmpty() && isLike(last.get(0), step)) {
                last.add(step);
            } else {
                groups.add(new ArrayList<>(List.of(step)));
            }
        }
        return groups.stream().map(BenchText::sentence).toList();
    }

    private static boolean isLike(BenchStep one, BenchStep other) {
        return one.action() == other.action() && one.part() == other.part() && one.sku().equals(other.sku());
    }

    private static String list(List<String> items) {
        int last = items.size() - 1;
        return last == 0 ? items.get(0) : String.join(", ", items.subList(0, last)) + " and " + items.get(last);
    }

    /** Whether drives go in or hang on another driver, so that volumes are to be looked at. */
    public static boolean touchVolumes(List<BenchStep> steps) {
        return steps.stream().anyMatch(step -> step.part() == Part.DRIVE && step.action() == Action.PUT_IN || step.part() == Part.CABLE);
    }

    /** What is to be done about the volumes where anything about them has changed. */
    public static List<String> volumes(Fitout fitout, boolean touched, boolean fresh) {
        return touched ? fitout.volumes().stream().map(volume -> volume(fitout, volume, fresh)).toList() : List.of();
    }

    private static String volume(Fitout fitout, Volume volume, boolean fresh) {
        List<String> bays = fitout.seats().stream().filter(seat -> seat.volume().equals(volume.name())).map(Fitout.Seat::bay).toList();
        int data = volume.drives().size();
        String spares = volume.hotSpares().isEmpty() ? ""
                : " with %s as hot spare".formatted(Sentences.list(bays.subList(data, bays.size())));
        return "Volume %s: level %s on %s%s, %s GB usable. %s".formatted(volume.name(), volume.level().label(),
                Sentences.list(bays.subList(0, data)), spares, Numbers.plain(volume.usableGb()), fresh ? "Set it up."
                : "Set it up only where it is not so yet: that empties its drives.");
    }

    private static String driver(Optional<String> place) {
        return place.orElseThrow().equals(Fitout.ONBOARD) ? "the board" : "the controller in slot " + place.get();
    }

    /** One step. */
    public static String sentence(BenchStep step) {
        return sentence(List.of(step));
    }

    private static String sentence(List<BenchStep> like) {
        BenchStep first = like.get(0);
        List<String> named = like.stream().map(step -> step.from().or(step::to).orElseThrow()).toList();
        String places = list(named);
        String what = (like.size() == 1 ? "" : like.size() + " x ") + first.sku();
        String processors = (like.size() == 1 ? "processor " : like.size() + " processors ") + first.sku();
        String heatSinks = (like.size() == 1 ? "heat sink " : like.size() + " heat sinks ") + first.sku();
        String them = like.size() == 1 ? "it" : "them";
        return switch (first.part()) {
            case MODULE -> inPlaces(what, "slot", like, String.join(", ", named));
            case PROCESSOR -> inPlaces(processors, "", like, places);
            case HEAT_SINK -> switch (first.action()) {
                case TAKE_OUT -> "Take %s off %s.".formatted(heatSinks, places);
                case LAY_ASIDE -> "Take %s off %s and lay %s aside.".formatted(heatSinks, places, them);
                case MOVE -> "Move %s from %s to %s.".formatted(heatSinks, first.from().orElseThrow(), first.to().orElseThrow());
                case PUT_IN -> "Put %s on %s.".formatted(heatSinks, places);
            };
            case DRIVE -> inPlaces(what, "bay", like, String.join(", ", named));
            case CARD -> inPlaces("card " + what, "slot", like, String.join(", ", named));
            case CABLE -> first.action() == Action.MOVE
                    ? "Move the cables of %s from %s to %s.".formatted(what, driver(first.from()), driver(first.to()))
                    : "Connect %s to %s.".formatted(what, driver(first.to()));
            case EXTRA -> first.action() == BenchStep.Action.TAKE_OUT ? "Take off %s.".formatted(what) : "Add %s.".formatted(what);
            case SUPPLY -> switch (first.action()) {
                case TAKE_OUT -> "Pull %s (%s).".formatted(what, places);
                case LAY_ASIDE -> "Pull %s (%s) and lay %s aside.".formatted(what, places, them);
                case MOVE -> "Move %s from %s to %s.".formatted(what, first.from().orElseThrow(), first.to().orElseThrow());
                case PUT_IN -> "Put in %s (%s).".formatted(what, places);
            };
        };
    }

    /** @param place what a place is called; empty where that is in its name */
    private static String inPlaces(String what, String place, List<BenchStep> like, String named) {
        BenchStep first = like.get(0);
        String one = place.isEmpty() ? "" : place + " ";
        String all = (place.isEmpty() || like.size() == 1 ? one : place + "s ") + named;
        return switch (first.action()) {
            case TAKE_OUT -> "Take %s out of %s.".formatted(what, all);
            case LAY_ASIDE -> "Lay %s from %s aside.".formatted(what, all);
            case MOVE -> "Move %s from %s%s to %s%s.".formatted(what, one, first.from().orElseThrow(), one, first.to().orElseThrow());
            case PUT_IN -> "Put %s into %s.".formatted(what, all);
        };
    }
}
