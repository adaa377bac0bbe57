package sledwright.planner.order.relax;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sledwright.domain.Availability;
import sledwright.domain.Condition;
import sledwright.domain.Lot;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Request;
import sledwright.planner.order.market.Market;
import sledwright.samples.Samples;

/** How orders are split by who delivers, where a mix takes a share of several suppliers. */
class TeamsTest {

    private static Market market(int suppliers, OptionalInt most) {
        List<Lot> lots = new ArrayList<>();
        for (int i = 0; i < suppliers; i++) {
            lots.add(new Lot("P10", "A" + i, "S" + i, Condition.NEW, new Availability(5, 0),
                    Samples.lot("P10", "A", 5, 1_000).breaks(), false));
        }
        OrderLine line = new OrderLine("web", Request.named("web"), 1, false);
        return new Market(Samples.catalog(List.of(Samples.platform().make()), List.of(Samples.P10), List.of(Samples.R16),
                lots.toArray(Lot[]::new)), new OrderRequest("order", List.of(line), most, 10, 0, Map.of()));
    }

    private static List<Restrictions> split(Market market, Restrictions settled, Map<Integer, Double> shares) {
        RestrictedMaster.Mix mix = new RestrictedMaster.Mix(0, Map.of(), Map.of(), Map.of(), shares, 0, null);
        return new Branching(market).first(settled, mix, 0);
    }

    private static Set<Integer> open(Market market, Restrictions way) {
        return IntStream.range(0, market.suppliers().size()).filter(supplier -> way.suppliers().getOrDefault(supplier, true)).boxed()
                .collect(Collectors.toSet());
    }

    @Test
    void everyTeamIsLookedAtOnce() {
        Market market = market(4, OptionalInt.of(2));
        List<Restrictions> teams = split(market, Restrictions.NONE, Map.of(0, 0.5, 1, 0.7, 3, 0.8));
        assertThat(teams).extracting(team -> open(market, team)).containsExactlyInAnyOrder(Set.of(0, 1), Set.of(0, 2), Set.of(0, 3),
                Set.of(1, 2), Set.of(1, 3), Set.of(2, 3));
        assertThat(teams).extracting(team -> team.suppliers().containsValue(true)).as("nobody has to deliver").containsOnly(false);
    }

    /** Of twelve suppliers there are 220 teams of three, and thirteen are too many to count them. */
    @Test
    void whereTheyAreTooManyTheLargestShareDeliversOrNot() {
        for (int suppliers : new int[] {12, 13}) {
            Market market = market(suppliers, OptionalInt.of(3));
            assertThat(split(market, Restrictions.NONE, Map.of(0, 0.5, 1, 0.7))).extracting(Restrictions::suppliers)
                    .containsExactly(Map.of(1, true), Map.of(1, false));
        }
    }

    @Test
    void withoutALimitThereAreNoTeams() {
        assertThat(split(market(3, OptionalInt.empty()), Restrictions.NONE, Map.of(0, 0.5, 1, 0.7))).extracting(Restrictions::suppliers)
                .containsExactly(Map.of(1, true), Map.of(1, false));
    }

    /** Once one delivers of two that may, the other one that has to makes them all. */
    @Test
    void withTheLastThatMayTheOthersDeliverNothing() {
        Market market = market(3, OptionalInt.of(2));
        List<Restrictions> ways = split(market, Restrictions.NONE.with(0, true), Map.of(0, 1.0, 1, 0.7, 2, 0.3));
        assertThat(ways).extracting(Restrictions::suppliers).containsExactly(Map.of(0, true, 1, true, 2, false), Map.of(0, true, 1, false));
    }

    @Test
    void wholeSuppliersAreNotSplit() {
        assertThat(split(market(3, OptionalInt.of(2)), Restrictions.NONE, Map.of(0, 1.0, 1, 1.0))).isEmpty();
    }
}
