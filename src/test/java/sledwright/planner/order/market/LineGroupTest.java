package sledwright.planner.order.market;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sledwright.domain.Catalog;
import sledwright.domain.Limits;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Request;
import sledwright.samples.Samples;

class LineGroupTest {

    private static final Catalog SHOP = Samples.catalog(List.of(Samples.platform().make()), List.of(Samples.P10), List.of());

    private static Request asked(int cores, double gb) {
        return Request.named("one").withRequire(Samples.require().cores(cores).memoryGb(gb).make());
    }

    private static Market market(Request... requests) {
        List<OrderLine> lines = new ArrayList<>();
        for (Request request : requests) {
            lines.add(new OrderLine("line " + lines.size(), request, 1, false));
        }
        return new Market(SHOP, new OrderRequest("order", lines, OptionalInt.empty(), 0, 0, Map.of()));
    }

    private static List<LineGroup> groups(int most, boolean byPool, Request... requests) {
        return LineGroup.of(market(requests), IntStream.range(0, requests.length).boxed().toList(), most, byPool);
    }

    @Test
    void whatAsksForMostSuitsEachAndWhatAsksForLeastIsSuitedByEach() {
        Limits strict = Limits.NONE.withPowerW(OptionalDouble.of(300)).withInletC(OptionalDouble.of(30)).withLeadDays(OptionalInt.of(3));
        LineGroup group = groups(1, false, asked(8, 64), asked(12, 16).withLimit(strict),
                asked(4, 32).withLimit(strict.withPowerW(OptionalDouble.of(250)).withAltitudeM(900))).get(0);
        Request most = group.most();
        assertThat(most.require().cores()).isEqualTo(12);
        assertThat(most.require().memoryGb()).isEqualTo(64);
        assertThat(most.limit().powerW()).hasValue(250);
        assertThat(most.limit().inletC()).hasValue(30);
        assertThat(most.limit().altitudeM()).isEqualTo(900);
        assertThat(most.limit().mostDays()).hasValue(3);
        Request least = group.least();
        assertThat(least.require().cores()).isEqualTo(4);
        assertThat(least.require().memoryGb()).isEqualTo(16);
        assertThat(least.limit().powerW()).isEmpty();
        assertThat(least.limit().inletC()).isEmpty();
        assertThat(least.limit().altitudeM()).isZero();
        assertThat(least.limit().mostDays()).isEmpty();
    }

    @Test
    void whatDiffersInMoreThanFiguresStandsApart() {
        Request plain = asked(8, 64);
        assertThat(groups(1, false, plain, plain.withForbid(Set.of("P10")), plain.withUse(Set.of("P10")), plain.withPlatforms(Set.of("BOX")),
                plain.withRequire(plain.require().withProcessors(1)), plain.withLimit(Limits.NONE.withMainsV(OptionalDouble.of(110)))))
                .hasSize(6);
        Request soon = plain.withLimit(Limits.NONE.withLeadDays(OptionalInt.of(3)));
        assertThat(groups(1, false, plain, soon)).hasSize(1);
        assertThat(groups(1, true, plain, soon)).as("not all lots are for both").hasSize(2);
    }

    @Test
    void groupsAreSplitWhereTheyDifferMost() {
        List<LineGroup> groups = groups(2, false, asked(8, 64), asked(8, 512), asked(9, 480), asked(8, 70));
        assertThat(groups).extracting(LineGroup::lines).containsExactly(List.of(1, 2), List.of(0, 3));
        LineGroup alike = groups(9, false, asked(8, 64), asked(8, 64)).get(0);
        assertThat(alike.isSplittable()).isFalse();
        assertThat(alike.split()).containsExactly(alike);
    }
}
