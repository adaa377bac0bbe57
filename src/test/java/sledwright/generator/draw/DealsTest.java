package sledwright.generator.draw;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import sledwright.domain.MemoryModule;
import sledwright.generator.Pieces;
import sledwright.samples.Samples;

/** Dealing, against every deal of a few units, and in rounds where there are many. */
class DealsTest {

    private static final int SEEDS = 400;

    private static Draw.Share share(int kind, int units, long microwatts, boolean everywhere) {
        MemoryModule module = Samples.module("R" + kind + "-" + microwatts + everywhere, 8 << kind).make();
        return new Draw.Share(new Draw.Alike(Pieces.group(module.capacityGb()), module.kind()), List.of(module), units, microwatts, everywhere);
    }

    /** Each kind in so many units that machines get equally many. */
    private static List<Draw.Share> random(SplittableRandom random, int machines) {
        List<Draw.Share> shares = new ArrayList<>();
        for (int kind = random.nextInt(1, 3) - 1; kind >= 0; kind--) {
            int left = machines * random.nextInt(1, machines == 2 ? 4 : 3);
            boolean first = true;
            while (left > 0) {
                boolean everywhere = first && left >= machines && random.nextInt(3) == 0;
                int units = everywhere ? random.nextInt(machines, left + 1) : random.nextInt(1, left + 1);
                shares.add(share(kind, units, random.nextInt(1, 7), everywhere));
                left -= units;
                first = false;
            }
        }
        return shares;
    }

    /** The least weight of the heaviest machine over every deal. */
    private static long least(List<Draw.Share> shares, int machines) {
        return least(shares, 0, new long[machines], new int[machines][2]);
    }

    private static long least(List<Draw.Share> shares, int share, long[] weights, int[][] hands) {
        if (share == shares.size()) {
            boolean equal = Arrays.stream(hands).allMatch(hand -> Arrays.equals(hand, hands[0]));
            return equal ? LongStream.of(weights).max().orElseThrow() : Long.MAX_VALUE;
        }
        return give(shares, share, 0, shares.get(share).units(), weights, hands);
    }

    private static long give(List<Draw.Share> shares, int share, int machine, int left, long[] weights, int[][] hands) {
        if (machine == weights.length) {
            return left == 0 ? least(shares, share + 1, weights, hands) : Long.MAX_VALUE;
        }
        Draw.Share of = shares.get(share);
        int kind = of.alike().kind().capacityGb() / 16;
        long least = Long.MAX_VALUE;
        for (int units = of.everywhere() ? 1 : 0; units <= left; units++) {
            weights[machine] += units * of.microwatts();
            hands[machine][kind] += units;
            least = Math.min(least, give(shares, share, machine + 1, left - units, weights, hands));
            weights[machine] -= units * of.microwatts();
            hands[machine][kind] -= units;
        }
        return least;
    }

    /** What a machine weighs; the deal must give every unit and every machine its hand. */
    private static long heaviest(List<Draw.Share> shares, int machines, List<int[]> dealt, String where) {
        long[] weights = new long[machines];
        int[][] hands = new int[machines][2];
        for (int i = 0; i < shares.size(); i++) {
            int[] units = dealt.get(i);
            Draw.Share share = shares.get(i);
            assertThat(IntStream.of(units).sum()).as(where).isEqualTo(share.units());
            assertThat(IntStream.of(units).min().orElseThrow()).as(where).isGreaterThanOrEqualTo(share.everywhere() ? 1 : 0);
            for (int machine = 0; machine < machines; machine++) {
                weights[machine] += units[machine] * share.microwatts();
                hands[machine][share.alike().kind().capacityGb() / 16] += units[machine];
            }
        }
        assertThat(List.of(hands)).as(where).allMatch(hand -> Arrays.equals(hand, hands[0]));
        return LongStream.of(weights).max().orElseThrow();
    }

    @Test
    void theHeaviestMachineIsAsLightAsInEveryDeal() {
        for (long seed = 1; seed <= SEEDS; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            int machines = random.nextInt(1, 4);
            List<Draw.Share> shares = random(random, machines);
            String where = "seed %d: %d machines of %s".formatted(seed, machines, shares);
            long least = least(shares, machines);
            assertThat(Deal.heaviestMicrowatts(shares, machines)).as(where).isEqualTo(least);
            assertThat(heaviest(shares, machines, Deal.deal(shares, machines), where)).as(where).isEqualTo(least);
        }
    }

    @Test
    void upToFortyEightUnitsAreDealtExactly() {
        assertThat(Deal.isExact(48)).isTrue();
        assertThat(Deal.isExact(49)).isFalse();
    }

    /** Many units: each kind by itself, the heaviest first, and every other kind in reverse, so that no machine gets the heavy of both. */
    @Test
    void roundsGiveEachMachineTheHeavyOfAnotherKind() {
        List<Draw.Share> shares = List.of(share(0, 13, 2, false), share(0, 13, 5, false), share(1, 13, 5, false), share(1, 13, 2, false));
        List<int[]> dealt = Deal.deal(shares, 2);
        assertThat(dealt).containsExactly(new int[] {6, 7}, new int[] {7, 6}, new int[] {6, 7}, new int[] {7, 6});
        assertThat(Deal.deal(List.of(share(0, 50, 5, false), share(1, 4, 5, false), share(2, 1, 5, false), share(2, 1, 4, false)), 2))
                .containsExactly(new int[] {25, 25}, new int[] {2, 2}, new int[] {1, 0}, new int[] {0, 1});
        assertThat(heaviest(shares, 2, dealt, "rounds")).isEqualTo(2 * 13 * 7 / 2);
    }

    @Test
    void whatEveryMachineMustHoldIsDealtFirst() {
        List<Draw.Share> shares = List.of(share(0, 5, 9, true), share(0, 46, 3, false), share(0, 0, 4, false));
        List<int[]> dealt = Deal.deal(shares, 3);
        assertThat(dealt).containsExactly(new int[] {2, 2, 1}, new int[] {15, 15, 16}, new int[] {0, 0, 0});
    }

    /** Rounds weigh what the search took them to weigh, or less. */
    @Test
    void roundsAreNoHeavierThanTheSearchTakesThemToBe() {
        for (long seed = 1; seed <= SEEDS; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            int machines = random.nextInt(2, 9);
            List<Draw.Share> shares = new ArrayList<>();
            int left = machines * random.nextInt(48 / machines + 1, 60);
            while (left > 0) {
                int units = random.nextInt(1, left + 1);
                shares.add(share(0, units, random.nextInt(1, 90), false));
                left -= units;
            }
            long[] heaviestFirst = shares.stream().sorted(Comparator.comparingLong(share -> -share.microwatts()))
                    .flatMapToLong(share -> LongStream.generate(share::microwatts).limit(share.units())).toArray();
            long rounds = IntStream.iterate(0, unit -> unit < heaviestFirst.length, unit -> unit + machines).mapToLong(unit -> heaviestFirst[unit]).sum();
            String where = "seed %d: %d machines of %s".formatted(seed, machines, shares);
            assertThat(heaviest(shares, machines, Deal.deal(shares, machines), where)).as(where).isEqualTo(rounds);
        }
    }
}
