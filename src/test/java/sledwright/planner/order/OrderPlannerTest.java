package sledwright.planner.order;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Pick;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.SupplierNames;
import sledwright.generator.time.Deadline;
import sledwright.samples.PlatformSketch;
import sledwright.samples.Samples;

/** Small orders whose answer can be told by hand; {@code OrderAgainstCpSatTest} has the rest. */
class OrderPlannerTest {

    private static final MemoryModule M8 = Samples.module("M8", 8).ranks(1).width(8).make();
    private static final MemoryModule N8 = Samples.module("N8", 8).ranks(1).width(8).make();

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
        return new Lot(sku, "A of " + supplier, supplier, Condition.NEW, available, 0, lot.breaks(), false);
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
        OrderOutcome own = plan(shop.withSuppliers(new SupplierNames(Map.of(), Set.of("own"))), line(1, 8, Set.of()), OptionalInt.of(1), 500, 0);
        assertThat(own.status()).isEqualTo(OrderStatus.PROVED);
        assertThat(own.best()).isEqualTo(10_000 + 1_000 + 5_000 + 2_000 + 500);
        assertThat(own.price().delivery()).isEqualTo(500);
        assertThat(own.suppliers()).containsExactly("north");
    }
}
