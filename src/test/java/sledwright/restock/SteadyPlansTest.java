package sledwright.restock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import sledwright.domain.Catalog;
import sledwright.domain.DemandClass;
import sledwright.domain.OrdersByMonth;
import sledwright.domain.RestockRequest;
import sledwright.domain.SupplyOffer;
import sledwright.generator.time.Deadline;
import sledwright.samples.Samples;

/** What must not depend on the budget, on luck, or on what further suppliers offer. */
class SteadyPlansTest {

    /** Two classes want the same boxes and modules, of which there are too few. */
    private static final Catalog SHORT = SmallShop.with(Samples.lot("BOX", "B1", 4, 12_000), Samples.lot("R16", "M1", 9, 2000), Samples.lot("R32", "M2", 4, 5000));
    private static final List<DemandClass> CLASSES = List.of(SmallShop.asking("small", new OrdersByMonth.Poisson(4), 16, 3000, 100),
            SmallShop.asking("large", new OrdersByMonth.Months(List.of(1, 3, 2)), 64, 9000, 500));
    private static final List<SupplyOffer> OFFERS = List.of(SmallShop.offer("BOX", 11_500, 8, 1, 0), SmallShop.offer("R16", 1900, 12, 4, 0),
            SmallShop.offer("R32", 4700, 8, 2, 0));

    private static RestockRequest request(OptionalLong budget, SupplyOffer... more) {
        List<SupplyOffer> offers = new ArrayList<>(OFFERS);
        offers.addAll(List.of(more));
        return SmallShop.request(CLASSES, budget, 0.1, 100, offers.toArray(SupplyOffer[]::new));
    }

    private static RestockPlan plan(RestockRequest request, long seed) {
        return Restocker.plan(SHORT, request, seed, Deadline.never(), line -> { });
    }

    @Test
    void whatIsEarnedWithoutBuyingIsOneFigureWhateverTheBudget() {
        RestockPlan.Expected without = plan(request(OptionalLong.of(0)), 0).earned().without();
        for (OptionalLong budget : List.of(OptionalLong.of(20_000), OptionalLong.of(60_000), OptionalLong.empty())) {
            RestockPlan plan = plan(request(budget), 0);
            assertThat(plan.earned().without()).as("budget %s", budget).isEqualTo(without);
            assertThat(plan.earned().with().mean()).isGreaterThan(without.mean());
        }
    }

    @Test
    void whatCannotBuyEarnsNothingMore() {
        RestockPlan plan = plan(request(OptionalLong.of(0)), 0);
        assertThat(plan.buys()).isEmpty();
        assertThat(plan.earned().gain().mean()).isZero();
        assertThat(plan.earned().with()).isEqualTo(plan.earned().without());
    }

    @Test
    void aFurtherOfferDoesNotLowerTheBound() {
        double bound = plan(request(OptionalLong.of(60_000)), 0).bound().most();
        for (SupplyOffer more : List.of(SmallShop.offer("BOX", 6000, 1, 1, 0), SmallShop.offer("R16", 100, 2, 1, 0), SmallShop.offer("R16", 9000, 50, 1, 0),
                SmallShop.offer("P10", 10, 500, 1, 0), SmallShop.offer("R32", 4699, 1, 1, 20))) {
            RestockRequest request = request(OptionalLong.of(60_000), more);
            assertThat(plan(request, 0).bound().most()).as(more.toString()).isGreaterThanOrEqualTo(bound * (1 - 2e-3));
        }
    }

    /** A unit that costs a tenth of what it is worth is no profit on the shelf: nobody buys what no order takes. */
    @Test
    void whatIsCheapIsNotBoughtToBeLeftOver() {
        RestockPlan plan = plan(request(OptionalLong.empty(), SmallShop.offer("R32", 500, 10_000, 1, 0)), 0);
        assertThat(plan.buys()).filteredOn(buy -> buy.offer().unitCost() == 500).singleElement()
                .satisfies(buy -> assertThat(buy.quantity()).isBetween(2, 60));
        assertThat(plan.bound().most()).isLessThan(plan(request(OptionalLong.empty()), 0).bound().most() + 60 * 4500);
    }

    @Test
    void threeSeedsAgreeWithinTheirIntervals() {
        List<RestockPlan.Expected> gains = List.of(0L, 1L, 2L).stream().map(seed -> plan(request(OptionalLong.of(60_000)), seed).earned().gain()).toList();
        assertThat(gains).allSatisfy(one -> assertThat(gains).allSatisfy(other ->
                assertThat(one.mean()).isCloseTo(other.mean(), within(one.halfWidth() + other.halfWidth()))));
    }

    /** 1.959964 deviations: the normal distribution. */
    @Test
    void theIntervalCountsHowFarApartTheSearchesEnded() {
        assertThat(Restocker.expected(new double[] {1400, 1400}, 200).halfWidth()).isCloseTo(1.959964 * 200, within(0.01));
        assertThat(Restocker.expected(new double[] {1300, 1500}, 0).halfWidth()).isCloseTo(1.959964 * 100, within(0.01));
        assertThat(Restocker.expected(new double[] {1300, 1500}, 200).halfWidth()).isCloseTo(1.959964 * Math.hypot(100, 200), within(0.01));
    }
}
