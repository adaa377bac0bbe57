package sledwright.planner.order.relax;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.MemoryModule;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Request;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.Range;
import sledwright.samples.Samples;

/** How orders are split by the units that machines take, where a split before left a unit less to take instead. */
class EvadedSplitsTest {

    private static final MemoryModule FEW = Samples.module("FEW", 8).ranks(1).width(8).make();
    private static final Catalog SHOP = Samples.catalog(List.of(Samples.platform().counts(1).channels(4, 1).supplies().make()), List.of(Samples.P10),
            List.of(FEW), Samples.lot("BOX", "A", 9, 1), Samples.lot("LOW", "A", 9, 1), Samples.lot("P10", "A", 9, 1), Samples.lot("FEW", "A", 30, 1));
    private static final Request ASKED = Request.named("web").withMachines(4);

    private final Market market = new Market(SHOP, new OrderRequest("order", List.of(new OrderLine("web", ASKED, 1, false)), OptionalInt.empty(), 0, 0, Map.of()));
    private final int part = market.index().get("FEW");

    private Column column(int modules) {
        Request asked = ASKED.withMachines(1).withRequire(Samples.require().memoryGb(8 * modules).make());
        Build build = new Search(SHOP).run(asked, Deadline.never()).ranked().get(0).machines().get(0);
        Column column = new Pricer(market, new Search(SHOP)).column(0, List.of(build), null);
        assertThat(column.unitsOf(part)).isEqualTo(modules);
        return column;
    }

    /** The numbers of modules by which machines are told apart. */
    private Set<Integer> split(Restrictions settled, Map<Column, Double> columns) {
        RestrictedMaster.Mix mix = new RestrictedMaster.Mix(0, columns, Map.of(), Map.of(), Map.of(), 0, null);
        return new Branching(market).ways(settled, mix).stream().flatMap(List::stream)
                .flatMap(way -> way.traits().keySet().stream().filter(trait -> !way.of(trait).equals(settled.of(trait)))).filter(trait -> trait instanceof Trait.Takes takes && takes.part() == part)
                .map(trait -> ((Trait.Takes) trait).least()).collect(Collectors.toSet());
    }

    private Restrictions atMostOneOf(int modules) {
        return Restrictions.NONE.with(new Trait.Takes(0, part, modules), Range.ANY.upTo(1));
    }

    @Test
    void atFirstBySoManyAsMachinesTake() {
        assertThat(split(Restrictions.NONE, Map.of(column(3), 2.5))).containsExactly(3);
        assertThat(split(atMostOneOf(3), Map.of(column(3), 0.5))).as("no fewer than before").containsExactly(3);
    }

    @Test
    void evadedByAUnitLessBySoFewAsNoOtherMachineHas() {
        assertThat(split(atMostOneOf(4), Map.of(column(3), 2.5))).containsExactly(1);
        assertThat(split(atMostOneOf(4), Map.of(column(3), 2.5, column(1), 0.25))).containsExactlyInAnyOrder(1, 2);
    }
}
