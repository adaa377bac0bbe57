package sledwright.generator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sledwright.domain.Energy;
import sledwright.domain.Goal;
import sledwright.domain.Licence;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.Objective;
import sledwright.domain.PartChoice;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Shortlist;
import sledwright.domain.Worth;
import sledwright.generator.draw.Shelf;
import sledwright.generator.draw.Watts;
import sledwright.generator.memory.Level;
import sledwright.generator.memory.MemoryFloor;
import sledwright.generator.memory.MemoryOption;
import sledwright.generator.memory.MemoryPoint;
import sledwright.generator.memory.MemoryPoints;
import sledwright.generator.memory.PriceFloor;
import sledwright.metrics.Bandwidth;
import sledwright.samples.Samples;

/** Aims, their order, and what no build goes below. */
class RankingTest {

    private static final Offset<Double> SAME = within(1e-3);
    /** 8760 hours a year, always at full load: 1 W is 8.76 kWh, 87.6 minor units at ten each. */
    private static final Energy ENERGY = new Energy(1, 10, 1);
    private static final Worth WORTH = new Worth(3, 2, 1, 0.5);
    private static final Processor TEN = Samples.processor("TEN").throughput(200).make();
    private static final MemoryModule M16 = Samples.module("M16", 16).powerW(4).make();
    private static final double CHANNEL_GBS = Bandwidth.ofChannelGbs(2400);

    private static Request ask(Objective objective) {
        return new Request("ask", 1, Samples.require().memoryGb(10).bandwidthGbs(5).make(), Samples.limit().make(),
                new Goal(objective, objective == Objective.BEST_VALUE ? WORTH : Worth.NOTHING, Licence.NONE), Shortlist.PLAIN, PartChoice.ANY);
    }

    private static Ranking ranking(Objective objective) {
        return new Ranking(ask(objective));
    }

    private static Ranking withEnergy() {
        return new Ranking(ask(Objective.CHEAPEST), Optional.of(ENERGY), (one, other) -> 0);
    }

    private static Combination build(double aim, long price, double throughput) {
        return Pieces.candidate(aim, price, throughput, 10, 50, 64, 100);
    }

    @Test
    void whatEachObjectiveMakesOfABuild() {
        Frame frame = Pieces.frame(TEN);
        MemoryPoint point = Pieces.point(500, 64, 16, 64, 4, 20, 0);
        assertThat(ranking(Objective.CHEAPEST).aim(frame, point, 1500, 76.8, 200)).isEqualTo(1500);
        assertThat(withEnergy().aim(frame, point, 1500, 76.8, 200)).isEqualTo(1500 + 10_512);
        assertThat(ranking(Objective.MOST_THROUGHPUT).aim(frame, point, 1500, 76.8, 200)).isEqualTo(-200);
        assertThat(ranking(Objective.MOST_BANDWIDTH).aim(frame, point, 1500, 76.8, 200)).isEqualTo(-76.8);
        assertThat(ranking(Objective.MOST_MEMORY).aim(frame, point, 1500, 76.8, 200)).isEqualTo(-64);
        // 10 cores at 3, 54 GB beyond the 10 asked for at 2, 71.8 GB/s at 1, throughput 200 at a half.
        assertThat(ranking(Objective.BEST_VALUE).aim(frame, point, 1500, 76.8, 200)).isEqualTo(1500 - 30 - 108 - 71.8 - 100, SAME);
    }

    @Test
    void energyOfALoad() {
        assertThat(withEnergy().energy(Optional.empty(), Watts.micro(120))).isEqualTo(10_512);
        assertThat(ranking(Objective.CHEAPEST).energy(Optional.empty(), Watts.micro(120))).isZero();
    }

    @Test
    void aLighterDealBringsTheEnergyDown() {
        Frame frame = Pieces.frame(TEN);
        MemoryPoint slack = Pieces.point(500, 64, 16, 64, 4, 25, 5);
        assertThat(withEnergy().aimIfLighter(frame, slack, 1500)).isEqualTo(1500 + 10_512);
        assertThat(withEnergy().aimIfLighter(frame, Pieces.point(500, 64, 16, 64, 4, 25, 0), 1500)).isInfinite();
        assertThat(ranking(Objective.CHEAPEST).aimIfLighter(frame, slack, 1500)).isInfinite();
    }

    @Test
    void figuresAreReportedWithTheirSign() {
        assertThat(ranking(Objective.CHEAPEST).reported(1500)).isEqualTo(1500);
        assertThat(ranking(Objective.BEST_VALUE).reported(-20)).isEqualTo(-20);
        assertThat(ranking(Objective.MOST_MEMORY).reported(-64)).isEqualTo(64);
        assertThat(List.of(Objective.values())).filteredOn(objective -> ranking(objective).isFigureAim())
                .containsExactlyInAnyOrder(Objective.MOST_THROUGHPUT, Objective.MOST_BANDWIDTH, Objective.MOST_MEMORY, Objective.MOST_WORK, Objective.MOST_CORES);
    }

    /** Aim, then what ties are broken by: each pair differs in one figure, all others speak for the second. */
    @Test
    void theOrderOfBuilds() {
        Ranking ranking = ranking(Objective.CHEAPEST);
        List<Combination> order = List.of(Pieces.candidate(1, 9, 1, 1, 1, 1, 9), Pieces.candidate(2, 9, 9, 1, 1, 1, 9), Pieces.candidate(2, 9, 8, 1, 9, 1, 9),
                Pieces.candidate(2, 9, 8, 1, 8, 9, 9), Pieces.candidate(2, 9, 8, 1, 8, 8, 7), Pieces.candidate(2, 9, 8, 9, 8, 8, 8), Pieces.candidate(2, 1, 8, 8, 8, 8, 8));
        assertThat(order).isSortedAccordingTo(ranking);
        for (int i = 1; i < order.size(); i++) {
            assertThat(ranking.compare(order.get(i), order.get(i - 1))).as("%d", i).isPositive();
        }
        Combination cheap = Pieces.candidate(2, 1, 1, 1, 1, 1, 9);
        assertThat(ranking(Objective.MOST_MEMORY).compare(cheap, order.get(1))).isNegative();
        Ranking tied = new Ranking(ask(Objective.CHEAPEST), Optional.empty(), Axis.LOAD.betterFirst());
        assertThat(tied.compare(order.get(4), order.get(1))).isNegative();
    }

    /** From where on a frame need not look at further memory. */
    @Test
    void whatIsHopeless() {
        Frame frame = Pieces.frame(TEN, 1000, 0, 300, 200, 100);
        Ranking cheapest = ranking(Objective.CHEAPEST);
        assertThat(cheapest.isHopeless(frame, 0, 1500, 200, build(1800, 1500, 200))).isFalse();
        assertThat(cheapest.isHopeless(frame, 0, 1501, 200, build(1800, 1500, 200))).isTrue();
        Ranking throughput = ranking(Objective.MOST_THROUGHPUT);
        assertThat(throughput.isHopeless(frame, 0, 1501, 200, build(-200, 1500, 200))).isTrue();
        assertThat(throughput.isHopeless(frame, 0, 1500, 200, build(-200, 1500, 200))).isFalse();
        assertThat(throughput.isHopeless(frame, 0, 1501, 200, build(-199, 1500, 199))).isFalse();
        for (Objective objective : List.of(Objective.MOST_BANDWIDTH, Objective.MOST_MEMORY)) {
            assertThat(ranking(objective).isHopeless(frame, -50, 1500, 200, build(-50, 1, 200))).isFalse();
            assertThat(ranking(objective).isHopeless(frame, -49.9, 1500, 200, build(-50, 1, 200))).isTrue();
        }
        Ranking value = ranking(Objective.BEST_VALUE);
        assertThat(value.isHopeless(frame, 100.00005, 1500, 200, build(100, 1, 200))).isFalse();
        assertThat(value.isHopeless(frame, 100.00015, 1500, 200, build(100, 1, 200))).isTrue();
    }

    @Test
    void framesThatPromiseMostComeFirst() {
        Frame cheap = Pieces.frame(TEN, 900, 10, 500, 150, 90);
        Frame dear = Pieces.frame(TEN, 1000, 200, 0, 250, 100);
        assertThat(ranking(Objective.CHEAPEST).ownAim(cheap)).isEqualTo(1400);
        assertThat(ranking(Objective.MOST_MEMORY).ownAim(cheap)).isEqualTo(900);
        assertThat(ranking(Objective.MOST_BANDWIDTH).ownAim(cheap)).isEqualTo(900);
        assertThat(ranking(Objective.MOST_THROUGHPUT).ownAim(cheap)).isEqualTo(-150);
        assertThat(ranking(Objective.BEST_VALUE).ownAim(cheap)).isEqualTo(890);
        assertThat(ranking(Objective.CHEAPEST).promisingFirst().compare(dear, cheap)).isNegative();
        assertThat(ranking(Objective.MOST_MEMORY).promisingFirst().compare(cheap, dear)).isNegative();
        assertThat(ranking(Objective.BEST_VALUE).promisingFirst().compare(dear, cheap)).isNegative();
        Frame same = Pieces.frame(TEN, 900, 10, 500, 150, 80);
        assertThat(ranking(Objective.CHEAPEST).promisingFirst().compare(same, cheap)).isNegative();
        Frame faster = Pieces.frame(TEN, 900, 10, 500, 160, 99);
        assertThat(ranking(Objective.CHEAPEST).promisingFirst().compare(faster, same)).isNegative();
        Frame dearer = Pieces.frame(TEN, 901, 10, 499, 170, 70);
        assertThat(ranking(Objective.CHEAPEST).promisingFirst().compare(faster, dearer)).isNegative();
        Frame cores = Pieces.frame(Samples.processor("C").cores(12).make(), 900, 10, 500, 150, 80);
        assertThat(ranking(Objective.CHEAPEST).promisingFirst().compare(cores, same)).isNegative();
    }

    @Test
    void pointsThatPromiseMostComeFirst() {
        MemoryPoint small = Pieces.point(100, 32, 32, 32, 1, 4, 0);
        MemoryPoint wide = Pieces.point(300, 64, 16, 64, 4, 16, 0);
        MemoryPoint large = Pieces.point(350, 128, 64, 128, 4, 16, 0);
        MemoryPoints points = new MemoryPoints(List.of(large, wide, small), 1);
        assertThat(ranking(Objective.CHEAPEST).order(points, 2400)).containsExactly(small, wide, large);
        assertThat(ranking(Objective.MOST_THROUGHPUT).order(points, 2400)).containsExactly(small, wide, large);
        assertThat(ranking(Objective.MOST_BANDWIDTH).order(points, 2400)).containsExactly(wide, large, small);
        assertThat(ranking(Objective.MOST_MEMORY).order(points, 2400)).containsExactly(large, wide, small);
        // Price less 2 a GB and 1 a GB/s: 100 - 64 - 19.2, 300 - 128 - 76.8 and 350 - 256 - 38.4, less what is asked for.
        assertThat(ranking(Objective.BEST_VALUE).order(points, 2400)).containsExactly(small, large, wide);
        assertThat(points.bandwidthGbs(wide, 2400)).isEqualTo(4 * CHANNEL_GBS, SAME);
        assertThat(wide.width()).isEqualTo(4);
    }

    /** Of equal price the widest, then the one with the most to use, the lightest, that of the fewest modules. */
    @Test
    void pointsOfEqualPrice() {
        MemoryPoint wide = Pieces.point(100, 64, 16, 10, 9, 30, 0);
        MemoryPoint usable = Pieces.point(100, 64, 32, 60, 9, 30, 0);
        MemoryPoint light = Pieces.point(100, 64, 32, 50, 9, 10, 0);
        MemoryPoint few = Pieces.point(100, 64, 32, 50, 4, 20, 0);
        MemoryPoint many = Pieces.point(100, 64, 32, 50, 8, 20, 0);
        assertThat(new MemoryPoints(List.of(many, few, light, usable, wide), 1).cheapestFirst()).containsExactly(wide, usable, light, few, many);
    }

    private static MemoryOption option() {
        Shelf shelf = Pieces.shelf(Request.named("option"), List.of(M16), Pieces.lot(M16, 12, 20));
        Level level = new Level(ModuleType.RDIMM, 0, 2400, Map.of(Pieces.group(16), List.of(M16)), List.of());
        PriceFloor prices = new PriceFloor(shelf, List.of(M16), 2);
        return new MemoryOption(level, 0, false, new MemoryOption.Extent(1, 1, 12, 4, 16, 1, 0), prices, () -> prices, (need, deadline) -> null);
    }

    /** One processor at 1000, modules of 16 GB at 20: what no build with so much memory and bandwidth goes below. */
    @Test
    void bounds() {
        MemoryOption option = option();
        Frame frame = Pieces.frame(TEN, 1000, 40, 300, 200, 100);
        MemoryFloor floor = option.coarse();
        // 40 GB are 50; three channels' width takes three modules, 60.
        assertThat(ranking(Objective.CHEAPEST).bound(frame, option, floor, 40, 0)).isEqualTo(1000 + 50 + 300);
        assertThat(ranking(Objective.CHEAPEST).bound(frame, option, floor, 41, 0)).isEqualTo(1000 + 52 + 300);
        assertThat(ranking(Objective.CHEAPEST).bound(frame, option, floor, 40, 2.5 * CHANNEL_GBS)).isEqualTo(1000 + 60 + 300);
        assertThat(ranking(Objective.MOST_THROUGHPUT).bound(frame, option, floor, 40, 0)).isEqualTo(-200);
        assertThat(ranking(Objective.MOST_BANDWIDTH).bound(frame, option, floor, 40, 0)).isEqualTo(-4 * CHANNEL_GBS, SAME);
        assertThat(ranking(Objective.MOST_MEMORY).bound(frame, option, floor, 40, 0)).isEqualTo(-192, SAME).isLessThan(-192);
        // 192 GB at 240 are worth 384; nothing is gained by what is asked for, 10 GB; at most 76.8 - 5 GB/s are, beyond it.
        assertThat(ranking(Objective.BEST_VALUE).bound(frame, option, floor, 40, 0)).isEqualTo(1000 - 40 + 240 - 384 + 2 * 10 - (4 * CHANNEL_GBS - 5), SAME);
    }

    @ParameterizedTest
    @EnumSource(Objective.class)
    void nothingIsWiderOrLargerThanItsSlots(Objective objective) {
        MemoryOption option = option();
        Frame frame = Pieces.frame(TEN);
        Ranking ranking = ranking(objective);
        MemoryFloor floor = option.coarse();
        assertThat(ranking.bound(frame, option, floor, 192, 4 * CHANNEL_GBS)).isFinite();
        assertThat(ranking.bound(frame, option, floor, 192.001, 0)).isInfinite();
        assertThat(ranking.bound(frame, option, floor, 10, 4 * CHANNEL_GBS + 0.001)).isInfinite();
        Frame limited = Pieces.frame(Samples.processor("L").maxMemoryGb(64).make());
        assertThat(ranking.bound(limited, option, floor, 64, 0)).isFinite();
        assertThat(ranking.bound(limited, option, floor, 64.001, 0)).isInfinite();
    }

    /** A limit of the price that the cheapest memory just keeps. */
    @Test
    void nothingBeyondTheMoney() {
        MemoryOption option = option();
        Frame frame = Pieces.frame(TEN, 1000, 0, 0, 200, 100);
        Request most = ask(Objective.MOST_MEMORY);
        assertThat(new Ranking(most.withLimit(Samples.limit().price(1050).make())).bound(frame, option, option.coarse(), 40, 0)).isEqualTo(-40, SAME);
        assertThat(new Ranking(most.withLimit(Samples.limit().price(1100).make())).bound(frame, option, option.coarse(), 40, 0)).isEqualTo(-80, SAME);
        assertThat(new Ranking(most.withLimit(Samples.limit().price(1049).make())).bound(frame, option, option.coarse(), 40, 0)).isInfinite();
        Frame limited = Pieces.frame(Samples.processor("L").maxMemoryGb(64).make());
        assertThat(ranking(Objective.MOST_MEMORY).bound(limited, option, option.coarse(), 40, 0)).isEqualTo(-64, SAME);
    }

    @Test
    void whatAnOptionGivesAtMost() {
        MemoryOption option = option();
        assertThat(option.mostUsableGb(1000)).isEqualTo(192);
        assertThat(option.mostUsableGb(100)).isEqualTo(100);
        assertThat(option.leastW(64)).isEqualTo(16);
        assertThat(option.mostWidth()).isEqualTo(4);
        assertThat(option.widestGbs(2133)).isEqualTo(4 * Bandwidth.ofChannelGbs(2133), SAME);
        assertThat(option.widestGbs(2666)).isEqualTo(4 * CHANNEL_GBS, SAME);
        assertThat(option.speedMts(2133)).isEqualTo(2133);
        assertThat(option.isKeptApart()).isFalse();
        assertThat(option.fine()).isSameAs(option.fine()).isNotSameAs(option.coarse());
    }

    /** A level is of use to the processors that are faster than the next. */
    @Test
    void whomAnOptionServes() {
        Level level = new Level(ModuleType.RDIMM, 0, 2400, Map.of(Pieces.group(16), List.of(M16)), List.of());
        PriceFloor prices = new PriceFloor(Pieces.shelf(Request.named("none"), List.of(M16)), List.of(M16), 0);
        MemoryOption option = new MemoryOption(level, 2133, true, new MemoryOption.Extent(1, 1, 12, 4, 16, 1, 0), prices, () -> prices, (need, deadline) -> null);
        assertThat(option.serves(2133)).isFalse();
        assertThat(option.serves(2400)).isTrue();
        assertThat(option.isKeptApart()).isTrue();
    }
}
