package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.Card;
import sledwright.domain.CardSlot;
import sledwright.domain.Fitout;
import sledwright.domain.Request;
import sledwright.explain.Reasons;
import sledwright.planner.Judge;
import sledwright.planner.Judged;
import sledwright.words.Sentence;

/** What answers call needed: a controller or riser without which the second reading of the rules finds the machine's drives or cards at fault. */
class ReasonsAgainstReadingTest {

    private static final int SEEDS = 150;
    private static final Judge JUDGE = new Judge();

    @Test
    void whatIsCalledNeededIsNeeded() {
        int[] told = new int[2];
        List<String> wrong = new ArrayList<>();
        Seeds.fixed(SEEDS).mapToObj(RandomEquipment::of).forEach(that -> Agreement.search(that).ranked().forEach(order -> {
            Judged judged = JUDGE.judge(order);
            List<String> reasons = Reasons.of(judged).stream().map(Sentence::toString).toList();
            Build build = judged.heaviest().build();
            boolean controller = reasons.stream().anyMatch(reason -> reason.contains(" drives need controller "));
            if (controller != needsItsController(build, that.request())) {
                wrong.add("seed %s: %s and %s".formatted(that.seed(), reasons, build.fitout()));
            }
            for (CardSlot slot : build.platform().expansion().slots()) {
                if (slot.riser().isPresent() && build.fitout().cards().containsKey(slot.name())) {
                    boolean riser = reasons.stream().anyMatch(reason -> reason.startsWith("Riser " + slot.riser().get()) && reason.contains(" is needed for "));
                    told[1] += riser ? 1 : 0;
                    if (riser == standsWithout(build, slot.riser().get(), that.request())) {
                        wrong.add("seed %s: %s and %s".formatted(that.seed(), reasons, build.fitout()));
                    }
                }
            }
            told[0] += controller ? 1 : 0;
        }));
        assertThat(wrong).isEmpty();
        assertThat(told).as("controllers and risers that are called needed").doesNotContain(0);
    }

    private static boolean needsItsController(Build build, Request request) {
        Fitout fitout = build.fitout();
        Card driver = fitout.driver().map(fitout.cards()::get).orElse(null);
        List<String> others = new ArrayList<>(List.of("onboard"));
        fitout.cards().forEach((slot, card) -> {
            if (card.support().isPresent() && !card.equals(driver)) {
                others.add(slot);
            }
        });
        return driver != null && others.stream().allMatch(other -> FitoutReading.broken(build.with(
                new Fitout(fitout.volumes(), Optional.of(other), fitout.cards(), fitout.extras(), fitout.housed())), request).contains("volume-driver"));
    }

    /** Whether all cards of a machine have slots that need no such riser. */
    private static boolean standsWithout(Build build, String riser, Request request) {
        List<String> slots = build.platform().expansion().slots().stream().filter(slot -> !slot.riser().equals(Optional.of(riser))).map(CardSlot::name).toList();
        return seats(build, slots, new ArrayList<>(build.fitout().cards().values()), new TreeMap<>(), request);
    }

    private static boolean seats(Build build, List<String> slots, List<Card> left, Map<String, Card> bySlot, Request request) {
        Fitout fitout = build.fitout();
        if (left.isEmpty()) {
            return !FitoutReading.broken(build.with(new Fitout(fitout.volumes(), fitout.driver(), new TreeMap<>(bySlot), fitout.extras(), fitout.housed())), request)
                    .contains("card-slot");
        }
        for (String slot : slots) {
            if (!bySlot.containsKey(slot)) {
                bySlot.put(slot, left.get(0));
                boolean found = seats(build, slots, left.subList(1, left.size()), bySlot, request);
                bySlot.remove(slot);
                if (found) {
                    return true;
                }
            }
        }
        return false;
    }
}
