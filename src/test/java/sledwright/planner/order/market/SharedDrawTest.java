package sledwright.planner.order.market;

import static org.assertj.core.api.Assertions.assertThat;
import static sledwright.samples.Samples.lot;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sledwright.domain.Condition;
import sledwright.domain.Lot;
import sledwright.domain.Pick;
import sledwright.metrics.CheapestDraw;

/** Against every way in which lots may be shared out, one unit after the other. */
class SharedDrawTest {

    private static final int CASES = 300;
    private static final int POOLS = 3;

    @Test
    void itIsTheCheapestOfAllWays() {
        int possible = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            List<OfferedLot> sources = sources(random);
            int[] need = random.ints(POOLS, 0, 4).toArray();
            SharedDraw draw = new SharedDraw(sources);
            long least = least(sources, 0, need, new HashMap<>());
            assertThat(draw.price(need)).as("seed %d", seed).isEqualTo(least);
            if (least < CheapestDraw.IMPOSSIBLE) {
                possible++;
                holds(seed, sources, need, draw.picks(need), least);
            } else {
                assertThat(draw.picks(need)).as("seed %d", seed).isNull();
            }
        }
        assertThat(possible).isBetween(CASES / 4, CASES - 1);
    }

    /** Half a percent dearer in all at most, although the lots are small and most have price breaks and least numbers of units. */
    @Test
    void whereWaysAreTooManyItIsHardlyDearerAndPossibleWhereItCanBe() {
        long all = 0;
        long dearer = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            List<OfferedLot> sources = sources(random);
            int[] need = random.ints(POOLS, 0, 4).toArray();
            long least = new SharedDraw(sources).price(need);
            SharedDraw draw = new SharedDraw(sources, 0);
            long price = draw.price(need);
            if (least < CheapestDraw.IMPOSSIBLE) {
                assertThat(price).as("seed %d", seed).isBetween(least, 2 * least);
                holds(seed, sources, need, draw.picks(need), price);
                all += least;
                dearer += price - least;
            } else {
                assertThat(price).as("seed %d", seed).isEqualTo(least);
            }
        }
        assertThat(dearer).isLessThan(all / 200);
    }

    /** What one pool takes first must not be what alone another accepts. */
    @Test
    void whereWaysAreTooManyItIsTheCheapestOfLotsWithoutPriceBreaks() {
        int possible = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            List<OfferedLot> sources = new ArrayList<>();
            for (int i = random.nextInt(3, 8); i > 0; i--) {
                boolean[] pools = {random.nextInt(3) > 0, random.nextInt(3) > 0, random.nextInt(3) > 0, random.nextInt(3) > 0};
                int available = random.nextInt(1, 8);
                sources.add(OfferedLot.of(lot("R16", "L" + i, available, random.nextInt(80, 130)), 0, pools, 0, available));
            }
            int[] need = random.ints(4, 0, 8).toArray();
            long least = new SharedDraw(sources, Long.MAX_VALUE / 1000).price(need);
            assertThat(new SharedDraw(sources, 0).price(need)).as("seed %d", seed).isEqualTo(least);
            possible += least < CheapestDraw.IMPOSSIBLE ? 1 : 0;
        }
        assertThat(possible).isBetween(CASES / 4, CASES - 1);
    }

    /** Every pool has what it needs, from lots that it accepts, and the lots' own prices come to the least. */
    private static void holds(long seed, List<OfferedLot> sources, int[] need, Map<Integer, List<Pick>> picks, long least) {
        Map<Lot, Integer> taken = new HashMap<>();
        for (int pool = 0; pool < POOLS; pool++) {
            int asked = pool;
            List<Pick> own = picks.getOrDefault(pool, List.of());
            assertThat(own.stream().mapToInt(Pick::quantity).sum()).as("seed %d, pool %d", seed, pool).isEqualTo(need[pool]);
            own.forEach(pick -> {
                assertThat(sources.stream().anyMatch(source -> source.lot().equals(pick.lot()) && source.pools()[asked])).as("seed %d", seed).isTrue();
                taken.merge(pick.lot(), pick.quantity(), Integer::sum);
            });
        }
        assertThat(taken.entrySet().stream().mapToLong(lot -> new Pick(lot.getKey(), lot.getValue()).total()).sum()).as("seed %d", seed).isEqualTo(least);
    }

    private static List<OfferedLot> sources(SplittableRandom random) {
        List<OfferedLot> sources = new ArrayList<>();
        for (int i = random.nextInt(1, 4); i > 0; i--) {
            int available = random.nextInt(1, 7);
            Map<Integer, Long> prices = new TreeMap<>();
            for (int step = random.nextInt(1, 3); step > 0; step--) {
                prices.put(random.nextInt(1, available + 1), (long) random.nextInt(10, 100));
            }
            boolean[] pools = {random.nextInt(3) > 0, random.nextInt(3) > 0, random.nextInt(3) > 0};
            sources.add(OfferedLot.of(lot("R16", "L" + i, available, 0, Condition.NEW, prices), 0, pools, 0, available));
        }
        return sources;
    }

    /** The least price at which the lots from some on meet the needs. */
    private static long least(List<OfferedLot> sources, int from, int[] need, Map<List<Integer>, Long> known) {
        if (from == sources.size()) {
            return need[0] + need[1] + need[2] == 0 ? 0 : CheapestDraw.IMPOSSIBLE;
        }
        List<Integer> key = List.of(from, need[0], need[1], need[2]);
        if (known.containsKey(key)) {
            return known.get(key);
        }
        OfferedLot source = sources.get(from);
        long least = CheapestDraw.IMPOSSIBLE;
        for (int a = 0; a <= (source.pools()[0] ? need[0] : 0); a++) {
            for (int b = 0; b <= (source.pools()[1] ? need[1] : 0); b++) {
                for (int c = 0; c <= (source.pools()[2] ? need[2] : 0); c++) {
                    if (source.lot().sells(a + b + c)) {
                        long own = a + b + c == 0 ? 0 : new Pick(source.lot(), a + b + c).total();
                        long rest = least(sources, from + 1, new int[] {need[0] - a, need[1] - b, need[2] - c}, known);
                        least = rest >= CheapestDraw.IMPOSSIBLE ? least : Math.min(least, own + rest);
                    }
                }
            }
        }
        known.put(key, least);
        return least;
    }
}
