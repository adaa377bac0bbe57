package sledwright.generator.fitout;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sledwright.domain.Enclosure;
import sledwright.domain.Supply;

/** The cheapest enclosures for sleds of a load, and what completes machines of any load. */
class HousingsTest {

    private static final long WATT = 1_000_000;

    private static Enclosure enclosure(String sku, int bays, double baseW, double budgetW, Supply... supplies) {
        return new Enclosure(sku, sku, Set.of("BOX"), bays, baseW, budgetW, List.of(supplies));
    }

    private static Supply supply(String sku, double watts) {
        return new Supply(sku, sku, 1, 0, watts, watts, new TreeMap<>());
    }

    private static Housings housings(Chest chest, String... wanted) {
        return new Housings(chest.catalog(), chest.request(), chest.shelf(), Set.of(wanted));
    }

    private static Optional<String> cheapest(Chest chest, long watts, String... wanted) {
        return housings(chest, wanted).cheapest(chest.platform(), watts * WATT).map(priced -> "%d: %d x %s with %s".formatted(priced.price(),
                priced.housed().count(), priced.housed().enclosure().sku(), priced.housed().supply().sku()));
    }

    private static Chest two() {
        return new Chest().machines(3).enclosure(enclosure("E2", 2, 100, 0, supply("S1", 700), supply("S2", 1300))).offer("E2", 9, Map.of(1, 50L))
                .offer("S1", 9, Map.of(1, 10L)).offer("S2", 9, Map.of(1, 30L));
    }

    @Test
    void asManyAreBoughtAsBaysAndWattsTakeAll() {
        assertThat(cheapest(two(), 300)).contains("120: 2 x E2 with S1");
        assertThat(cheapest(two(), 301)).contains("160: 2 x E2 with S2");
        assertThat(cheapest(two(), 600)).contains("160: 2 x E2 with S2");
        assertThat(cheapest(two(), 601)).contains("240: 3 x E2 with S2");
        assertThat(cheapest(two(), 1200)).contains("240: 3 x E2 with S2");
        assertThat(cheapest(two(), 1201)).isEmpty();
        assertThat(cheapest(two().machines(2), 300)).contains("60: 1 x E2 with S1");
    }

    @Test
    void ofEquallyDearOnesThatOfFewerPartsIsBought() {
        Supply pair = new Supply("S2", "S2", 2, 1, 700, 700, new TreeMap<>());
        assertThat(cheapest(new Chest().enclosure(enclosure("E", 1, 0, 0, pair, supply("S1", 700))).offer("E", 9, Map.of(1, 50L)).offer("S1", 9, Map.of(1, 20L))
                .offer("S2", 9, Map.of(1, 10L)), 100)).contains("70: 1 x E with S1");
        assertThat(cheapest(new Chest().enclosure(enclosure("E", 1, 0, 0, supply("S1", 700), pair)).offer("E", 9, Map.of(1, 50L)).offer("S1", 9, Map.of(1, 20L))
                .offer("S2", 9, Map.of(1, 10L)), 100)).contains("70: 1 x E with S1");
        assertThat(cheapest(new Chest().enclosure(enclosure("E", 1, 0, 0, supply("S1", 700), supply("S3", 700))).offer("E", 9, Map.of(1, 50L))
                .offer("S1", 9, Map.of(1, 20L)).offer("S3", 9, Map.of(1, 20L)), 100)).contains("70: 1 x E with S1");
    }

    @Test
    void onlyEnclosuresThatTakeTheSledAndCanBeHadCount() {
        Enclosure other = new Enclosure("OTHER", "OTHER", Set.of("SLED"), 9, 0, 0, List.of(supply("S0", 9000)));
        Chest chest = two().enclosure(other).offer("OTHER", 9, Map.of(1, 1L)).offer("S0", 9, Map.of(1, 1L));
        assertThat(cheapest(chest, 300)).contains("120: 2 x E2 with S1");
        assertThat(housings(chest).edges(chest.platform())).containsExactly(300 * WATT, 600 * WATT, 1200 * WATT);
        assertThat(cheapest(new Chest().machines(2).enclosure(enclosure("E", 1, 0, 0, supply("S", 700))).offer("E", 1, Map.of(1, 1L)).offer("S", 9, Map.of(1, 1L)), 9))
                .isEmpty();
        assertThat(cheapest(new Chest().machines(2).enclosure(enclosure("E", 1, 0, 0, supply("S", 700))).offer("E", 9, Map.of(1, 1L)).offer("S", 1, Map.of(1, 1L)), 9))
                .isEmpty();
    }

    @Test
    void whatIsToBeUsedIsBought() {
        assertThat(cheapest(two(), 300, "S2")).contains("160: 2 x E2 with S2");
        assertThat(cheapest(two(), 300, "E2", "S1")).contains("120: 2 x E2 with S1");
        assertThat(cheapest(two(), 300, "S3")).isEmpty();
    }

    @Test
    void theEdgesAreWhereOneSledFewerIsFed() {
        Chest chest = new Chest().machines(2).enclosure(enclosure("E", 4, 100, 900, supply("S1", 1600), supply("S2", 500), supply("S3", 100), supply("S4", 90)));
        assertThat(housings(chest).edges(chest.platform())).containsExactly(0L, 200 * WATT, 400 * WATT, 800 * WATT);
    }

    @Test
    void enclosuresForHeavierSledsMayCostLess() {
        assertThat(housings(two()).rises(two().platform())).isTrue();
        Chest packs = new Chest().machines(2).enclosure(enclosure("E", 2, 0, 0, supply("S", 600))).offer("E", 9, Map.of(1, 50L, 2, 20L)).offer("S", 9, Map.of(1, 1L));
        assertThat(housings(packs).rises(packs.platform())).isFalse();
        Chest pairs = new Chest().machines(2).enclosure(enclosure("E", 2, 0, 0, supply("S", 600))).offer("E", 9, Map.of(2, 20L)).offer("S", 9, Map.of(1, 1L));
        assertThat(housings(pairs).rises(pairs.platform())).isFalse();
        Chest even = new Chest().machines(2).enclosure(enclosure("E", 2, 0, 0, supply("S", 600))).offer("E", 9, Map.of(1, 0L)).offer("S", 9, Map.of(1, 0L));
        assertThat(housings(even).rises(even.platform())).isTrue();
    }

    private static Fitted set(long price, long watts) {
        return new Fitted(new VolumePlan(price, watts * WATT, 0, 0, List.of(), Map.of()), Fitted.NOTHING.cards());
    }

    private static List<String> completions(Chest chest, long mostMicro, Fitted... sets) {
        return Completion.of(chest.platform(), List.of(sets), housings(chest), mostMicro).stream().map(one -> "%s to %s: %d, %d W%s".formatted(
                one.heavierThan() < 0 ? "-" : one.heavierThan() / WATT, one.atMost() == Completion.ANY_LOAD ? "any" : one.atMost() / WATT, one.price(),
                one.fitted().microwatts() / WATT, one.housed().map(housed -> " in " + housed.count()).orElse(""))).toList();
    }

    @Test
    void aLighterSetServesWhereTheCheaperOneIsTooHeavy() {
        Chest free = new Chest();
        assertThat(completions(free, 100 * WATT, set(50, 10), set(60, 4))).containsExactly("- to 90: 50, 10 W", "90 to 96: 60, 4 W");
        assertThat(completions(free, 100 * WATT, set(50, 10), set(60, 4), set(70, 101))).containsExactly("- to 90: 50, 10 W", "90 to 96: 60, 4 W");
        assertThat(completions(free, 100 * WATT, set(50, 100), set(60, 4))).containsExactly("- to 0: 50, 100 W", "0 to 96: 60, 4 W");
        assertThat(completions(free, Completion.ANY_LOAD, set(50, 10), set(60, 4))).containsExactly("- to any: 50, 10 W");
        assertThat(completions(free, 100 * WATT, set(50, 10))).containsExactly("- to any: 50, 10 W");
        assertThat(completions(free, 100 * WATT)).isEmpty();
        assertThat(completions(free, 100 * WATT, set(50, 10), set(50, 10))).containsExactly("- to 90: 50, 10 W");
        assertThat(completions(free, 100 * WATT, set(50, 10), set(50, 4))).containsExactly("- to 96: 50, 4 W");
    }

    @Test
    void enclosuresAreChosenTogetherWithTheSet() {
        assertThat(completions(two(), Completion.ANY_LOAD, set(5, 10))).containsExactly("- to 290: 125, 10 W in 2", "290 to 590: 165, 10 W in 2",
                "590 to 1190: 245, 10 W in 3");
        assertThat(completions(two(), Completion.ANY_LOAD, set(5, 10), set(25, 4))).containsExactly("- to 290: 125, 10 W in 2", "290 to 296: 145, 4 W in 2",
                "296 to 590: 165, 10 W in 2", "590 to 596: 185, 4 W in 2", "596 to 1190: 245, 10 W in 3", "1190 to 1196: 265, 4 W in 3");
        assertThat(completions(two(), 600 * WATT, set(5, 10))).containsExactly("- to 290: 125, 10 W in 2", "290 to 590: 165, 10 W in 2");
    }

    /** Supplies that nobody sells are edges, but nothing changes there. */
    @Test
    void whatGoesOnUnchangedIsOneCompletion() {
        Chest chest = new Chest().enclosure(enclosure("E", 1, 0, 0, supply("S", 700), supply("GONE", 300), supply("DEAR", 800))).offer("E", 9, Map.of(1, 50L))
                .offer("S", 9, Map.of(1, 10L)).offer("DEAR", 9, Map.of(1, 99L));
        assertThat(completions(chest, Completion.ANY_LOAD, set(5, 10))).containsExactly("- to 690: 65, 10 W in 1", "690 to 790: 154, 10 W in 1");
    }

    @Test
    void whatIsUnknownIsNotNothing() {
        assertThat(Completion.UNKNOWN.isKnown()).isFalse();
        assertThat(Completion.NOTHING.isKnown()).isTrue();
    }
}
