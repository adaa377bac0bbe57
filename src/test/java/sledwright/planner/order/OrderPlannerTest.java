package sledwright.planner.order;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import sledwright.catalog.CatalogReader;
import sledwright.desk.view.OrderView;
import sledwright.domain.Assortment;
import sledwright.domain.Availability;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Discount;
import sledwright.domain.Enclosure;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Goal;
import sledwright.domain.Licence;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemoryWish;
import sledwright.domain.Objective;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.PartChoice;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Shortlist;
import sledwright.domain.SupplierNames;
import sledwright.domain.Worth;
import sledwright.generator.time.Deadline;
import sledwright.planner.linear.LinearProgram;
import sledwright.samples.PlatformSketch;
import sledwright.samples.Samples;
import sledwright.samples.Variations;

/** Small orders whose answer can be found by hand; {@code OrderAgainstCpSatTest} has the rest. */
class OrderPlannerTest {

    private static final MemoryModule M8 = Samples.module("M8", 8).ranks(1).width(8).make();
    private static final MemoryModule N8 = Samples.module("N8", 8).ranks(1).width(8).make();

    private static final int SOON = 300;

    /** One socket with two channels of one slot, fed by the enclosure. */
    private static PlatformSketch box() {
        return Samples.platform().counts(1).channels(2, 1).supplies();
    }

    private static Catalog shop(Lot... lots) {
        return shop(box().make(), lots);
    }

    private static Catalog shop(Platform platform, Lot... lots) {
        return Samples.catalog(List.of(platform), List.of(Samples.P10), List.of(M8, N8), lots);
    }

    private static Lot lot(String sku, String supplier, int available, long price) {
        Lot lot = Samples.lot(sku, "A", available, price);
        return new Lot(sku, "A of " + supplier, supplier, Condition.NEW, new Availability(available, 0), lot.breaks(), false);
    }

    private static OrderLine line(int machines, double memoryGb, Set<String> use) {
        return new OrderLine("web", Request.named("web").withMachines(machines).withUse(use).withRequire(Samples.require().memoryGb(memoryGb).make()), 1, false);
    }

    private static OrderOutcome plan(Catalog shop, OrderRequest order) {
        return new OrderPlanner(shop, 1).plan(order, Deadline.never(), progress -> { });
    }

    private static OrderOutcome plan(Catalog shop, OrderLine line, OptionalInt suppliersMax, long deliveryCharge, long modulePartCharge) {
        return plan(shop, new OrderRequest("order", List.of(line), suppliersMax, deliveryCharge, modulePartCharge, Map.of()));
    }

    /** The cheaper part by itself is dear: it brings a second supplier. What stands on the shop's own shelf brings none, and is not counted. */
    @Test
    void theOwnShelfDeliversNothing() {
        Catalog shop = shop(lot("BOX", "north", 5, 10_000), lot("LOW", "Own", 5, 1_000), lot("LOW", "north", 5, 1_200), lot("P10", "north", 5, 5_000),
                lot("M8", "north", 5, 2_000));
        OrderOutcome counted = plan(shop, line(1, 8, Set.of()), OptionalInt.of(1), 500, 0);
        assertThat(counted.status()).isEqualTo(OrderStatus.PROVED);
        assertThat(counted.best()).isEqualTo(10_000 + 1_200 + 5_000 + 2_000 + 500);
        OrderOutcome own = plan(Variations.of(shop, new SupplierNames(Map.of(), Set.of("own"))), line(1, 8, Set.of()), OptionalInt.of(1), 500, 0);
        assertThat(own.status()).isEqualTo(OrderStatus.PROVED);
        assertThat(own.best()).isEqualTo(10_000 + 1_000 + 5_000 + 2_000 + 500);
        assertThat(own.price().delivery()).isEqualTo(500);
        assertThat(own.suppliers()).containsExactly("north");
    }

    /** The cheaper part is one short of filling both channels, and a second part number counts more than it saves. */
    @Test
    void aFurtherPartNumberCountsAgainstABuild() {
        Catalog shop = shop(lot("BOX", "north", 5, 10_000), lot("LOW", "north", 5, 1_000), lot("P10", "north", 5, 5_000),
                lot("M8", "north", 9, 2_000), lot("N8", "north", 3, 1_700));
        OrderOutcome outcome = plan(shop, line(1, 16, Set.of("M8")), OptionalInt.empty(), 0, 3_000);
        assertThat(outcome.status()).isEqualTo(OrderStatus.PROVED);
        assertThat(outcome.best()).isEqualTo(20_000);
        OrderOutcome several = plan(shop, line(2, 16, Set.of()), OptionalInt.empty(), 0, 3_000);
        assertThat(several.status()).isEqualTo(OrderStatus.PROVED);
        assertThat(several.best()).as("one machine of each").isEqualTo(2 * 16_000 + 2 * 1_700 + 2 * 2_000);
        OrderLine alike = new OrderLine("web", line(2, 16, Set.of()).request(), 1, true);
        OrderOutcome uniform = plan(shop, alike, OptionalInt.empty(), 0, 3_000);
        assertThat(uniform.status()).isEqualTo(OrderStatus.PROVED);
        assertThat(uniform.best()).as("alike they are, of whatever part number").isEqualTo(2 * 16_000 + 2 * 1_700 + 2 * 2_000);
        OrderOutcome mixed = plan(shop, line(2, 16, Set.of()), OptionalInt.empty(), 0, 200);
        assertThat(mixed.best()).as("where a mix counts little").isEqualTo(2 * 16_000 + 3 * 1_700 + 2_000 + 200);
    }

    /** Five of every part are there, from three suppliers. */
    @Test
    void suppliersThatAreTooFewAreNamedAndNotTheStock() {
        Catalog shop = shop(lot("BOX", "north", 5, 10_000), lot("LOW", "south", 5, 1_000), lot("P10", "west", 5, 5_000), lot("M8", "west", 5, 2_000));
        OrderOutcome outcome = plan(shop, line(2, 8, Set.of()), OptionalInt.of(2), 0, 0);
        assertThat(outcome.status()).isEqualTo(OrderStatus.IMPOSSIBLE);
        assertThat(outcome.shortages().most()).as("proved").isTrue();
        assertThat(outcome.shortages().parts()).isEmpty();
        assertThat(outcome.shortages().suppliers()).contains(new OrderOutcome.TooFewSuppliers(2, 3, OptionalLong.of(36_000)));
        assertThat(plan(shop, line(2, 8, Set.of()), OptionalInt.of(3), 0, 0).status()).isEqualTo(OrderStatus.PROVED);
        OrderOutcome both = plan(shop, line(6, 8, Set.of()), OptionalInt.of(2), 0, 0);
        assertThat(both.shortages().suppliers()).as("with what is lacking, too").contains(new OrderOutcome.TooFewSuppliers(2, 3, OptionalLong.empty()));
        assertThat(both.shortages().parts()).extracting(OrderOutcome.Lack::sku).containsExactly("BOX", "LOW", "M8", "P10");
    }

    /** The only team of suppliers is all of them, which restricts nothing: splitting on it would never end. */
    @Test
    @Timeout(60)
    void aShortOrderOfAsManySuppliersAsThereAreEnds() {
        Catalog shop = shop(lot("BOX", "north", 5, 10_000), lot("LOW", "south", 5, 1_000), lot("P10", "west", 1, 5_000), lot("M8", "west", 5, 2_000));
        OrderOutcome outcome = plan(shop, line(2, 8, Set.of()), OptionalInt.of(3), 500, 0);
        assertThat(outcome.status()).isEqualTo(OrderStatus.SHORT);
        assertThat(outcome.shortages().most()).as("proved").isTrue();
    }

    /** A sled of 85 W, a processor of 85 W or more and its memory in frames of 60 W that deliver 200 W with a supply failed. */
    @Test
    void enclosuresThatCannotFeedASledAreNamed() {
        Enclosure frame = new Enclosure("FRAME", "frame", Set.of("BOX"), 4, 60, 0, List.of(Samples.supply("FEED", 2, 1, 200, 0, Map.of())));
        Catalog bare = shop(lot("BOX", "north", 5, 10_000), lot("LOW", "north", 5, 1_000), lot("P10", "north", 5, 5_000), lot("M8", "north", 5, 2_000),
                lot("FRAME", "north", 5, 3_000), lot("FEED", "north", 9, 500));
        Catalog shop = Variations.of(bare, new Assortment(bare.platforms(), List.of(frame), bare.processors(), bare.modules(), List.of(), List.of(), List.of()));
        OrderOutcome outcome = plan(shop, line(2, 8, Set.of()), OptionalInt.empty(), 0, 0);
        assertThat(outcome.status()).isEqualTo(OrderStatus.IMPOSSIBLE);
        assertThat(outcome.shortages().most()).isTrue();
        assertThat(outcome.shortages().parts()).isEmpty();
        double sledW = 85 + Samples.P10.tdpW() + M8.powerW();
        assertThat(outcome.shortages().enclosures().unfed()).containsExactly(new OrderOutcome.Unfed(new OrderOutcome.LightestSled("web", sledW, true), "FRAME", "FEED", 2, 60, 200, OptionalDouble.empty()));
    }

    /** Of two lines of sleds one stands in enclosures that the customer has, as many as it likes. */
    @Test
    void enclosuresThatTheCustomerHasAreNoneOfTheOrders() {
        Enclosure frame = new Enclosure("FRAME", "frame", Set.of("BOX"), 2, 60, 0, List.of(Samples.supply("FEED", 2, 1, 900, 0, Map.of())));
        Catalog bare = shop(lot("BOX", "north", 9, 10_000), lot("LOW", "north", 9, 1_000), lot("P10", "north", 9, 5_000), lot("M8", "north", 9, 2_000),
                lot("FRAME", "north", 1, 3_000), lot("FEED", "north", 2, 500));
        Catalog shop = Variations.of(bare, new Assortment(bare.platforms(), List.of(frame), bare.processors(), bare.modules(), List.of(), List.of(), List.of()));
        Request asked = line(3, 8, Set.of()).request();
        OrderLine own = new OrderLine("own", asked.withEquipment(asked.equipment().withEnclosure(EnclosureFrom.OWN)), 1, false);
        OrderOutcome outcome = plan(shop, new OrderRequest("order", List.of(line(2, 8, Set.of()), own), OptionalInt.empty(), 0, 0, Map.of()));
        assertThat(outcome.status()).isEqualTo(OrderStatus.PROVED);
        assertThat(outcome.best()).isEqualTo(5 * 18_000 + 3_000 + 2 * 500);
        assertThat(outcome.enclosures()).hasSize(1);
        assertThat(OrderView.of(outcome, Map.of(), Discount.NONE).contents().enclosures().get(0).sleds()).extracting(OrderView.Sled::line).containsOnly("web");
    }

    /** The second machine lacks a processor; what is delivered comes from one supplier although another sells the heat sink for less. */
    @Test
    void whatIsDeliveredOfAShortOrderIsCheapest() {
        Catalog shop = shop(lot("BOX", "north", 5, 10_000), lot("LOW", "south", 5, 1_000), lot("TALL", "north", 5, 1_200), lot("P10", "north", 1, 5_000),
                lot("M8", "north", 5, 2_000));
        OrderOutcome outcome = plan(shop, line(2, 8, Set.of()), OptionalInt.empty(), 500, 0);
        assertThat(outcome.status()).isEqualTo(OrderStatus.SHORT);
        assertThat(outcome.shortages().most()).isTrue();
        assertThat(outcome.delivered()).isEqualTo(1);
        assertThat(outcome.best()).isEqualTo(10_000 + 1_200 + 5_000 + 2_000 + 500);
        assertThat(outcome.bound()).as("nothing that delivers as much costs less").isEqualTo(outcome.best());
    }

    /** Surplus is worth fractions of a coin; the bound comes as close as makes no difference. */
    @Test
    void whereTheBoundIsTheBestItIsProved() {
        Catalog shop = shop(lot("BOX", "north", 50, 100_007), lot("LOW", "north", 50, 1_003), lot("P10", "south", 50, 5_001), lot("M8", "north", 90, 2_003));
        Request worth = new Request("web", 9, Samples.require().memoryGb(8).make(), Limits.NONE,
                new Goal(Objective.BEST_VALUE, new Worth(1.7, 0.3, 2.1, 0.013), Licence.NONE), new Shortlist(1, 0.05), PartChoice.ANY);
        OrderOutcome outcome = plan(shop, new OrderLine("web", worth, 1, false), OptionalInt.empty(), 2_000, 0);
        assertThat(outcome.status()).isEqualTo(OrderStatus.PROVED);
        assertThat(outcome.bound()).isEqualTo(outcome.best());
    }

    /** Sixty lines of which no two ask for the same. */
    private static OrderRequest unlike() {
        List<OrderLine> lines = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            Request asked = Request.named("line " + i).withMachines(1 + i % 2)
                    .withRequire(Samples.require().memoryGb(1 + i / 4.0).throughput(10 - i / 10.0).make());
            lines.add(new OrderLine("line " + i, asked, 1 + i % 3, false));
        }
        return new OrderRequest("order", lines, OptionalInt.empty(), 0, 0, Map.of());
    }

    private static Catalog ample() {
        return shop(lot("BOX", "north", 500, 10_000), lot("LOW", "north", 500, 1_000), lot("P10", "north", 500, 5_000), lot("M8", "north", 900, 2_000));
    }

    /** One module suffices for 8 GB and less. */
    @Test
    void veryManyUnlikeLinesAreProved() {
        OrderOutcome outcome = plan(ample(), unlike());
        assertThat(outcome.status()).isEqualTo(OrderStatus.PROVED);
        long modules = unlike().lines().stream().mapToLong(line -> line.machines() * (line.request().require().memoryGb() > 8 ? 2L : 1L)).sum();
        assertThat(outcome.best()).isEqualTo(90 * 16_000 + modules * 2_000);
    }

    /** The search asks the time in every step of it; that many questions are far from enough for a search for each line. */
    @Test
    void aFirstWholeOrderOfVeryManyLinesIsThereSoon() {
        AtomicInteger asked = new AtomicInteger();
        OrderOutcome outcome = new OrderPlanner(ample(), 1).plan(unlike(), Deadline.never().or(() -> asked.incrementAndGet() > SOON), progress -> { });
        assertThat(outcome.missing()).isZero();
        assertThat(outcome.proof().ended()).isEqualTo(OrderOutcome.End.TIME);
    }

    /** Wherever it is cut off, what it says of the least that an order costs is true; and each line that is looked at again makes the order no dearer. */
    @Test
    void whatIsSaidOfVeryManyLinesInAnyHurryIsTrue() {
        double least = plan(ample(), unlike()).best();
        int known = 0;
        for (int most = SOON; most <= 12 * SOON; most += SOON) {
            int steps = most;
            AtomicInteger asked = new AtomicInteger();
            OrderOutcome outcome = new OrderPlanner(ample(), 1).plan(unlike(), Deadline.never().or(() -> asked.incrementAndGet() > steps), progress -> { });
            assertThat(outcome.missing()).isZero();
            assertThat(outcome.best()).isGreaterThanOrEqualTo(least);
            if (!Double.isNaN(outcome.bound())) {
                known++;
                assertThat(outcome.bound()).isLessThanOrEqualTo(least);
            }
        }
        assertThat(known).as("bounds").isGreaterThan(3);
    }

    /** Its mix is first made an order after the tenth; a linear program asks for the time twice. */
    @Test
    void anOrderIsThereWhenTheTimeEndsInARoundOfColumnGeneration() {
        List<OrderLine> lines = IntStream.rangeClosed(1, 6).mapToObj(i -> new OrderLine("line " + i, Request.named("line " + i)
                .withRequire(Samples.require().cores(8 * i).memoryGb(64 * i).make()).withMachines(20), 1, false)).toList();
        Catalog demo = CatalogReader.read(Path.of("catalogs/heronfold-yard"));
        AtomicInteger begun = new AtomicInteger();
        OrderOutcome outcome = new OrderPlanner(demo, 1).plan(new OrderRequest("order", lines, OptionalInt.empty(), 0, 0, Map.of()),
                Deadline.never().or(() -> (isInLinearProgram() ? begun.incrementAndGet() : begun.get()) >= 2 * 10 - 1), progress -> { });
        assertThat(begun).hasValue(2 * 10 - 1);
        assertThat(outcome.proof().ended()).isEqualTo(OrderOutcome.End.TIME);
    }

    private static boolean isInLinearProgram() {
        return StackWalker.getInstance().walk(frames -> frames.anyMatch(frame -> frame.getClassName().equals(LinearProgram.class.getName())));
    }

    /** Sixty lines take whichever box is cheaper until one line comes for which only this will do. */
    @Test
    void aFirstOrderOfVeryManyLinesMakesRoomForWhatOnlyOnePartSuits() {
        Platform other = Samples.platform().sku("OTHER").counts(1).channels(2, 1).supplies().make();
        Catalog shop = Samples.catalog(List.of(box().make(), other), List.of(Samples.P10), List.of(M8, N8), lot("BOX", "north", 90, 10_000),
                lot("OTHER", "north", 9, 12_000), lot("LOW", "north", 500, 1_000), lot("P10", "north", 500, 5_000), lot("M8", "north", 900, 2_000));
        List<OrderLine> lines = new ArrayList<>(unlike().lines());
        lines.add(new OrderLine("last", Request.named("last").withPlatforms(Set.of("BOX")).withRequire(Samples.require().memoryGb(1).make()), 1, false));
        AtomicInteger asked = new AtomicInteger();
        OrderOutcome outcome = new OrderPlanner(shop, 1).plan(new OrderRequest("order", lines, OptionalInt.empty(), 0, 0, Map.of()),
                Deadline.never().or(() -> asked.incrementAndGet() > 2 * SOON), progress -> { });
        assertThat(outcome.missing()).isZero();
        assertThat(outcome.proof().ended()).isEqualTo(OrderOutcome.End.TIME);
    }

    /** Of the cheaper modules one machine's are left for the last line, which wants all of one part number and may not take any from lines of more weight. */
    @Test
    void aLineThatAPartWasTooLittleForTakesAnother() {
        Catalog shop = shop(lot("BOX", "north", 90, 10_000), lot("LOW", "north", 90, 1_000), lot("P10", "north", 90, 5_000), lot("M8", "north", 90, 2_000),
                lot("N8", "north", 51, 1_000));
        List<OrderLine> lines = new ArrayList<>();
        for (int i = 0; i < 26; i++) {
            Request asked = Request.named("line " + i).withMachines(2)
                    .withRequire(Samples.require().memoryGb(1 + i / 8.0).make().withPopulated(new MemoryWish(false, true)));
            lines.add(new OrderLine("line " + i, asked, i < 25 ? 2 : 1, false));
        }
        OrderRequest order = new OrderRequest("order", lines, OptionalInt.empty(), 0, 0, Map.of());
        assertThat(new OrderPlanner(shop, 1).first(order, Deadline.never()).missing()).isZero();
    }

    /** The line that would wait takes what is cheapest, and that is all that the other accepts. */
    @Test
    void aFirstOrderLeavesEarlyLotsToLinesThatAcceptNoOthers() {
        Lot late = new Lot("P10", "late", "north", Condition.NEW, new Availability(1, 9), lot("P10", "north", 1, 6_000).breaks(), false);
        Catalog shop = shop(lot("BOX", "north", 9, 10_000), lot("LOW", "north", 9, 1_000), lot("P10", "north", 1, 5_000), late, lot("M8", "north", 9, 2_000));
        Request waits = line(1, 8, Set.of()).request();
        List<OrderLine> lines = List.of(new OrderLine("waits", waits, 2, false),
                new OrderLine("now", waits.withLimit(Samples.limit().leadDays(0).make()), 1, false));
        OrderOutcome outcome = new OrderPlanner(shop, 1).first(new OrderRequest("order", lines, OptionalInt.empty(), 0, 0, Map.of()), Deadline.never());
        assertThat(outcome.missing()).isZero();
    }
}
