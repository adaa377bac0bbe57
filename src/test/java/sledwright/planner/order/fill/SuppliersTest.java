package sledwright.planner.order.fill;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import sledwright.domain.Availability;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Request;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.market.Columns;
import sledwright.planner.order.market.Draws;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.ScaledMoney;
import sledwright.planner.order.relax.Pricer;
import sledwright.samples.Samples;

/** One machine of four parts, each cheapest from another supplier; north and south have all of them. */
class SuppliersTest {

    private static final MemoryModule M8 = Samples.module("M8", 8).ranks(1).width(8).make();

    private static final Catalog SHOP = Samples.catalog(List.of(Samples.platform().counts(1).channels(2, 1).supplies().make()),
            List.of(Samples.P10), List.of(M8),
            lot("BOX", "north", 10_000), lot("BOX", "south", 10_900), lot("LOW", "north", 1_300), lot("LOW", "south", 1_000),
            lot("P10", "north", 5_100), lot("P10", "south", 5_200), lot("P10", "west", 5_000),
            lot("M8", "north", 2_100), lot("M8", "south", 2_050), lot("M8", "east", 2_000));

    private static Lot lot(String sku, String supplier, long price) {
        Lot lot = Samples.lot(sku, "A", 5, price);
        return new Lot(sku, "A of " + supplier, supplier, Condition.NEW, new Availability(5, 0), lot.breaks(), false);
    }

    /** The order that is cheapest from all, and what of its lines is open filled again. */
    private static final class Desk {
        private final Market market;
        private final Suppliers suppliers;
        private final UnaryOperator<Tally> mend;
        private final Tally all;

        Desk(OptionalInt most, long charge) {
            OrderLine line = new OrderLine("web", Request.named("web").withRequire(Samples.require().memoryGb(8).make()), 1, false);
            market = new Market(SHOP, new OrderRequest("order", List.of(line), most, charge, 0, Map.of()));
            suppliers = new Suppliers(market);
            Filler filler = new Filler(market, new Pricer(market, new Search(SHOP)), new Columns(1));
            mend = tally -> {
                filler.fill(tally, List.of(0), Deadline.never());
                return tally;
            };
            boolean[] open = {true, true, true, true};
            all = mend.apply(new Tally(market, new Draws(market, open), new long[] {100_000 * ScaledMoney.ONE}));
        }

        Set<String> names(Tally tally) {
            return suppliers.used(tally).stream().map(market::spelled).collect(Collectors.toSet());
        }

        long cost(Tally tally) {
            return suppliers.cost(tally) / ScaledMoney.ONE;
        }
    }

    @Test
    void anOrderFromFewEnoughStays() {
        Desk desk = new Desk(OptionalInt.of(4), 0);
        assertThat(desk.names(desk.all)).containsExactlyInAnyOrder("north", "south", "west", "east");
        assertThat(desk.suppliers.fewest(desk.all, desk.mend)).isSameAs(desk.all);
    }

    /** Those who deliver most are north by its box and west by its processor, who have all parts between them. */
    @Test
    void ofTooManyThoseStayWhoDeliverMost() {
        Desk desk = new Desk(OptionalInt.of(2), 0);
        Tally fewest = desk.suppliers.fewest(desk.all, desk.mend);
        assertThat(desk.names(fewest)).containsExactlyInAnyOrder("north", "west");
        assertThat(fewest.missing()).isZero();
        assertThat(desk.cost(fewest)).isEqualTo(10_000 + 1_300 + 5_000 + 2_100);
        Desk single = new Desk(OptionalInt.of(1), 0);
        assertThat(single.names(single.suppliers.fewest(single.all, single.mend))).containsExactly("north");
    }

    /** Each supplier but north and south saves less than its charge; without south the heat sink takes 300 more. */
    @Test
    void aSupplierIsClosedWhereThatSavesMoreThanItsPartsDo() {
        Desk cheap = new Desk(OptionalInt.empty(), 250);
        Tally settled = cheap.suppliers.settle(cheap.all, cheap.mend);
        assertThat(cheap.names(settled)).containsExactlyInAnyOrder("north", "south");
        assertThat(cheap.cost(settled)).isEqualTo(10_000 + 1_000 + 5_100 + 2_050 + 2 * 250);
        Desk dear = new Desk(OptionalInt.empty(), 500);
        assertThat(dear.names(dear.suppliers.settle(dear.all, dear.mend))).containsExactly("north");
        Desk free = new Desk(OptionalInt.empty(), 0);
        assertThat(free.suppliers.settle(free.all, free.mend)).as("nobody charges").isSameAs(free.all);
    }

    /** Closed as long as there are too many, the one first whose parts are least missed. */
    @Test
    void closingOneAfterTheOtherKeepsTheCheapestTwo() {
        Desk desk = new Desk(OptionalInt.of(2), 0);
        Tally settled = desk.suppliers.settle(desk.all, desk.mend);
        assertThat(desk.names(settled)).containsExactlyInAnyOrder("north", "south");
        assertThat(desk.suppliers.tooMany(settled)).isFalse();
        assertThat(desk.cost(settled)).isEqualTo(10_000 + 1_000 + 5_100 + 2_050);
    }
}
