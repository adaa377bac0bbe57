package sledwright.restock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import sledwright.domain.Catalog;
import sledwright.domain.OrdersByMonth;
import sledwright.domain.RestockRequest;
import sledwright.generator.time.Deadline;
import sledwright.samples.Samples;

/** Plans where parts are free, or cost nothing to keep; what parts are worth and when to buy them again. */
class ShelfAndPlanTest {

    private static RestockPlan plan(Catalog shop, RestockRequest request) {
        return Restocker.plan(shop, request, 0, Deadline.never(), line -> { });
    }

    private static final OrdersByMonth THREE = new OrdersByMonth.Poisson(3);

    /** No month of three expected orders brings thirty, and no machine takes more than four modules where they are free. */
    @Test
    void aPartForNothingIsBoughtAsFarAsOrdersTakeIt() {
        for (OptionalLong budget : List.of(OptionalLong.empty(), OptionalLong.of(0), OptionalLong.of(50_000))) {
            RestockPlan plan = plan(SmallShop.with(Samples.lot("BOX", "B1", 100, 12_000)), SmallShop.request(
                    List.of(SmallShop.asking("all", THREE, 16, 3000, 0)), budget, 0.1, 100, SmallShop.offer("R16", 0, 12_000, 1, 0)));
            assertThat(plan.buys()).as("budget %s", budget).singleElement()
                    .satisfies(buy -> assertThat(buy.quantity()).isBetween(3, 120));
            assertThat(plan.cost()).isZero();
            assertThat(plan.earned().gain().mean()).isPositive();
            assertThat(plan.earned().without().mean()).as("nothing is bought").isZero();
        }
    }

    @Test
    void ofPlansThatEarnAsMuchTheCheapestIsTaken() {
        RestockPlan plan = plan(SmallShop.with(Samples.lot("R16", "M1", 100, 2000)), SmallShop.request(
                List.of(SmallShop.asking("all", THREE, 16, 3000, 0)), OptionalLong.empty(), 0, 100, SmallShop.offer("BOX", 10_000, 5000, 1, 0)));
        assertThat(plan.buys()).singleElement().satisfies(buy -> assertThat(buy.quantity()).isBetween(3, 30));
    }

    /** Ten must be bought where hardly one is wanted: what one more would bring is what it is worth at the end. */
    @Test
    void whatThePlanPaysIsNotThereforeWorthPaying() {
        RestockPlan plan = plan(SmallShop.with(Samples.lot("BOX", "B1", 100, 12_000), Samples.lot("R32", "M2", 2, 5000)), SmallShop.request(
                List.of(SmallShop.asking("all", THREE, 16, 90_000, 0)), OptionalLong.empty(), 0.1, 100, SmallShop.offer("R16", 10_000, 30, 30, 0)));
        assertThat(plan.buys()).singleElement().satisfies(buy -> assertThat(buy.quantity()).isEqualTo(30));
        assertThat(plan.parts()).filteredOn(part -> part.sku().equals("R16")).singleElement()
                .satisfies(part -> assertThat(part.value().mostPrice()).hasValue(9000));
    }

    /** Four boxes stand there and no more come, so ten orders a month take four, and four modules of those that are bought. */
    @Test
    void reorderLevelsAreOfWhatThePlanUses() {
        RestockRequest request = SmallShop.request(List.of(SmallShop.asking("all", new OrdersByMonth.Poisson(10), 16, 3000, 0)), OptionalLong.empty(), 0.1, 100,
                SmallShop.offer("R16", 2000, 100, 1, 7), SmallShop.offer("P10", 5000, 100, 1, 7));
        RestockPlan plan = plan(SmallShop.with(Samples.lot("BOX", "B1", 4, 12_000)), request);
        List<Levels.Level> levels = Levels.of(plan);
        assertThat(levels).extracting(level -> level.offer().sku()).containsExactly("P10", "R16");
        assertThat(levels).allSatisfy(level -> assertThat(level.perMonth()).isCloseTo(4, within(0.1)));
        assertThat(levels).allSatisfy(level -> assertThat(level.deviation()).isLessThan(1));
    }

    @Test
    void everyPartThatIsBoughtHasAReorderLevel() {
        RestockRequest request = SmallShop.request(List.of(SmallShop.asking("small", THREE, 16, 3000, 100),
                SmallShop.asking("large", new OrdersByMonth.Months(List.of(1, 3, 2)), 64, 9000, 500)), OptionalLong.of(90_000), 0.1, 100,
                SmallShop.offer("BOX", 10_000, 8, 1, 3), SmallShop.offer("R16", 2000, 12, 4, 3), SmallShop.offer("R32", 4500, 8, 2, 3));
        RestockPlan plan = SmallShop.plan(request);
        assertThat(plan.buys()).extracting(buy -> buy.offer().sku()).hasSizeGreaterThan(1)
                .isSubsetOf(Levels.of(plan).stream().map(level -> level.offer().sku()).toList());
    }
}
