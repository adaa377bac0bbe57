package sledwright.generator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Goal;
import sledwright.domain.Labour;
import sledwright.domain.Limits;
import sledwright.domain.MemoryWish;
import sledwright.domain.Licence;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.Objective;
import sledwright.domain.PartChoice;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Shortlist;
import sledwright.domain.Supply;
import sledwright.domain.Worth;
import sledwright.generator.draw.Draw;
import sledwright.generator.draw.Watts;
import sledwright.generator.draw.Shelf;
import sledwright.generator.keep.Kept;
import sledwright.generator.memory.MemoryMarket;
import sledwright.generator.memory.MemoryOption;
import sledwright.generator.memory.MemoryPoint;
import sledwright.generator.memory.MemoryPoints;
import sledwright.generator.memory.MemoryWindow;
import sledwright.generator.memory.MemoryStock;
import sledwright.generator.memory.MemoryNeed;
import sledwright.generator.time.Deadline;
import sledwright.samples.Samples;

/** Machines without memory, and the memory that they choose among, in a small shop. */
class FamiliesTest {

    private static final Supply BIG = Samples.supply("BIG", 1, 0, 900, 800, Map.of());
    private static final Platform BOX = Samples.platform().supplies(Samples.PAIR, BIG).make();
    private static final Platform SLED = Samples.platform().sku("SLED").counts(1).cooling(Samples.LOW).supplies().budgetW(300).mirrored(OptionalDouble.empty()).make();
    private static final Processor P10 = Samples.P10;
    private static final Processor P20 = Samples.processor("P20").cores(20).throughput(390).tdpW(120).make();
    private static final Processor SAME = Samples.processor("SAME").throughput(190).make();
    private static final MemoryModule M16 = Samples.R16;
    private static final MemoryModule M16B = Samples.module("M16B", 16).powerW(5).make();
    private static final MemoryModule M32 = Samples.module("M32", 32).width(8).make();
    private static final Catalog SHOP = Samples.catalog(new Labour(100, 7), List.of(BOX, SLED), List.of(P10, P20, SAME), List.of(M16, M16B, M32),
            Samples.lot("BOX", "B", 4, 1000), Samples.lot("SLED", "S", 2, 700), Samples.lot("P10", "C1", 8, 50), Samples.lot("P20", "C2", 8, 90),
            Samples.lot("SAME", "C3", 8, 50), Samples.lot("LOW", "H1", 9, 10), Samples.lot("TALL", "H2", 9, 15), Samples.lot("PAIR", "W1", 9, 30),
            Samples.lot("BIG", "W2", 9, 70), Samples.lot("R16", "M1", 12, 20), Samples.lot("M16B", "M2", 12, 18), Samples.lot("M32", "M3", 12, 30));
    private static final Request PLAIN = Request.named("families");

    private static MemoryMarket market(Catalog catalog, Request request) {
        Kept kept = new Kept(1 << 20);
        return new MemoryMarket(new MemoryStock(catalog, new Shelf(catalog, request), kept), MemoryMarket.concerning(request), Set.of(), kept);
    }

    private static List<Family> families(Request request) {
        MemoryMarket market = market(SHOP, request);
        return Families.of(SHOP, request, Set.of(), market, new Ranking(request), Deadline.never()).in(Zone.EVERYTHING);
    }

    private static List<Frame> frames(Request request) {
        return families(request).stream().flatMap(family -> family.frames().stream()).toList();
    }

    private static List<String> told(Request request) {
        return frames(request).stream().map(frame -> "%s %d %s %s %s %d".formatted(frame.platform().sku(), frame.processors(), frame.processor().sku(),
                frame.parts().cooling().sku(), frame.supply().map(Supply::sku).orElse("-"), frame.price())).toList();
    }

    /** The P20, of 120 W, needs the tall kit; SAME costs and draws what P10 does and does less, so it is nowhere. The cheapest come first. */
    @Test
    void everyMachineThatTheRulesAllow() {
        assertThat(told(PLAIN)).containsExactly(
                "BOX 1 P10 LOW PAIR 1220", "BOX 1 P10 LOW BIG 1230",
                "BOX 1 P10 TALL PAIR 1225", "BOX 1 P10 TALL BIG 1235", "BOX 1 P20 TALL PAIR 1265", "BOX 1 P20 TALL BIG 1275",
                "BOX 2 P10 LOW PAIR 1280", "BOX 2 P10 LOW BIG 1290",
                "BOX 2 P10 TALL PAIR 1290", "BOX 2 P10 TALL BIG 1300", "BOX 2 P20 TALL PAIR 1370", "BOX 2 P20 TALL BIG 1380",
                "SLED 1 P10 LOW - 860");
    }

    @Test
    void figuresOfAFrame() {
        Frame frame = frames(PLAIN).get(11);
        assertThat(frame.cores()).isEqualTo(40);
        assertThat(frame.throughput()).isEqualTo(780);
        assertThat(Watts.of(frame.microwatts())).isEqualTo(85 + 2 * 120);
        assertThat(frame.types()).containsExactlyInAnyOrder(ModuleType.values());
        assertThat(frame.computing().worth()).isZero();
        assertThat(frame.energy()).isZero();
    }

    @Test
    void severalMachinesAndTheirLicence() {
        Request request = new Request("two", 2, Samples.require().make(), Samples.limit().make(),
                new Goal(Objective.BEST_VALUE, new Worth(2, 0, 0, 1), new Licence(5, 11)), new Shortlist(1, 0.05), PartChoice.ANY);
        Frame frame = frames(request).get(0);
        assertThat(frame.price()).isEqualTo(2 * (1000 + 50 + 10 + 2 * 30 + 100 + 10 * 5 + 11));
        assertThat(frame.computing().worth()).isEqualTo(2 * (10 * 2 + 200 * 1));
        assertThat(families(request.withMachines(3))).noneMatch(family -> family.frames().get(0).platform() == SLED);
        assertThat(families(request.withMachines(5))).isEmpty();
    }

    @Test
    void whatTheRequestAsks() {
        assertThat(told(PLAIN.withPlatforms(Set.of("SLED")))).containsExactly("SLED 1 P10 LOW - 860");
        assertThat(frames(PLAIN.withRequire(Samples.require().processors(2).make()))).hasSize(6).allMatch(frame -> frame.processors() == 2);
        assertThat(frames(PLAIN.withRequire(Samples.require().cores(40).make()))).hasSize(2).allMatch(frame -> frame.cores() == 40);
        assertThat(frames(PLAIN.withRequire(Samples.require().throughput(391).make()))).hasSize(6).allMatch(frame -> frame.processors() == 2);
        assertThat(frames(PLAIN.withRequire(Samples.require().baseGhz(2.3).make()))).isEmpty();
        assertThat(frames(PLAIN.withRequire(Samples.require().allCoreGhz(2.7).make()))).isEmpty();
        assertThat(frames(PLAIN.withRequire(Samples.require().mode(MemoryMode.MIRRORED).make()))).hasSize(12).allMatch(frame -> frame.platform() == BOX);
        assertThat(told(PLAIN.withLimit(Samples.limit().price(1220).make()))).containsExactly("BOX 1 P10 LOW PAIR 1220", "SLED 1 P10 LOW - 860");
        assertThat(frames(PLAIN.withLimit(Samples.limit().powerW(170).make()))).hasSize(5).allMatch(frame -> frame.cores() == 10);
        assertThat(frames(PLAIN.withLimit(Samples.limit().powerW(169).make()))).isEmpty();
    }

    @Test
    void whatTheRequestWantsUsedOrNot() {
        assertThat(frames(PLAIN.withUse(Set.of("SAME")))).isNotEmpty().allMatch(frame -> frame.processor() == SAME);
        assertThat(frames(PLAIN.withUse(Set.of("SLED")))).hasSize(1).allMatch(frame -> frame.platform() == SLED);
        assertThat(frames(PLAIN.withUse(Set.of("TALL")))).isNotEmpty().allMatch(frame -> frame.parts().cooling() == Samples.TALL);
        assertThat(frames(PLAIN.withUse(Set.of("BIG")))).isNotEmpty().allMatch(frame -> frame.supply().equals(Optional.of(BIG)));
        assertThat(frames(PLAIN.withForbid(Set.of("P10")))).isNotEmpty().noneMatch(frame -> frame.processor() == P10);
        assertThat(frames(PLAIN.withUse(Set.of("R16")).withMachines(3))).isNotEmpty();
        Catalog few = Samples.catalog(List.of(BOX), List.of(P10), List.of(M16), Samples.lot("BOX", "B", 4, 1), Samples.lot("P10", "C", 8, 1), Samples.lot("LOW", "H", 8, 1),
                Samples.lot("PAIR", "W", 8, 1), Samples.lot("R16", "M", 2, 1));
        Request wanted = PLAIN.withUse(Set.of("R16"));
        for (int machines = 1; machines <= 3; machines++) {
            MemoryMarket market = market(few, wanted.withMachines(machines));
            assertThat(Families.of(few, wanted.withMachines(machines), Set.of(), market, new Ranking(wanted), Deadline.never()).in(Zone.EVERYTHING).isEmpty()).isEqualTo(machines == 3);
        }
    }

    /** 36 degrees of inlet air are too warm for all; 33 leave up to 105 W. */
    @Test
    void theAirMustBeCoolEnough() {
        assertThat(frames(PLAIN.withLimit(Samples.limit().site(36, 0).make()))).isEmpty();
        assertThat(frames(PLAIN.withLimit(Samples.limit().site(33, 0).make()))).isNotEmpty().noneMatch(frame -> frame.processor() == P20);
    }

    private static List<MemoryOption> options(Platform platform, Request request) {
        return market(SHOP, request).options(platform, Samples.LOW, 1, Set.of());
    }

    @Test
    void widthsThatMustNotMixAreOptionsOfTheirOwn() {
        assertThat(options(BOX, PLAIN)).extracting(option -> option.level().width() + "/" + option.level().mts()).containsExactly("0/2400", "0/1866");
        Platform strict = Samples.platform().forbidMixedWidths().make();
        List<MemoryOption> options = options(strict, PLAIN);
        assertThat(options).extracting(option -> option.level().width() + "/" + option.level().mts()).containsExactly("4/2400", "4/1866", "8/2400", "8/1866");
        assertThat(options.get(0).level().modules()).containsExactly(M16, M16B);
        assertThat(options.get(2).level().modules()).containsExactly(M32);
        assertThat(options).extracting(option -> option.serves(1866)).containsExactly(false, true, false, true);
    }

    @Test
    void anOptionHoldsEveryModuleThatIsWanted() {
        Platform strict = Samples.platform().forbidMixedWidths().make();
        assertThat(options(strict, PLAIN.withUse(Set.of("M32", "P10")))).extracting(option -> option.level().width()).containsExactly(8, 8);
        assertThat(options(strict, PLAIN.withUse(Set.of("M32", "R16")))).isEmpty();
        assertThat(options(BOX, PLAIN.withUse(Set.of("M32", "R16")))).hasSize(2).noneMatch(MemoryOption::isKeptApart);
        assertThat(options(BOX, PLAIN.withForbid(Set.of("M32"))).get(0).level().modules()).containsExactly(M16, M16B);
    }

    @Test
    void whatAnOptionHoldsAtMost() {
        MemoryOption option = options(BOX, PLAIN).get(0);
        assertThat(option.mostUsableGb(Integer.MAX_VALUE)).isEqualTo(12 * 32);
        assertThat(option.mostWidth()).isEqualTo(4);
        assertThat(option.leastW(32)).isEqualTo(4);
        MemoryOption mirrored = options(BOX, PLAIN.withRequire(Samples.require().mode(MemoryMode.MIRRORED).make())).get(0);
        assertThat(mirrored.mostUsableGb(Integer.MAX_VALUE)).isEqualTo(12 * 32 / 2);
        // Of what is worth 2 a GB only half is of use: 30 less 32 for 32 GB, twelve times.
        Request value = new Request("value", 1, Samples.require().mode(MemoryMode.MIRRORED).make(), Samples.limit().make(),
                new Goal(Objective.BEST_VALUE, new Worth(0, 2, 0, 0), Licence.NONE), new Shortlist(1, 0.05), PartChoice.ANY);
        assertThat(options(BOX, value).get(0).coarse().leastPriceLessWorth(0, 1, 384)).isCloseTo(12 * (30 - 32) + 7, within(1e-6));
    }

    private static MemoryPoints points(Request request, int mostSocketGb) {
        return options(BOX, request).get(1).points(MemoryNeed.of(request, false), Deadline.never()).within(mostSocketGb, MemoryWindow.ALL);
    }

    /** Every module takes 7 of labour; each point is the best in something. */
    @Test
    void pointsThatNoOtherMatches() {
        MemoryPoint cheapest = points(PLAIN, Integer.MAX_VALUE).cheapestFirst().get(0);
        assertThat(cheapest.price()).isEqualTo(18 + 7);
        assertThat(cheapest.filling().modules()).isEqualTo(1);
        assertThat(points(PLAIN, 64).cheapestFirst()).isNotEmpty().allMatch(point -> point.socketGb() <= 64);
        List<MemoryPoint> all = points(PLAIN, Integer.MAX_VALUE).cheapestFirst();
        assertThat(all).allSatisfy(point -> assertThat(all).noneMatch(other -> other != point && other.price() <= point.price() && other.width() >= point.width()
                && other.usableGb() >= point.usableGb() && other.microwatts() <= point.microwatts()));
        assertThat(all).anyMatch(point -> point.usableGb() == 384 && point.price() == 12 * (30 + 7));
        assertThat(points(PLAIN.withLimit(Samples.limit().price(100).make()), Integer.MAX_VALUE).cheapestFirst()).isNotEmpty().allMatch(point -> point.price() <= 100);
        assertThat(points(PLAIN.withRequire(Samples.require().memoryGb(300).make()), Integer.MAX_VALUE).cheapestFirst()).isNotEmpty().allMatch(point -> point.usableGb() >= 300);
        assertThat(points(PLAIN.withRequire(Samples.require().spareSlots(10).make()), Integer.MAX_VALUE).cheapestFirst()).isNotEmpty().allMatch(point -> point.filling().modules() <= 2);
    }

    @Test
    void pointsHoldWhatIsWanted() {
        assertThat(points(PLAIN.withUse(Set.of("M32")), Integer.MAX_VALUE).cheapestFirst().get(0).price()).isEqualTo(30 + 7);
        assertThat(points(PLAIN.withUse(Set.of("M32", "R16")), Integer.MAX_VALUE).cheapestFirst()).isNotEmpty().allSatisfy(point ->
                assertThat(point.draw().shares()).filteredOn(Draw.Share::everywhere).extracting(share -> share.modules().get(0).sku()).containsExactlyInAnyOrder("M32", "R16"));
    }

    @Test
    void whatRequestsShareAMarketIn() {
        Request one = PLAIN.withLimit(Samples.limit().price(500).powerW(300).leadDays(4).make()).withRequire(Samples.require().memoryGb(64).cores(8).make());
        Request other = Request.named("other").withLimit(Samples.limit().price(500).leadDays(4).make()).withRequire(Samples.require().memoryGb(64).bandwidthGbs(9).make());
        assertThat(MemoryMarket.concerning(one)).isEqualTo(MemoryMarket.concerning(other));
        assertThat(MemoryMarket.concerning(one.withMachines(2))).isNotEqualTo(MemoryMarket.concerning(other));
        Request value = new Request("value", 1, Samples.require().make(), Samples.limit().make(),
                new Goal(Objective.BEST_VALUE, new Worth(0, 2, 0, 0), Licence.NONE), new Shortlist(1, 0.05), PartChoice.ANY);
        assertThat(MemoryMarket.concerning(value)).isEqualTo(MemoryMarket.concerning(PLAIN).withGoal(new Goal(Objective.CHEAPEST, new Worth(0, 2, 0, 0), Licence.NONE)));
    }

    /** What a market is known by tells apart all that it depends on, and nothing else. */
    @Test
    void whatAMarketIsKnownBy() {
        Limits limit = Samples.limit().make();
        List<Request> all = List.of(PLAIN, PLAIN.withMachines(2), PLAIN.withForbid(Set.of("R16")), PLAIN.withUse(Set.of("R16")), PLAIN.withOnHand(Map.of("R16", 1)),
                PLAIN.withLimit(Samples.limit().leadDays(4).make()), PLAIN.withLimit(Samples.limit().price(9).make()), PLAIN.withLimit(new Limits(limit.price(),
                        limit.powerW(), limit.mostDays(), limit.inletC(), limit.altitudeM(), limit.mainsV(), Set.of(Condition.USED))),
                PLAIN.withRequire(Samples.require().mode(MemoryMode.MIRRORED).make()), PLAIN.withRequire(Samples.require().memoryGb(8).make()),
                PLAIN.withRequire(PLAIN.require().withPopulated(new MemoryWish(true, false))), PLAIN.withRequire(PLAIN.require().withPopulated(new MemoryWish(false, true))),
                PLAIN.withGoal(new Goal(Objective.BEST_VALUE, new Worth(0, 2, 0, 0), Licence.NONE)), PLAIN.withGoal(new Goal(Objective.CHEAPEST, new Worth(0, 2, 0, 0), Licence.NONE)));
        for (Request one : all) {
            for (Request other : all) {
                Request part = MemoryMarket.concerning(one);
                Request otherPart = MemoryMarket.concerning(other);
                boolean alike = MemoryMarket.accepted(part).equals(MemoryMarket.accepted(otherPart)) && MemoryMarket.beside(part).equals(MemoryMarket.beside(otherPart));
                assertThat(alike).as("%s and %s", one, other).isEqualTo(part.equals(otherPart));
            }
        }
    }
}
