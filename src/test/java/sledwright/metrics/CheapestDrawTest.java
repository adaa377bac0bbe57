package sledwright.metrics;

import static org.assertj.core.api.Assertions.assertThat;
import static sledwright.samples.Samples.lot;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sledwright.domain.Condition;
import sledwright.domain.Lot;
import sledwright.domain.Pick;

class CheapestDrawTest {

    @Test
    void theCheaperLotFirst() {
        List<Lot> lots = List.of(lot("R16", "A", 5, 2_000), lot("R16", "B", 5, 1_800));
        assertThat(CheapestDraw.prices(lots, 10)).containsExactly(0, 1_800, 3_600, 5_400, 7_200, 9_000, 11_000, 13_000, 15_000, 17_000, 19_000);
        assertThat(CheapestDraw.picks(lots, 7)).containsExactly(new Pick(lots.get(0), 2), new Pick(lots.get(1), 5));
    }

    /** From 4 on a unit costs 15.00: four cost 60.00, and so do three at 20.00. */
    @Test
    void aPriceBreakHoldsForAllUnitsOfTheLot() {
        List<Lot> lots = List.of(withBreaks("A", 10, Map.of(1, 2_000L, 4, 1_500L)));
        assertThat(CheapestDraw.prices(lots, 5)).containsExactly(0, 2_000, 4_000, 6_000, 6_000, 7_500);
    }

    /** Six units: 5 of A at 15.00 and 1 of B at 17.00; one more of A's lower price beats one more of B. */
    @Test
    void splitsSoThatABreakIsReached() {
        List<Lot> lots = List.of(withBreaks("A", 5, Map.of(1, 2_000L, 4, 1_500L)), lot("R16", "B", 9, 1_700));
        assertThat(CheapestDraw.prices(lots, 9)[6]).isEqualTo(9_200);
        assertThat(CheapestDraw.picks(lots, 6)).containsExactly(new Pick(lots.get(0), 5), new Pick(lots.get(1), 1));
    }

    @Test
    void exactlySoManyUnitsAndNoFewerThanALotSells() {
        List<Lot> lots = List.of(withBreaks("A", 8, Map.of(4, 1_000L)));
        assertThat(CheapestDraw.prices(lots, 4)).containsExactly(0, CheapestDraw.IMPOSSIBLE, CheapestDraw.IMPOSSIBLE, CheapestDraw.IMPOSSIBLE, 4_000);
        assertThat(CheapestDraw.picks(lots, 3)).isNull();
    }

    @Test
    void noMoreThanThereIs() {
        List<Lot> lots = List.of(lot("R16", "A", 2, 2_000), lot("R16", "B", 1, 1_800));
        assertThat(CheapestDraw.prices(lots, 4)).containsExactly(0, 1_800, 3_800, 5_800, CheapestDraw.IMPOSSIBLE);
        assertThat(CheapestDraw.picks(lots, 4)).isNull();
        assertThat(CheapestDraw.picks(List.of(), 0)).isEmpty();
        assertThat(CheapestDraw.picks(List.of(), 1)).isNull();
    }

    @Test
    void ownPartsAreFree() {
        List<Lot> lots = List.of(Lot.onHand("R16", 3), lot("R16", "A", 9, 2_000));
        assertThat(CheapestDraw.prices(lots, 4)).containsExactly(0, 0, 0, 0, 2_000);
    }

    @Test
    void ofEqualPricesTheEarlierLot() {
        List<Lot> lots = List.of(lot("R16", "A", 5, 2_000), lot("R16", "B", 5, 2_000));
        assertThat(CheapestDraw.picks(lots, 4)).containsExactly(new Pick(lots.get(0), 4));
    }

    /** Random lots with breaks, minimum quantities and rising as well as falling price lists, against trying every split. */
    @Test
    void agreesWithTryingEverySplit() {
        for (long seed = 1; seed <= 400; seed++) {
            Random random = new Random(seed);
            List<Lot> lots = randomLots(random);
            int most = 12;
            long[] prices = CheapestDraw.prices(lots, most);
            for (int units = 0; units <= most; units++) {
                String what = "seed %d, %d units of %s".formatted(seed, units, lots);
                long exhaustive = cheapest(lots, 0, units);
                assertThat(prices[units]).as(what).isEqualTo(exhaustive);
                List<Pick> picks = CheapestDraw.picks(lots, units);
                if (exhaustive == CheapestDraw.IMPOSSIBLE) {
                    assertThat(picks).as(what).isNull();
                } else {
                    assertThat(picks.stream().mapToInt(Pick::quantity).sum()).as(what).isEqualTo(units);
                    assertThat(picks.stream().mapToLong(Pick::total).sum()).as(what).isEqualTo(exhaustive);
                    assertThat(picks).as(what).allMatch(pick -> pick.quantity() > 0 && pick.lot().sells(pick.quantity()));
                }
            }
        }
    }

    private static long cheapest(List<Lot> lots, int from, int units) {
        if (from == lots.size()) {
            return units == 0 ? 0 : CheapestDraw.IMPOSSIBLE;
        }
        Lot lot = lots.get(from);
        long best = cheapest(lots, from + 1, units);
        for (int taken = 1; taken <= units; taken++) {
            if (taken <= lot.available() && taken >= lot.minQuantity()) {
                long rest = cheapest(lots, from + 1, units - taken);
                if (rest < CheapestDraw.IMPOSSIBLE) {
                    best = Math.min(best, rest + unitPrice(lot, taken) * taken);
                }
            }
        }
        return best;
    }

    private static long unitPrice(Lot lot, int quantity) {
        long price = 0;
        for (Lot.PriceBreak line : lot.breaks()) {
            if (quantity >= line.minQuantity()) {
                price = line.unitPrice();
            }
        }
        return price;
    }

    private static List<Lot> randomLots(Random random) {
        List<Lot> lots = new ArrayList<>();
        for (int i = 0; i < random.nextInt(4); i++) {
            Map<Integer, Long> prices = new TreeMap<>();
            for (int line = 0; line <= random.nextInt(3); line++) {
                prices.put(1 + random.nextInt(6), (long) random.nextInt(8));
            }
            lots.add(withBreaks("L" + i, random.nextInt(9), prices));
        }
        return lots;
    }

    private static Lot withBreaks(String name, int available, Map<Integer, Long> prices) {
        return lot("R16", name, available, 0, Condition.NEW, prices);
    }
}
