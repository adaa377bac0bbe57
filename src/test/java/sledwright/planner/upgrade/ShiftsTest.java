package sledwright.planner.upgrade;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sledwright.planner.upgrade.BenchStep.Part;

class ShiftsTest {

    private static List<String> words(List<BenchStep> steps) {
        return steps.stream().map(step -> step.action().label() + " " + step.sku() + step.from().map(from -> " from " + from).orElse("")
                + step.to().map(to -> " to " + to).orElse("")).toList();
    }

    private static Map<String, String> places(String... entries) {
        Map<String, String> places = new LinkedHashMap<>();
        for (int i = 0; i < entries.length; i += 2) {
            places.put(entries[i], entries[i + 1]);
        }
        return places;
    }

    @Test
    void whatStaysIsLeftAlone() {
        Shifts shifts = Shifts.of(Part.MODULE, places("1A1", "M16", "1B1", "M8"), places("1A1", "M16", "1B1", "M32", "1C1", "M16"));
        assertThat(words(shifts.out())).containsExactly("take-out M8 from 1B1");
        assertThat(shifts.move()).isEmpty();
        assertThat(words(shifts.in())).containsExactly("put-in M32 to 1B1", "put-in M16 to 1C1");
    }

    @Test
    void aPlaceIsEmptyBeforeSomethingGoesThere() {
        Shifts shifts = Shifts.of(Part.MODULE, places("1A1", "M8", "1B1", "M16"), places("1B1", "M8", "1C1", "M16"));
        assertThat(words(shifts.move())).containsExactly("move M16 from 1B1 to 1C1", "move M8 from 1A1 to 1B1");
    }

    @Test
    void partsThatTradePlacesNeedOneLaidAside() {
        Shifts shifts = Shifts.of(Part.MODULE, places("1A1", "M8", "1B1", "M16"), places("1A1", "M16", "1B1", "M8"));
        assertThat(words(shifts.move())).containsExactly("lay-aside M8 from 1A1", "move M16 from 1B1 to 1A1", "put-in M8 to 1B1");
        assertThat(shifts.out()).isEmpty();
        assertThat(shifts.in()).isEmpty();
    }
}
