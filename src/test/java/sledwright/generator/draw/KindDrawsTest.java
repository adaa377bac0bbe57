package sledwright.generator.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.Request;
import sledwright.generator.Pieces;
import sledwright.generator.time.Deadline;
import sledwright.generator.time.OutOfTimeException;
import sledwright.metrics.CheapestDraw;
import sledwright.samples.Samples;

/** Draws of modules that are alike but for their watts, against every way to draw them. */
class KindDrawsTest {

    private static final int SEEDS = 150;

    /**
     * A shop of a few alike modules, of one kind or two.
     *
     * @param wanted sku -> units that all machines must take: one, or one each
     */
    private record Stock(int machines, int unitsPerModule, int mostModules, List<MemoryModule> modules, Map<String, Integer> wanted,
                         Shelf shelf) {

        static Stock random(SplittableRandom random, int kinds, boolean exact, boolean wantsSome) {
            int machines = exact ? random.nextInt(2, 4) : random.nextInt(1, 4);
            int mostModules = exact ? random.nextInt(1, 4) : machines == 1 ? random.nextInt(1, 5) : 1 + 48 / machines;
            List<MemoryModule> modules = new ArrayList<>();
            List<Lot> lots = new ArrayList<>();
            Map<String, Integer> wanted = new TreeMap<>();
            for (int i = random.nextInt(2, 5); i > 0; i--) {
                MemoryModule module = Samples.module("M" + i, 16).width(i % kinds == 0 ? 4 : 8).powerW(random.nextInt(2, 6)).make();
                modules.add(module);
                TreeMap<Integer, Long> prices = new TreeMap<>(Map.of(1, (long) random.nextInt(1, 12)));
                if (random.nextBoolean()) {
                    prices.put(random.nextInt(2, 5), (long) random.nextInt(1, 8));
                }
                lots.add(Pieces.lot(module, random.nextInt(1, 10), prices));
                if (wantsSome && random.nextInt(3) == 0) {
                    wanted.put(module.sku(), random.nextBoolean() ? machines : 1);
                }
            }
            Request request = Request.named("draw").withMachines(machines);
            Shelf shelf = Pieces.shelf(request, modules, lots.toArray(Lot[]::new));
            return new Stock(machines, machines, mostModules, modules, wanted, shelf);
        }

        KindDraws draws() {
            return new KindDraws(shelf, wanted, new UnitCounts(machines, unitsPerModule, mostModules), false);
        }

        long price(MemoryModule module, int units) {
            return CheapestDraw.prices(shelf.lots(module.sku()), units)[units];
        }

        /** Units of each module -> price, for every way to draw the units of a given number of modules. */
        Map<List<Integer>, Long> ways(int count) {
            Map<List<Integer>, Long> ways = new LinkedHashMap<>();
            extend(new int[modules.size()], 0, count * unitsPerModule, ways);
            return ways;
        }

        private void extend(int[] units, int index, int left, Map<List<Integer>, Long> ways) {
            if (index == units.length) {
                if (left == 0 && kindsAreWhole(units)) {
                    long price = IntStream.range(0, units.length).mapToLong(i -> price(modules.get(i), units[i])).sum();
                    if (price < CheapestDraw.IMPOSSIBLE) {
                        ways.put(Arrays.stream(units).boxed().toList(), price);
                    }
                }
                return;
            }
            for (int some = wanted.getOrDefault(modules.get(index).sku(), 0); some <= left; some++) {
                units[index] = some;
                extend(units, index + 1, left - some, ways);
            }
        }

        private boolean kindsAreWhole(int[] units) {
            return modules.stream().map(MemoryModule::kind).distinct().allMatch(kind -> IntStream.range(0, units.length)
                    .filter(i -> modules.get(i).kind().equals(kind)).map(i -> units[i]).sum() % unitsPerModule == 0);
        }

        List<Draw.Share> shares(List<Integer> units) {
            List<Draw.Share> shares = new ArrayList<>();
            for (int i = 0; i < units.size(); i++) {
                MemoryModule module = modules.get(i);
                if (units.get(i) > 0) {
                    shares.add(new Draw.Share(new Draw.Alike(Pieces.group(16), module.kind()), List.of(module), units.get(i), Watts.micro(module.powerW()),
                            wanted.getOrDefault(module.sku(), 0) >= machines));
                }
            }
            return shares;
        }
    }

    /** The draws of each number of modules, the last first: none hangs on what was asked before. What was known beforehand is right. */
    private static List<List<Draw>> each(CountedDraws draws, int mostModules) {
        AtomicLong bytes = new AtomicLong();
        LinkedList<List<Draw>> each = new LinkedList<>();
        for (int modules = mostModules; modules >= 0; modules--) {
            List<Draw> some = draws.of(modules, Deadline.never(), bytes::addAndGet);
            assertThat(draws.leastPrice(modules)).isEqualTo(some.stream().mapToLong(Draw::price).min().orElse(CheapestDraw.IMPOSSIBLE));
            long light = draws.leastMicrowatts(modules);
            assertThat(some).allMatch(draw -> light <= draw.load().lightest() && light <= draw.load().heaviest() - draw.load().range());
            each.addFirst(some);
        }
        long all = bytes.get();
        assertThat(all).isGreaterThanOrEqualTo(each.stream().mapToLong(Draw::bytes).sum());
        assertThat(draws.of(mostModules, Deadline.never(), bytes::addAndGet)).isSameAs(each.getLast());
        assertThat(bytes).as("asked again").hasValue(all);
        return each;
    }

    private static long dealt(List<Draw.Share> shares, List<Draw.Share> beside, int machines) {
        List<Draw.Share> all = new ArrayList<>(shares);
        all.addAll(beside);
        return all.isEmpty() ? 0 : Deal.heaviestMicrowatts(all, machines);
    }

    /** Whatever is drawn beside it, some draw that is kept is as cheap and as light as any way there is; and none is kept for nothing. */
    @Test
    void everyWayIsMatchedByOneThatIsKept() {
        for (long seed = 1; seed <= SEEDS; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            Stock stock = Stock.random(random, random.nextInt(1, 3), true, seed % 3 == 0);
            List<List<Draw>> draws = each(stock.draws().ofGroup(Pieces.group(16), stock.modules, Deadline.never()), stock.mostModules);
            assertThat(draws).hasSize(stock.mostModules + 1);
            for (int count = 0; count <= stock.mostModules; count++) {
                List<Draw> kept = draws.get(count);
                Map<List<Integer>, Long> ways = stock.ways(count);
                String where = "seed %d, %d modules of %s".formatted(seed, count, stock);
                assertThat(kept.isEmpty()).as(where).isEqualTo(ways.isEmpty());
                List<Draw.Share> beside = beside(random, stock.machines);
                ways.forEach((units, price) -> {
                    long light = dealt(stock.shares(units), beside, stock.machines);
                    assertThat(kept).as("%s: %s at %d", where, units, price)
                            .anyMatch(draw -> draw.price() <= price && dealt(draw.shares(), beside, stock.machines) <= light);
                });
                for (Draw draw : kept) {
                    long bought = draw.shares().stream().mapToLong(share -> CheapestDraw.prices(KindDraws.lots(stock.shelf, share.modules()), share.units())[share.units()]).sum();
                    assertThat(draw.price()).as(where).isEqualTo(bought);
                    assertThat(draw.shares().stream().mapToInt(Draw.Share::units).sum()).as(where).isEqualTo(count * stock.unitsPerModule);
                    assertThat(draw.shares()).as(where).allMatch(share -> share.units() > 0);
                    assertThat(draw.shares()).filteredOn(Draw.Share::everywhere).allMatch(share -> share.units() >= stock.machines);
                    assertThat(kept).as(where).noneMatch(other -> other != draw && other.price() <= draw.price()
                            && other.load().heaviest() <= draw.load().lightest());
                }
            }
        }
    }

    /** Units of another kind, of unequal watts, that machines share. */
    private static List<Draw.Share> beside(SplittableRandom random, int machines) {
        MemoryModule module = Samples.module("B", 64).make();
        Draw.Alike alike = new Draw.Alike(Pieces.group(64), module.kind());
        return random.nextInt(3) == 0 ? List.of() : List.of(new Draw.Share(alike, List.of(module), 1, random.nextInt(1, 5) * 1_000_000L, false),
                new Draw.Share(alike, List.of(module), machines - 1, random.nextInt(1, 5) * 1_000_000L, false));
    }

    /** Beyond the number that is dealt exactly, and for one machine, each way is weighed as dealt in rounds. */
    @Test
    void inRoundsEveryWayIsMatchedByOneThatIsKept() {
        for (long seed = 1; seed <= SEEDS; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            Stock stock = Stock.random(random, 1, false, seed % 3 == 0);
            KindDraws draws = stock.draws();
            List<List<Draw>> kept = each(draws.ofGroup(Pieces.group(16), stock.modules, Deadline.never()), stock.mostModules);
            Draw.Alike alike = new Draw.Alike(Pieces.group(16), stock.modules.get(0).kind());
            assertThat(kept).hasSize(stock.mostModules + 1);
            for (int count = 0; count <= Math.min(stock.mostModules, 9); count++) {
                String where = "seed %d, %d modules of %s".formatted(seed, count, stock);
                List<Draw> some = kept.get(count);
                Map<List<Integer>, Long> ways = stock.ways(count);
                assertThat(some.isEmpty()).as(where).isEqualTo(ways.isEmpty());
                ways.forEach((units, price) -> {
                    long heavy = rounds(stock, units);
                    assertThat(some).as("%s: %s at %d", where, units, price).anyMatch(draw -> draw.price() <= price && draw.load().heaviest() <= heavy);
                });
                assertThat(some).as(where).isSortedAccordingTo(Comparator.comparingLong(Draw::price));
                some.forEach(draw -> assertThat(some).as(where).noneMatch(other -> other != draw && other.price() <= draw.price()
                        && other.load().heaviest() <= draw.load().heaviest()));
            }
            assertThat(draws.sources(alike, stock.modules)).isSortedAccordingTo(Comparator.comparingLong(KindDraws.Source::microwatts).reversed());
        }
    }

    /** Watts of the heaviest machine when units that every machine must get are dealt first and the others, the heaviest first, in rounds. */
    private static long rounds(Stock stock, List<Integer> units) {
        long heaviest = 0;
        List<Long> free = new ArrayList<>();
        for (Draw.Share share : stock.shares(units)) {
            heaviest += share.everywhere() ? share.microwatts() : 0;
            for (int unit = 0; unit < share.free(stock.machines); unit++) {
                free.add(share.microwatts());
            }
        }
        free.sort(Comparator.reverseOrder());
        for (int unit = 0; unit < free.size(); unit += stock.machines) {
            heaviest += free.get(unit);
        }
        return heaviest;
    }

    /** Three machines, two modules each: one of 5 W in every machine, and two of 4 W and one of 3 W among them. */
    @Test
    void howTheWattsOfADrawFall() {
        List<MemoryModule> modules = List.of(Samples.module("W5", 16).powerW(5).make(), Samples.module("W4", 16).powerW(4).make(),
                Samples.module("W3", 16).powerW(3).make());
        Shelf shelf = Pieces.shelf(Request.named("load").withMachines(3), modules, Pieces.lot(modules.get(0), 9, 10), Pieces.lot(modules.get(1), 9, 10),
                Pieces.lot(modules.get(2), 9, 10));
        KindDraws draws = new KindDraws(shelf, Map.of("W5", 3), new UnitCounts(3, 3, 3), false);
        List<KindDraws.Source> sources = draws.sources(new Draw.Alike(Pieces.group(16), modules.get(0).kind()), modules);
        assertThat(sources).extracting(KindDraws.Source::microwatts).containsExactly(5_000_000L, 4_000_000L, 3_000_000L);
        assertThat(sources).extracting(KindDraws.Source::most).containsExactly(9, 9, 9);
        assertThat(draws.load(sources, new int[] {3, 2, 1})).isEqualTo(new Draw.Load(26_000_000, 8_000_000, 9_000_000, 2_000_000, 2));
        assertThat(draws.load(sources, new int[] {4, 2, 0})).isEqualTo(new Draw.Load(28_000_000, 9_000_000, 10_000_000, 1_000_000, 1));
        assertThat(draws.load(sources, new int[] {3, 0, 0})).isEqualTo(new Draw.Load(15_000_000, 5_000_000, 5_000_000, 0, 0));
        assertThat(draws.load(sources, new int[] {5, 2, 2})).isEqualTo(new Draw.Load(39_000_000, 11_000_000, 14_000_000, 2_000_000, 2));
        KindDraws lightWanted = new KindDraws(shelf, Map.of("W3", 3), new UnitCounts(3, 3, 3), false);
        List<KindDraws.Source> others = lightWanted.sources(new Draw.Alike(Pieces.group(16), modules.get(0).kind()), modules);
        assertThat(lightWanted.load(others, new int[] {2, 1, 3})).isEqualTo(new Draw.Load(23_000_000, 7_000_000, 8_000_000, 2_000_000, 2));
        assertThat(KindDraws.rounds(0, 3)).isZero();
        assertThat(KindDraws.rounds(3, 3)).isEqualTo(1);
        assertThat(KindDraws.rounds(4, 3)).isEqualTo(2);
    }

    /** What a shop has is little beside what thousands of machines could hold. */
    @Test
    void veryManyMachinesTakeNoLongerThanThereAreParts() {
        List<MemoryModule> modules = List.of(Samples.module("W5", 16).powerW(5).make(), Samples.module("W4", 16).powerW(4).make(),
                Samples.module("W3", 16).powerW(3).make());
        Shelf shelf = Pieces.shelf(Request.named("many").withMachines(100_000), modules, Pieces.lot(modules.get(0), 9, 10),
                Pieces.lot(modules.get(1), 100_000, 20), Pieces.lot(modules.get(2), 100_000, 30));
        CountedDraws draws = assertTimeoutPreemptively(Duration.ofSeconds(10), () ->
                new KindDraws(shelf, Map.of(), new UnitCounts(100_000, 200_000, 12), false).ofGroup(Pieces.group(16), modules, Deadline.never()));
        assertThat(draws.leastPrice(0)).isZero();
        assertThat(draws.leastPrice(1)).isEqualTo(9 * 10 + 100_000 * 20 + (100_000 - 9) * 30L);
        assertThat(draws.leastPrice(2)).isEqualTo(CheapestDraw.IMPOSSIBLE);
        long[] many = new long[200_000];
        assertThatThrownBy(() -> CountedDraws.leastSums(many, many, Deadline.in(Duration.ofMillis(10)))).isInstanceOf(OutOfTimeException.class);
    }

    private static Draw draw(long price, long lightest, long heaviest, long range, int uneven, Draw.Share... shares) {
        Draw draw = Draw.NOTHING;
        for (Draw.Share share : shares) {
            draw = draw.plus(Draw.of(share, 0));
        }
        return draw.priced(price).with(new Draw.Load(0, lightest, heaviest, range, uneven));
    }

    private static KindDraws of(int machines, int mostModules) {
        MemoryModule module = Samples.R16;
        Shelf shelf = Pieces.shelf(Request.named("some").withMachines(machines), List.of(module), Pieces.lot(module, 9, 10));
        return new KindDraws(shelf, Map.of(), new UnitCounts(machines, machines, mostModules), false);
    }

    /** In large orders a dearer draw stays while a better deal, or a draw that it stands for, could make it lighter than all cheaper ones. */
    @Test
    void whatCouldBeLighterIsKept() {
        Draw.Share share = new Draw.Share(new Draw.Alike(Pieces.group(16), Samples.R16.kind()), List.of(Samples.R16), 25, 4, false);
        Draw first = draw(10, 50, 100, 0, 1, share);
        Draw lighter = draw(20, 300, 102, 5, 2, share);
        Draw heavier = draw(30, 40, 106, 5, 2, share);
        Draw least = draw(40, 300, 90, 5, 2, share);
        Draw equal = draw(50, 40, 95, 5, 2, share);
        assertThat(of(25, 2).worthwhile(new ArrayList<>(List.of(equal, least, heavier, lighter, first)))).containsExactly(first, lighter, least);
    }

    /** In small orders a draw is dropped that weighs, whatever the deal, what a cheaper one does at most, or has more of the heavier units. */
    @Test
    void whatNoDealMakesLighterIsDropped() {
        Draw.Alike alike = new Draw.Alike(Pieces.group(16), Samples.R16.kind());
        Draw first = draw(10, 70, 100, 9, 1, new Draw.Share(alike, List.of(Samples.R16), 2, 5, false), new Draw.Share(alike, List.of(Samples.R16), 2, 3, false));
        Draw more = draw(11, 70, 90, 0, 1, new Draw.Share(alike, List.of(Samples.R16), 3, 5, false), new Draw.Share(alike, List.of(Samples.R16), 1, 3, false));
        Draw fewer = draw(12, 70, 90, 0, 1, new Draw.Share(alike, List.of(Samples.R16), 1, 5, false), new Draw.Share(alike, List.of(Samples.R16), 3, 3, false));
        Draw even = draw(13, 60, 60, 0, 0, new Draw.Share(alike, List.of(Samples.R16), 4, 3, false));
        Draw late = draw(14, 60, 80, 0, 0, new Draw.Share(alike, List.of(Samples.R16), 4, 3, false));
        assertThat(of(2, 2).worthwhile(new ArrayList<>(List.of(late, even, fewer, more, first)))).containsExactly(first, fewer, even);
        Draw light = draw(10, 50, 60, 0, 0, new Draw.Share(alike, List.of(Samples.R16), 4, 2, false));
        Draw same = draw(10, 60, 60, 0, 0, new Draw.Share(alike, List.of(Samples.R16), 4, 3, false));
        assertThat(of(2, 2).worthwhile(new ArrayList<>(List.of(same, light)))).containsExactly(light);
    }

    @Test
    void timeEndsIt() {
        List<MemoryModule> modules = List.of(Samples.module("W5", 16).powerW(5).make(), Samples.module("W4", 16).powerW(4).make());
        Shelf shelf = Pieces.shelf(Request.named("late").withMachines(2), modules, Pieces.lot(modules.get(0), 9, 10), Pieces.lot(modules.get(1), 9, 10));
        Deadline over = Deadline.in(Duration.ZERO);
        assertThatThrownBy(() -> new KindDraws(shelf, Map.of(), new UnitCounts(2, 2, 2), false).ofGroup(Pieces.group(16), modules, Deadline.never()).of(2, over, grown -> { })).isInstanceOf(OutOfTimeException.class);
        assertThatThrownBy(() -> new KindDraws(shelf, Map.of(), new UnitCounts(1, 1, 2), false).ofGroup(Pieces.group(16), modules, Deadline.never()).of(2, over, grown -> { })).isInstanceOf(OutOfTimeException.class);
    }
}
