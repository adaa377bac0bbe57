package sledwright.generator;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Energy;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.Objective;
import sledwright.domain.Pick;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Supply;
import sledwright.generator.draw.Shelf;
import sledwright.generator.time.Deadline;
import sledwright.metrics.PowerDraw;
import sledwright.rules.Order;
import sledwright.samples.PlatformSketch;
import sledwright.samples.Samples;

/** Whole searches in a shop of one board with two channels of one slot, and modules of 16 GB that differ in watts. */
class SearchTest {

    private static final MemoryModule LIGHT = Samples.module("LIGHT", 16).powerW(4).make();
    private static final MemoryModule HEAVY = Samples.module("HEAVY", 16).powerW(5).make();
    private static final Request PLAIN = Request.named("search");
    private static final Catalog SHOP = shop(Samples.PAIR);

    private static Catalog shop(Supply supply) {
        Platform box = Samples.platform().counts(1).channels(2, 1).speeds(PlatformSketch.row(ModuleType.RDIMM, Set.of(), 2400)).supplies(supply).make();
        return Samples.catalog(List.of(box), List.of(Samples.P10), List.of(LIGHT, HEAVY), Samples.lot("BOX", "B", 3, 1000), Samples.lot("P10", "C", 4, 50),
                Samples.lot("LOW", "H", 4, 10), Samples.lot(supply.sku(), "W", 8, 30), Samples.lot("LIGHT", "M1", 3, 20), Samples.lot("HEAVY", "M2", 3, 15));
    }

    private static Findings run(Request request) {
        return new Search(SHOP).run(request, Deadline.never());
    }

    @Test
    void theHeaviestMachineComesFirst() {
        Order order = run(PLAIN.withMachines(2).withUse(Set.of()).withRequire(Samples.require().memoryGb(32).make())).ranked().get(0);
        assertThat(order.machines()).extracting(PowerDraw::loadW).containsExactly(85 + 85 + 10.0, 85 + 85 + 9.0);
        assertThat(order.price().total()).isEqualTo(2 * (1000 + 50 + 10 + 60) + 3 * 15 + 20);
        assertThat(order.picks()).extracting(Pick::sku).containsExactlyInAnyOrder("BOX", "P10", "LOW", "PAIR", "LIGHT", "HEAVY");
    }

    @Test
    void mirroredPairsHoldTheSame() {
        Order order = run(PLAIN.withRequire(Samples.require().mode(MemoryMode.MIRRORED).make())).ranked().get(0);
        assertThat(order.machines().get(0).modules().values()).containsExactly(HEAVY, HEAVY);
    }

    @Test
    void whatIsFoundIsSaid() {
        Findings best = run(PLAIN);
        assertThat(best.status()).isEqualTo(Status.PROVED);
        assertThat(best.best()).isEqualTo(1135).isEqualTo(best.bound());
        assertThat(best.complete()).isTrue();
        Findings none = run(PLAIN.withRequire(Samples.require().memoryGb(33).make()));
        assertThat(none.status()).isEqualTo(Status.IMPOSSIBLE);
        assertThat(none.ranked()).isEmpty();
        assertThat(none.best()).isNaN();
        assertThat(none.bound()).isNaN();
        assertThat(none.complete()).isTrue();
        Findings late = new Search(SHOP).run(PLAIN, Deadline.in(Duration.ZERO));
        assertThat(late.status()).isEqualTo(Status.BEST_FOUND);
        assertThat(late.best()).isNaN();
        assertThat(late.bound()).isEqualTo(1135);
        assertThat(late.complete()).isFalse();
        assertThat(List.of(Status.values())).extracting(Status::label).containsExactly("proved", "best-found", "impossible");
        Findings memory = run(PLAIN.withObjective(Objective.MOST_MEMORY));
        assertThat(memory.best()).isEqualTo(32).isEqualTo(memory.bound());
        assertThat(memory.ranked().get(0).price().total()).isEqualTo(1120 + 30);
    }

    /** The same shop at other prices shares what it has in common with this one. */
    @Test
    void anotherCatalogueHasItsOwnPrices() {
        Search search = new Search(SHOP);
        assertThat(search.run(PLAIN, Deadline.never()).best()).isEqualTo(1135);
        Catalog dear = shop(Samples.supply("PAIR", 2, 1, 750, 650, Map.of()));
        assertThat(search.on(dear).run(PLAIN, Deadline.never()).best()).isEqualTo(1135);
    }

    private static Staircase climb(Catalog shop, Axis axis, Optional<Energy> energy, Deadline deadline) {
        return new Search(shop).staircases(PLAIN.withObjective(Objective.MOST_MEMORY)).of(axis, energy, deadline);
    }

    @Test
    void staircases() {
        Staircase memory = climb(SHOP, Axis.MEMORY, Optional.empty(), Deadline.never());
        assertThat(memory.steps()).extracting(step -> step.cost() + "/" + step.figure()).containsExactly("1135/16.0", "1150/32.0");
        assertThat(memory.steps()).extracting(step -> step.order().price().total()).containsExactly(1135L, 1150L);
        assertThat(memory.doubts().none()).isTrue();
        assertThat(memory.proved()).isEqualTo(2);
        assertThat(memory.bound()).isEmpty();
        Staircase load = climb(SHOP, Axis.LOAD, Optional.empty(), Deadline.never());
        assertThat(load.steps()).extracting(step -> step.cost() + "/" + step.figure()).containsExactly("1135/175.0", "1140/174.0");
    }

    /** At ten minor units a kWh the watt between the modules costs more than the five between their prices. */
    @Test
    void staircasesOverPriceAndEnergy() {
        Staircase memory = climb(SHOP, Axis.MEMORY, Optional.of(new Energy(1, 10, 1)), Deadline.never());
        assertThat(memory.doubts().none()).isTrue();
        assertThat(memory.steps()).hasSize(2).allSatisfy(step -> assertThat(step.order().machines().get(0).modules().values()).containsOnly(LIGHT));
    }

    /** Where a greater load may take less from the wall, what was dropped as heavier may have been the one. */
    @Test
    void nothingIsProvedWhereLoadsMayFallAtTheWall() {
        Catalog odd = shop(Samples.supply("PAIR", 2, 1, 750, 650, Map.of(10, 10.0, 20, 90.0)));
        Staircase memory = climb(odd, Axis.MEMORY, Optional.of(new Energy(1, 10, 1)), Deadline.never());
        assertThat(memory.doubts().none()).isFalse();
        assertThat(memory.proved()).isZero();
        assertThat(memory.bound()).isEmpty();
        assertThat(memory.steps()).isNotEmpty();
        assertThat(climb(odd, Axis.MEMORY, Optional.empty(), Deadline.never()).doubts().none()).isTrue();
    }

    @Test
    void aStaircaseThatTimeEndsHasABound() {
        Staircase late = climb(SHOP, Axis.MEMORY, Optional.empty(), Deadline.in(Duration.ZERO));
        assertThat(late.steps()).isEmpty();
        assertThat(late.doubts().none()).isFalse();
        assertThat(late.proved()).isZero();
        assertThat(late.bound()).hasValue(1135);
    }

    @Test
    void lotsOnTheShelf() {
        Catalog shop = Samples.catalog(List.of(), List.of(), List.of(LIGHT), Samples.lot("LIGHT", "NOW", 2, 20), Samples.lot("LIGHT", "SOON", 3, 5, Condition.NEW, Map.of(1, 10L)),
                Samples.lot("LIGHT", "OLD", 4, 0, Condition.USED, Map.of(1, 5L)));
        Shelf all = new Shelf(shop, PLAIN);
        assertThat(all.lots("LIGHT")).hasSize(3);
        assertThat(all.holds("LIGHT", 9)).isTrue();
        assertThat(all.holds("LIGHT", 10)).isFalse();
        assertThat(all.price("LIGHT", 5)).isEqualTo(4 * 5 + 10);
        assertThat(all.price("LIGHT", 0)).isZero();
        assertThat(all.lots("NONE")).isEmpty();
        assertThat(new Shelf(shop, PLAIN.withLimit(Samples.limit().leadDays(4).make())).lots("LIGHT")).hasSize(2).noneMatch(lot -> lot.lot().equals("SOON"));
        assertThat(new Shelf(shop, PLAIN.withLimit(Samples.limit().conditions(Condition.NEW).make())).lots("LIGHT")).hasSize(2).noneMatch(lot -> lot.lot().equals("OLD"));
        assertThat(new Shelf(shop, PLAIN.withForbid(Set.of("LIGHT"))).lots("LIGHT")).isEmpty();
    }
}
