package sledwright.generator.draw;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.Request;
import sledwright.generator.Pieces;
import sledwright.generator.shape.GroupKind;
import sledwright.generator.time.Deadline;
import sledwright.metrics.CheapestDraw;
import sledwright.samples.Samples;

/** Draws of alike modules of different logical ranks, against every way to use them where their ranks suit. */
class EntangledDrawsTest {

    private static final int SEEDS = 120;
    private static final GroupKind LOW = new GroupKind(32, 1, 0, 7);
    private static final GroupKind HIGH = new GroupKind(32, 4, 0, 7);

    private record Way(long price, List<Draw.Share> shares) {
    }

    private final Map<MemoryModule, GroupKind> groupOf = new LinkedHashMap<>();
    private List<MemoryModule> modules;
    private Shelf shelf;
    private int machines;

    private EntangledDraws draws(SplittableRandom random) {
        groupOf.clear();
        machines = random.nextInt(1, 3);
        List<Lot> lots = new ArrayList<>();
        for (int i = random.nextInt(2, 4); i > 0; i--) {
            GroupKind group = i == 1 ? LOW : i == 2 ? HIGH : random.nextBoolean() ? LOW : HIGH;
            MemoryModule module = Samples.module("E" + i, 32).ranks(2, group.logicalRanks()).width(random.nextInt(4) == 0 ? 8 : 4).powerW(random.nextInt(2, 5)).make();
            groupOf.put(module, group);
            lots.add(Pieces.lot(module, random.nextInt(1, 6), random.nextBoolean() ? Map.of(1, (long) random.nextInt(1, 9))
                    : Map.of(1, (long) random.nextInt(4, 9), 3, (long) random.nextInt(1, 5))));
        }
        modules = List.copyOf(groupOf.keySet());
        shelf = Pieces.shelf(Request.named("entangled").withMachines(machines), modules, lots.toArray(Lot[]::new));
        Map<GroupKind, List<MemoryModule>> groups = new HashMap<>();
        groupOf.forEach((module, group) -> groups.computeIfAbsent(group, same -> new ArrayList<>()).add(module));
        return new EntangledDraws(groups, new KindDraws(shelf, Map.of(), new UnitCounts(machines, machines, 4), false), machines);
    }

    /** Units by module and group (low, high), with what they cost. */
    private List<Way> ways(int low, int high) {
        List<Way> ways = new ArrayList<>();
        extend(new int[modules.size()][2], 0, new int[] {low * machines, high * machines}, ways);
        return ways;
    }

    private void extend(int[][] units, int index, int[] left, List<Way> ways) {
        if (index == units.length) {
            if (left[0] == 0 && left[1] == 0 && kindsAreWhole(units)) {
                add(units, ways);
            }
            return;
        }
        int mostLow = groupOf.get(modules.get(index)).equals(LOW) ? left[0] : 0;
        for (int low = 0; low <= mostLow; low++) {
            for (int high = 0; high <= left[1]; high++) {
                units[index][0] = low;
                units[index][1] = high;
                extend(units, index + 1, new int[] {left[0] - low, left[1] - high}, ways);
            }
        }
        Arrays.fill(units[index], 0);
    }

    /** Every machine gets as many of each kind for each group. */
    private boolean kindsAreWhole(int[][] units) {
        Map<List<Object>, Integer> sums = new HashMap<>();
        for (int i = 0; i < units.length; i++) {
            for (int group = 0; group < 2; group++) {
                sums.merge(List.of(modules.get(i).kind(), group), units[i][group], Integer::sum);
            }
        }
        return sums.values().stream().allMatch(sum -> sum % machines == 0);
    }

    private void add(int[][] units, List<Way> ways) {
        long price = 0;
        List<Draw.Share> shares = new ArrayList<>();
        for (int i = 0; i < units.length; i++) {
            MemoryModule module = modules.get(i);
            price += CheapestDraw.prices(shelf.lots(module.sku()), units[i][0] + units[i][1])[units[i][0] + units[i][1]];
            for (int group = 0; group < 2; group++) {
                if (units[i][group] > 0) {
                    shares.add(new Draw.Share(new Draw.Alike(group == 0 ? LOW : HIGH, module.kind()), List.of(module), units[i][group], Watts.micro(module.powerW()), false));
                }
            }
        }
        if (price < CheapestDraw.IMPOSSIBLE) {
            ways.add(new Way(price, shares));
        }
    }

    private long heaviest(List<Draw.Share> shares) {
        return shares.isEmpty() ? 0 : Deal.heaviestMicrowatts(shares, machines);
    }

    @Test
    void everyWayIsMatchedByOneThatIsKept() {
        for (long seed = 1; seed <= SEEDS; seed++) {
            EntangledDraws draws = draws(new SplittableRandom(seed));
            assertThat(draws.groups()).containsExactly(LOW, HIGH);
            for (int low = 0; low <= 2; low++) {
                for (int high = 0; high <= 2; high++) {
                    String where = "seed %d, %d and %d of %s on %d machines".formatted(seed, low, high, groupOf, machines);
                    List<Draw> kept = draws.of(List.of(low, high));
                    List<Way> ways = ways(low, high);
                    assertThat(kept.isEmpty()).as(where).isEqualTo(ways.isEmpty());
                    ways.forEach(way -> assertThat(kept).as("%s: %s", where, way)
                            .anyMatch(draw -> draw.price() <= way.price && heaviest(draw.shares()) <= heaviest(way.shares)));
                    kept.forEach(draw -> {
                        assertThat(ways).as(where).anyMatch(way -> way.price == draw.price() && heaviest(way.shares) == heaviest(draw.shares()));
                        assertThat(draw.load().total()).as(where).isEqualTo(draw.shares().stream().mapToLong(share -> share.units() * share.microwatts()).sum());
                        assertThat(kept).as(where).noneMatch(other -> other != draw && other.price() <= draw.price() && other.load().heaviest() <= draw.load().lightest());
                    });
                }
            }
        }
    }
}
