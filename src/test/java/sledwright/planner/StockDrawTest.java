package sledwright.planner;

import static org.assertj.core.api.Assertions.assertThat;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;
import sledwright.samples.Samples;
import sledwright.words.Sentence;

class StockDrawTest {

    private static final Platform BOARD = Samples.platform().supplies().make();
    private static final Build BUILD = Samples.machine(BOARD).processors(1, Samples.P10).channels(4, Samples.R16).build();

    private static final Lot HERE = Samples.lot("R16", "HERE", 3, 3000);
    private static final Lot LATE = Samples.lot("R16", "LATE", 9, 10, Condition.NEW, Map.of(1, 1000L));
    private static final Lot USED = Samples.lot("R16", "USED", 9, 0, Condition.USED, Map.of(1, 900L));
    private static final Lot BOTH = Samples.lot("R16", "BOTH", 9, 10, Condition.USED, Map.of(1, 100L));
    private static final Limits STRICT = Samples.limit().leadDays(5).conditions(Condition.NEW).make();

    private static StockDraw draw(Limits limits, Lot... modules) {
        Lot[] lots = new Lot[modules.length + 3];
        lots[0] = Samples.lot("BOX", "B", 1, 10000);
        lots[1] = Samples.lot("P10", "P", 1, 5000);
        lots[2] = Samples.lot("LOW", "L", 1, 500);
        System.arraycopy(modules, 0, lots, 3, modules.length);
        Catalog catalog = Samples.catalog(List.of(BOARD), List.of(Samples.P10), List.of(Samples.R16), lots);
        return StockDraw.of(List.of(BUILD), Request.named("draw").withLimit(limits), catalog);
    }

    private static List<String> broken(StockDraw draw) {
        return Rulebook.judge(draw.order()).stream().map(Violation::rule).distinct().toList();
    }

    @Test
    void acceptedLotsServeForTheLeastPrice() {
        StockDraw draw = draw(STRICT, Samples.lot("R16", "DEAR", 9, 2000), Samples.lot("R16", "CHEAP", 2, 1500), LATE, USED);
        assertThat(draw.complete()).isTrue();
        assertThat(draw.order().price().total()).isEqualTo(10000 + 5000 + 500 + 2 * 1500 + 2 * 2000);
        assertThat(broken(draw)).isEmpty();
    }

    @Test
    void aLateLotServesWhereNoOtherDoes() {
        StockDraw draw = draw(STRICT, HERE, LATE, BOTH);
        assertThat(draw.complete()).isTrue();
        assertThat(broken(draw)).containsExactly("lead-time");
    }

    @Test
    void aRefusedConditionServesWhereNoOtherDoes() {
        assertThat(broken(draw(STRICT, HERE, USED, BOTH))).containsExactly("condition");
    }

    @Test
    void aLotRefusedForBothServesLast() {
        assertThat(broken(draw(STRICT, HERE, BOTH))).containsExactly("lead-time", "condition");
    }

    @Test
    void tooFewUnitsAreOutOfStockAndHaveNoPrice() {
        StockDraw draw = draw(STRICT, HERE);
        assertThat(draw.complete()).isFalse();
        assertThat(Rulebook.judge(draw.order())).containsExactly(
                new Violation("in-stock", "R16", Sentence.plain("The order needs 4 units of R16; the lots give 3.")));
    }

    @Test
    void aPartThatNobodySellsIsOutOfStock() {
        StockDraw draw = draw(Limits.NONE);
        assertThat(draw.complete()).isFalse();
        assertThat(Rulebook.judge(draw.order())).containsExactly(
                new Violation("in-stock", "R16", Sentence.plain("The order needs 4 units of R16; the lots give 0.")));
    }

    @Test
    void aLotThatSellsOnlyMoreThanIsNeededDoesNotServe() {
        StockDraw draw = draw(Limits.NONE, Samples.lot("R16", "BULK", 50, 0, Condition.NEW, Map.of(10, 10L)));
        assertThat(draw.complete()).isFalse();
        assertThat(broken(draw)).containsExactly("in-stock");
    }
}
