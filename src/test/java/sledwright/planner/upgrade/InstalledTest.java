package sledwright.planner.upgrade;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.samples.Answers;
import sledwright.samples.Samples;

class InstalledTest {

    private static final Build BUILD = Samples.machine(Answers.BOX).processors(1, Answers.COOL).cooling(Samples.LOW).channels(4, Answers.R16).build();

    private static long credit(Lot... lots) {
        Map<String, List<Lot>> offers = new HashMap<>(Answers.SHOP.lots());
        offers.put("R16", List.of(lots));
        Catalog shop = Answers.SHOP.withLots(offers);
        return Installed.of(BUILD, 1, 0.5, Samples.limit().make(), shop).credit("R16");
    }

    /** A lot of 2000 minor units each, and of 800 from a given number of units on. */
    private static Lot lot(String name, int available, int from) {
        Lot plain = Samples.lot("R16", name, available, 2000);
        List<Lot.PriceBreak> breaks = new ArrayList<>(plain.breaks());
        breaks.add(new Lot.PriceBreak(from, 800, plain.breaks().get(0).unitCost()));
        return plain.with(available, breaks);
    }

    @Test
    void aPriceCountsOnlyWhereItsLotHasTheUnits() {
        assertThat(credit(lot("A", 4, 12))).isEqualTo(1000);
        assertThat(credit(lot("A", 12, 12))).isEqualTo(400);
        // Units of two lots do not add up to the quantity of one lot's price.
        assertThat(credit(lot("A", 8, 12), lot("B", 8, 12))).isEqualTo(1000);
        assertThat(credit(lot("A", 4, 12), Samples.lot("R16", "B", 1, 1500))).isEqualTo(750);
        assertThat(credit(Samples.lot("R16", "A", 0, 100))).isZero();
    }

    @Test
    void allCreditsAreThoseOfThePartsAndThePlatform() {
        Installed two = Installed.of(BUILD, 2, 1, Samples.limit().make(), Answers.SHOP);
        assertThat(two.creditOfMachines()).isEqualTo(2 * (two.creditOfParts() + two.credit("BOX")));
        assertThat(two.creditOfParts()).isEqualTo(two.credit("P10") + two.credit("LOW") + 2 * two.credit("PAIR") + 4 * two.credit("R16"));
    }
}
