package sledwright.planner.order;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sledwright.domain.Availability;
import sledwright.domain.Condition;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Request;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.relax.Pricer;
import sledwright.planner.order.relax.Restrictions;
import sledwright.samples.RequirementsSketch;
import sledwright.samples.Samples;

/** Three machines of two processors; each processor has modules of its own, so that a machine takes two at least. */
class WholeOrdersTest {

    private static final MemoryModule FEW = Samples.module("FEW", 8).ranks(1).width(8).make();
    private static final MemoryModule ENOUGH = Samples.module("ENOUGH", 16).ranks(1).width(8).make();

    private static final class Line {
        private final Market market;
        private final WholeOrders wholes;

        Line(RequirementsSketch require) {
            List<Lot> lots = new ArrayList<>();
            List.of("BOX", "LOW", "P10").forEach(sku -> lots.add(Samples.lot(sku, "A", 9, 1_000)));
            lots.add(lot("FEW", "north", 5));
            lots.add(lot("ENOUGH", "north", 4));
            lots.add(lot("ENOUGH", "south", 2));
            Request request = Request.named("web").withMachines(3).withRequire(require.make());
            market = new Market(Samples.catalog(List.of(Samples.platform().counts(2).channels(2, 1).supplies().make()),
                    List.of(Samples.P10), List.of(FEW, ENOUGH), lots.toArray(Lot[]::new)),
                    new OrderRequest("order", List.of(new OrderLine("web", request, 1, false)), OptionalInt.empty(), 0, 0, Map.of()));
            wholes = new WholeOrders(market, new Pricer(market, new Search(market.catalog()), true));
        }

        Set<Integer> parts(String... skus) {
            return Set.copyOf(List.of(skus).stream().map(market.index()::get).toList());
        }
    }

    private static RequirementsSketch require(int memoryGb) {
        return Samples.require().memoryGb(memoryGb);
    }

    private static Lot lot(String sku, String supplier, int available) {
        return new Lot(sku, "A of " + supplier, supplier, Condition.NEW, new Availability(available, 0),
                Samples.lot(sku, "A", available, 1_000).breaks(), false);
    }

    /** By its capacity one module would do, of which there are enough for three machines. */
    @Test
    void withoutASearchCapacityAloneCounts() {
        assertThat(new Line(require(8).oneModulePart()).wholes.rough()).isEqualTo(Restrictions.NONE);
        Line large = new Line(require(16).oneModulePart());
        assertThat(large.wholes.rough().barred()).isEqualTo(Map.of(0, large.parts("FEW")));
    }

    @Test
    void partsOfWhichTheMachinesNeedMoreThanThereAreAreRuledOut() {
        Line line = new Line(require(8).oneModulePart());
        assertThat(line.wholes.of(Restrictions.NONE, Deadline.never()).barred()).isEqualTo(Map.of(0, line.parts("FEW")));
    }

    @Test
    void whatASupplierLeavesOutIsNotThere() {
        Line line = new Line(require(8).oneModulePart());
        int south = line.market.suppliers().indexOf(Lot.supplierKey("south"));
        assertThat(line.wholes.of(Restrictions.NONE.with(south, false), Deadline.never()).barred())
                .isEqualTo(Map.of(0, line.parts("FEW", "ENOUGH")));
    }

    @Test
    void aLineOfAnyPartsMayMixThem() {
        assertThat(new Line(require(8)).wholes.of(Restrictions.NONE, Deadline.never())).isEqualTo(Restrictions.NONE);
    }
}
