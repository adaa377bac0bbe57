package sledwright.generator.fitout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import sledwright.domain.Condition;
import sledwright.domain.Drive;
import sledwright.domain.DriveInterface;
import sledwright.domain.DriveKind;
import sledwright.domain.FormFactor;
import sledwright.domain.Labour;
import sledwright.domain.Lot;
import sledwright.domain.Request;
import sledwright.generator.draw.Shelf;
import sledwright.generator.time.Deadline;
import sledwright.generator.time.OutOfTimeException;
import sledwright.metrics.CheapestDraw;
import sledwright.samples.Equipped;
import sledwright.samples.Samples;

/** Draws of alike drives against every way to split them over their part numbers. */
class DriveDrawsTest {

    private static final long WATT = 1_000_000;

    /** Three part numbers of one kind, of which some agree in watts, each with a lot or two that may have price breaks or be sold in packs. */
    private static final class Case {

        private final Random random;
        private final List<Drive> drives = new ArrayList<>();
        private final Map<String, List<Lot>> lots = new TreeMap<>();

        Case(long seed) {
            random = new Random(seed * 7_919 + 3);
            for (String sku : List.of("D1", "D2", "D3")) {
                drives.add(Equipped.drive(sku, DriveKind.SSD, DriveInterface.SATA, FormFactor.SMALL, 480, 3 + random.nextInt(3)));
                List<Lot> own = new ArrayList<>();
                for (int lot = random.nextInt(3); lot >= 0; lot--) {
                    TreeMap<Integer, Long> breaks = new TreeMap<>(Map.of(random.nextInt(5) == 0 ? 2 : 1, 5L + random.nextInt(8)));
                    if (random.nextInt(3) == 0) {
                        breaks.put(3 + random.nextInt(3), 3L + random.nextInt(4));
                    }
                    own.add(Samples.lot(sku, sku + lot, 1 + random.nextInt(6), 0, Condition.USED, breaks));
                }
                lots.put(sku, own);
            }
        }

        Shelf shelf() {
            return new Shelf(Samples.catalog(List.of(), List.of(), List.of(), lots.values().stream().flatMap(List::stream).toArray(Lot[]::new)),
                    Request.named("draws"));
        }

        DriveDraws draws(Map<String, Integer> wanted, int machines, long perDrive, boolean everyWeight) {
            return new DriveDraws(shelf(), new Labour(0, 0, perDrive, 0), wanted, machines, drives, everyWeight);
        }

        /** Price and microwatts of every split of a number of units that takes at least what is wanted. */
        List<long[]> splits(int units, Map<String, Integer> wanted) {
            List<long[]> found = new ArrayList<>();
            for (int one = 0; one <= units; one++) {
                for (int two = 0; one + two <= units; two++) {
                    int[] taken = {one, two, units - one - two};
                    long price = 0;
                    long watts = 0;
                    for (int i = 0; i < taken.length; i++) {
                        String sku = drives.get(i).sku();
                        long own = taken[i] < wanted.getOrDefault(sku, 0) ? CheapestDraw.IMPOSSIBLE : CheapestDraw.prices(lots.get(sku), units)[taken[i]];
                        price = own >= CheapestDraw.IMPOSSIBLE || price >= CheapestDraw.IMPOSSIBLE ? CheapestDraw.IMPOSSIBLE : price + own;
                        watts += taken[i] * Math.round(drives.get(i).powerW() * WATT);
                    }
                    if (price < CheapestDraw.IMPOSSIBLE) {
                        found.add(new long[] {price, watts});
                    }
                }
            }
            return found;
        }

        TreeSet<String> front(int units, Map<String, Integer> wanted) {
            List<long[]> all = splits(units, wanted);
            TreeSet<String> front = new TreeSet<>();
            all.stream().filter(one -> all.stream().noneMatch(other -> other[0] <= one[0] && other[1] <= one[1]
                    && (other[0] < one[0] || other[1] < one[1]))).forEach(one -> front.add(one[0] + " for " + one[1]));
            return front;
        }
    }

    @Test
    void oneMachineHasEveryDrawThatNoneBeats() {
        for (long seed = 0; seed < 150; seed++) {
            Case one = new Case(seed);
            Map<String, Integer> wanted = seed % 3 == 0 ? Map.of("D2", 1) : Map.of();
            DriveDraws draws = one.draws(wanted, 1, 0, false);
            for (int units = 1; units <= 7; units++) {
                TreeSet<String> found = new TreeSet<>();
                draws.of(units, Deadline.never()).forEach(way -> found.add(way.price() + " for " + way.heaviest()));
                assertThat(found).as("seed %s, %s units", seed, units).isEqualTo(one.front(units, wanted));
                assertThat(draws.of(units, Deadline.never()).stream().mapToLong(DriveDraws.Way::price).findFirst().orElse(CheapestDraw.IMPOSSIBLE)).as("seed %s, %s units", seed, units).isEqualTo(
                        one.splits(units, wanted).stream().mapToLong(split -> split[0]).min().orElse(CheapestDraw.IMPOSSIBLE));
            }
        }
    }

    @Test
    void everyWeightIsKeptAtItsLeastPriceWhereItIsOfUse() {
        for (long seed = 0; seed < 60; seed++) {
            Case one = new Case(seed);
            DriveDraws draws = one.draws(Map.of(), 1, 0, true);
            Map<Long, Long> found = new TreeMap<>();
            draws.of(4, Deadline.never()).forEach(way -> found.put(way.heaviest(), way.price()));
            Map<Long, Long> least = new TreeMap<>();
            one.splits(4, Map.of()).forEach(split -> least.merge(split[1], split[0], Math::min));
            assertThat(found).as("seed %s", seed).isEqualTo(least);
            assertThat(draws.improvesBeyond(4, Deadline.never())).isTrue();
        }
    }

    @Test
    void drawsForVeryManyMachinesEndWithTheTime() {
        Case one = new Case(1);
        one.lots.replaceAll((sku, lots) -> List.of(Samples.lot(sku, sku, 100_000, 0, Condition.USED, new TreeMap<>(Map.of(1, 5L)))));
        one.drives.replaceAll(drive -> Equipped.drive(drive.sku(), DriveKind.SSD, DriveInterface.SATA, FormFactor.SMALL, 480,
                3 + one.drives.indexOf(drive)));
        DriveDraws draws = one.draws(Map.of(), 3000, 0, false);
        Deadline over = Deadline.in(Duration.ZERO);
        assertThatThrownBy(() -> draws.of(6000, over)).isInstanceOf(OutOfTimeException.class);
        assertThatThrownBy(() -> draws.improvesBeyond(2, over)).isInstanceOf(OutOfTimeException.class);
    }

    @Test
    void theHeaviestMachineIsAsDealt() {
        for (long seed = 0; seed < 150; seed++) {
            Case one = new Case(seed);
            int machines = 2 + (int) (seed % 2);
            Map<String, Integer> wanted = seed % 3 == 0 ? Map.of("D2", machines) : seed % 3 == 1 ? Map.of("D2", 1) : Map.of();
            DriveDraws draws = one.draws(wanted, machines, 0, false);
            List<DriveDraws.Way> ways = draws.of(2 * machines, Deadline.never());
            assertThat(ways.isEmpty()).as("seed %s", seed).isEqualTo(one.splits(2 * machines, wanted).isEmpty());
            for (DriveDraws.Way way : ways) {
                List<List<Drive>> drawn = new ArrayList<>();
                for (int i = 0; i < draws.sources().size(); i++) {
                    drawn.add(Collections.nCopies(way.bySource()[i], draws.sources().get(i).drives().get(0)));
                }
                List<List<Drive>> hands = draws.dealt(way, drawn);
                String about = "seed %s, %s".formatted(seed, hands);
                assertThat(hands).as(about).hasSize(machines).allMatch(hand -> hand.size() == 2);
                List<Long> watts = hands.stream().map(hand -> hand.stream().mapToLong(drive -> Math.round(drive.powerW() * WATT)).sum()).toList();
                assertThat(watts.stream().mapToLong(Long::longValue).max()).as(about).hasValue(way.heaviest());
                assertThat(watts.get(0)).as(about + ": the heaviest first").isEqualTo(way.heaviest());
                if (wanted.getOrDefault("D2", 0) == machines) {
                    assertThat(hands).as(about).allMatch(hand -> hand.stream().anyMatch(drive -> drive.sku().equals("D2")));
                }
                long distinct = hands.stream().flatMap(List::stream).map(Drive::powerW).distinct().count();
                assertThat(way.uneven()).as(about).isEqualTo((int) distinct - 1);
                assertThat(way.range()).as(about).isEqualTo(Math.round(WATT * (hands.stream().flatMap(List::stream).mapToDouble(Drive::powerW).max().orElse(0)
                        - hands.stream().flatMap(List::stream).mapToDouble(Drive::powerW).min().orElse(0))));
            }
            assertThat(ways.stream().mapToLong(DriveDraws.Way::price).min()).as("seed %s", seed)
                    .isEqualTo(one.splits(2 * machines, wanted).stream().mapToLong(split -> split[0]).min());
        }
    }

    /** One drive more is of use where it costs or loads less than every draw without it, its labour counted. */
    @Test
    void oneDriveMoreIsOfUseWhereNothingWithoutItIsAsGood() {
        for (long seed = 0; seed < 150; seed++) {
            Case one = new Case(seed);
            long labour = seed % 4;
            DriveDraws draws = one.draws(Map.of(), 1, labour, false);
            for (int each = 1; each <= 5; each++) {
                List<long[]> fewer = one.splits(each, Map.of());
                boolean of = one.splits(each + 1, Map.of()).stream().anyMatch(more -> fewer.stream()
                        .noneMatch(less -> less[0] <= more[0] + labour && less[1] <= more[1]));
                assertThat(draws.improvesBeyond(each, Deadline.never())).as("seed %s, %s drives", seed, each).isEqualTo(of);
            }
        }
    }

    @Test
    void floorsAreThoseOfTheCheapestLotAndTheLightestDrive() {
        Case one = new Case(5);
        DriveDraws draws = one.draws(Map.of(), 1, 0, false);
        assertThat(draws.leastUnitPrice()).isEqualTo(one.lots.values().stream().flatMap(List::stream).flatMap(lot -> lot.breaks().stream())
                .mapToLong(Lot.PriceBreak::unitPrice).min().orElseThrow());
        assertThat(draws.leastMicrowatts()).isEqualTo(Math.round(WATT * one.drives.stream().mapToDouble(Drive::powerW).min().orElseThrow()));
        assertThat(draws.drives().map(Drive::sku)).containsExactlyInAnyOrder("D1", "D2", "D3");
    }
}
