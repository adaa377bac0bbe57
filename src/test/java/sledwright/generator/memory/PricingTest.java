package sledwright.generator.memory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.generator.Pieces;
import sledwright.generator.draw.Deal;
import sledwright.generator.draw.Draw;
import sledwright.generator.draw.Shelf;
import sledwright.generator.keep.Kept;
import sledwright.generator.time.Deadline;
import sledwright.generator.time.OutOfTimeException;
import sledwright.samples.PlatformSketch;
import sledwright.samples.Samples;

/** Populations of several machines whose alike modules differ in watts: what the heaviest machine draws. */
class PricingTest {

    /** One socket of two channels of one slot. */
    private static final Platform TWO_SLOTS = sketch().make();
    private static final MemoryModule LIGHT16 = Samples.module("LIGHT16", 16).powerW(4).make();
    private static final MemoryModule HEAVY16 = Samples.module("HEAVY16", 16).powerW(5).make();
    private static final MemoryModule LIGHT32 = Samples.module("LIGHT32", 32).powerW(4).make();
    private static final MemoryModule HEAVY32 = Samples.module("HEAVY32", 32).powerW(6).make();

    private static PlatformSketch sketch() {
        return Samples.platform().counts(1).channels(2, 1).speeds(PlatformSketch.row(ModuleType.RDIMM, Set.of(), 2400));
    }

    private static Catalog shop(int light, int heavy, MemoryModule... modules) {
        return Samples.catalog(List.of(TWO_SLOTS), List.of(Samples.P10), List.of(modules), List.of(modules).stream()
                .map(module -> Pieces.lot(module, module.sku().startsWith("LIGHT") ? light : heavy, module.capacityGb())).toArray(Lot[]::new));
    }

    private static MemoryMarket market(Catalog shop, Request request) {
        Kept kept = new Kept(1 << 20);
        return new MemoryMarket(new MemoryStock(shop, new Shelf(shop, request), kept), MemoryMarket.concerning(request), Set.of(), kept);
    }

    private static List<MemoryPoint> points(Catalog shop, Request request) {
        return market(shop, request).options(TWO_SLOTS, Samples.LOW, 1, Set.of()).get(0).points(MemoryNeed.of(request, false), Deadline.never()).within(Integer.MAX_VALUE, MemoryWindow.ALL).cheapestFirst();
    }

    private static MemoryPoint of(List<MemoryPoint> points, int gb) {
        return points.stream().filter(point -> point.usableGb() == gb).findFirst().orElseThrow();
    }

    /** Two machines of one of each size share the heavy ones: 5 W with 4 W, and 4 W with 6 W. */
    @Test
    void fewUnitsAreDealtAsWellAsCanBe() {
        MemoryPoint point = of(points(shop(1, 1, LIGHT16, HEAVY16, LIGHT32, HEAVY32), Request.named("two").withMachines(2)), 48);
        assertThat(point.price()).isEqualTo(2 * 48);
        assertThat(point.microwatts()).isEqualTo(10_000_000);
        assertThat(point.slack()).isZero();
    }

    /** Fifty units are dealt each kind by itself: 5 W and 6 W may meet, and a better deal could save the 1 W and 2 W between the kinds' units. */
    @Test
    void manyUnitsAreDealtInRoundsAndSayHowMuchCouldBeSaved() {
        Request request = Request.named("many").withMachines(25);
        List<MemoryPoint> points = points(shop(15, 15, LIGHT16, HEAVY16, LIGHT32, HEAVY32), request);
        MemoryPoint both = of(points, 48);
        assertThat(both.microwatts()).isEqualTo(11_000_000);
        assertThat(both.slack()).isEqualTo(3_000_000);
        // One kind of two weights is already dealt as well as can be: 25 machines of one module, 10 of them heavy.
        MemoryPoint one = of(points, 16);
        assertThat(one.microwatts()).isEqualTo(5_000_000);
        assertThat(one.slack()).isZero();
        MemoryPoint light = of(points(shop(50, 15, LIGHT16, HEAVY16), request), 32);
        assertThat(light.microwatts()).isEqualTo(8_000_000);
        assertThat(light.slack()).isZero();
    }

    /** Money buys lightness: heavy ones at half the price are a point of their own, and so are the light ones. */
    @Test
    void lighterAndDearerIsAPointOfItsOwn() {
        Catalog shop = Samples.catalog(List.of(TWO_SLOTS), List.of(Samples.P10), List.of(LIGHT16, HEAVY16),
                Pieces.lot(LIGHT16, 4, 20), Pieces.lot(HEAVY16, 4, 10));
        List<MemoryPoint> points = points(shop, Request.named("one"));
        assertThat(points).extracting(point -> point.price() + "/" + point.microwatts() / 1_000_000).containsExactly("10/5", "20/10", "20/4", "30/9", "40/8");
        assertThat(points(shop, Request.named("limited").withLimit(Samples.limit().price(20).make()))).extracting(MemoryPoint::price).containsExactly(10L, 20L, 20L);
        List<MemoryPoint> two = points(shop, Request.named("two").withMachines(2));
        // Of three light and one heavy, and the like, one machine gets the heavy.
        assertThat(two).extracting(point -> point.price() + "/" + point.microwatts() / 1_000_000)
                .containsExactly("20/5", "40/10", "40/4", "60/9", "80/8");
    }

    @Test
    void mirroredMemoryIsBoughtTwice() {
        Request request = Request.named("mirrored").withRequire(Samples.require().mode(MemoryMode.MIRRORED).make());
        List<MemoryPoint> points = points(shop(4, 4, LIGHT16), request);
        assertThat(points).singleElement().satisfies(point -> {
            assertThat(point.price()).isEqualTo(32);
            assertThat(point.modules()).isEqualTo(2);
            assertThat(point.socketGb()).isEqualTo(32);
            assertThat(point.usableGb()).isEqualTo(16);
            assertThat(point.microwatts()).isEqualTo(8_000_000);
            assertThat(point.width()).isEqualTo(2);
        });
        assertThat(market(shop(4, 4, LIGHT16), request).options(TWO_SLOTS, Samples.LOW, 1, Set.of()).get(0).points(MemoryNeed.of(request, false), Deadline.never()).within(31, MemoryWindow.ALL).cheapestFirst()).isEmpty();
        assertThat(market(shop(4, 4, LIGHT16), request).options(TWO_SLOTS, Samples.LOW, 1, Set.of()).get(0).points(MemoryNeed.of(request, false), Deadline.never()).within(32, MemoryWindow.ALL).cheapestFirst()).hasSize(1);
    }

    @Test
    void timeEndsIt() {
        Request request = Request.named("late");
        MemoryMarket market = market(shop(4, 4, LIGHT16), request);
        MemoryOption option = market.options(TWO_SLOTS, Samples.LOW, 1, Set.of()).get(0);
        MemoryNeed need = MemoryNeed.of(request, false);
        Deadline over = Deadline.in(Duration.ZERO);
        assertThatThrownBy(() -> option.points(need, over).within(64, MemoryWindow.ALL)).isInstanceOf(OutOfTimeException.class);
        assertThat(option.points(need, Deadline.never()).within(64, MemoryWindow.ALL).cheapestFirst()).isNotEmpty();
        assertThatThrownBy(() -> option.points(need, over).within(16, MemoryWindow.ALL)).isInstanceOf(OutOfTimeException.class);
        assertThat(option.points(need, over).within(64, MemoryWindow.ALL)).as("known").isSameAs(option.points(need, Deadline.never()).within(64, MemoryWindow.ALL));
    }

    /** Whatever is kept, the heaviest machine of its deal weighs what it says, or less by no more than the slack. */
    @Test
    void pointsWeighWhatTheirDealDoes() {
        for (int machines : new int[] {2, 3, 25}) {
            for (MemoryPoint point : points(shop(machines, machines + 1, LIGHT16, HEAVY16, LIGHT32, HEAVY32), Request.named("any").withMachines(machines))) {
                List<Draw.Share> shares = point.draw().shares();
                List<int[]> dealt = Deal.deal(shares, machines);
                long[] weights = new long[machines];
                for (int i = 0; i < shares.size(); i++) {
                    for (int machine = 0; machine < machines; machine++) {
                        weights[machine] += dealt.get(i)[machine] * shares.get(i).microwatts();
                    }
                }
                assertThat(LongStream.of(weights).max().orElseThrow()).as("%d: %s", machines, shares).isBetween(point.microwatts() - point.slack(), point.microwatts());
            }
        }
    }

    /** Whoever asks for a part of the points gets all that lie in it, as they stand among all points, whatever was asked for before. */
    @Test
    void aWindowHasAllPointsThatLieInIt() {
        SplittableRandom random = new SplittableRandom(20261129);
        for (int machines : new int[] {1, 2, 25}) {
            for (boolean everyWeight : new boolean[] {false, true}) {
                Request request = Request.named("any").withMachines(machines);
                MemoryMarket market = market(shop(machines, machines + 1, LIGHT16, HEAVY16, LIGHT32, HEAVY32), request);
                MemoryOption option = market.options(TWO_SLOTS, Samples.LOW, 1, Set.of()).get(0);
                MemoryNeed need = MemoryNeed.of(request, everyWeight);
                List<MemoryPoint> all = option.points(need, Deadline.never()).within(64, MemoryWindow.ALL).cheapestFirst();
                MemoryOption.Points asked = option.points(need, Deadline.never());
                for (int i = 0; i < 40; i++) {
                    MemoryWindow window = window(random, machines);
                    assertThat(inside(asked.within(64, window).cheapestFirst(), window)).as("%s", window).isEqualTo(inside(all, window));
                }
            }
        }
    }

    private static MemoryWindow window(SplittableRandom random, int machines) {
        MemoryWindow window = MemoryWindow.ALL.noSmaller(random.nextBoolean() ? 0 : random.nextInt(70)).noNarrower(random.nextBoolean() ? 0 : 2 * random.nextDouble());
        MemoryWindow light = random.nextBoolean() ? window : window.noHeavier(1e6 * random.nextInt(40));
        MemoryWindow bought = random.nextBoolean() ? light : light.noDearer(random.nextInt(80 * machines));
        return random.nextBoolean() ? bought : bought.noMoreOf(random.nextInt(-80, 80) * machines, machines * random.nextDouble(2), machines * random.nextInt(20));
    }

    /** The points of a window, each by its figures. */
    private static List<String> inside(List<MemoryPoint> points, MemoryWindow window) {
        return points.stream().filter(point -> point.price() <= window.mostPrice(point.usableGb(), point.width()))
                .filter(point -> point.microwatts() - point.slack() <= window.mostMicrowatts())
                .map(point -> List.of(point.price(), point.socketGb(), point.fullestGb(), point.usableGb(), point.modules(), point.microwatts(), point.slack()).toString())
                .toList();
    }

    @Test
    void aWindowHoldsWhatAsksForMore() {
        MemoryWindow value = MemoryWindow.ALL.noMoreOf(100, 2, 3);
        MemoryWindow narrow = MemoryWindow.ALL.noSmaller(16).noNarrower(1.5).noDearer(200).noHeavier(2e7);
        assertThat(MemoryWindow.ALL.holds(narrow)).isTrue();
        assertThat(narrow.holds(MemoryWindow.ALL)).isFalse();
        assertThat(narrow.holds(narrow.noDearer(199)) && narrow.holds(narrow.noSmaller(17)) && narrow.holds(narrow.noNarrower(1.6))).isTrue();
        assertThat(narrow.noDearer(199).holds(narrow) || narrow.noSmaller(17).holds(narrow) || narrow.noNarrower(1.6).holds(narrow)).isFalse();
        assertThat(narrow.holds(narrow.noHeavier(1e7))).isTrue();
        assertThat(narrow.noHeavier(1e7).holds(narrow)).isFalse();
        assertThat(value.holds(value.noDearer(5))).isTrue();
        assertThat(value.holds(MemoryWindow.ALL.noMoreOf(99, 2, 4))).as("worth counted otherwise").isFalse();
        assertThat(MemoryWindow.ALL.holds(value)).isTrue();
        assertThat(value.holds(MemoryWindow.ALL)).isFalse();
        assertThat(narrow.widened().holds(narrow) && value.widened().holds(value)).isTrue();
        assertThat(MemoryWindow.ALL.noMoreOf(-99.5, 2, 3).widened().holds(MemoryWindow.ALL.noMoreOf(-99.5, 2, 3))).isTrue();
    }
}
