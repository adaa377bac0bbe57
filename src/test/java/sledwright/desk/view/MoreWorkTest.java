package sledwright.desk.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import sledwright.domain.Discount;
import sledwright.explain.WorkStep;
import sledwright.explain.WorkStep.Swap;
import sledwright.rules.Order;
import sledwright.samples.Answers;

/** What one step of work costs, in words. */
class MoreWorkTest {

    private static final Order BEST = Answers.order(Answers.ASKED, Answers.cool());
    private static final Order NEXT = Answers.order(Answers.ASKED, Answers.hot());
    private static final Swap EIGHT = new Swap("4 x 16 GB", "8 x 16 GB");

    private static MoreWork step(Order order, Discount discount, boolean freed, Swap... swaps) {
        return MoreWork.of(Optional.of(new WorkStep(order, 0.2304, true, freed, List.of(swaps))), BEST, discount, Answers.SHOP);
    }

    @Test
    void whatIsExchangedAndWhetherCoresStillWaitIsSaid() {
        long extra = NEXT.price().total() - BEST.price().total();
        String more = "for %s %s.".formatted(BEST.words(Math.abs(extra)), extra > 0 ? "more" : "less");
        assertThat(step(NEXT, Discount.NONE, true, EIGHT).words().toString())
                .startsWith("With 8 x 16 GB instead of 4 x 16 GB the cores no longer wait for memory: 23 % more work (").endsWith(more);
        assertThat(step(NEXT, Discount.NONE, false, EIGHT).words().toString()).startsWith("With 8 x 16 GB instead of 4 x 16 GB it does 23 % more work (");
        assertThat(step(BEST, Discount.NONE, false).words().toString()).startsWith("Otherwise fitted, it does 23 % more work (").endsWith(" at the same price.");
    }

    /** What is paid more, not what costs more. */
    @Test
    void aDiscountCountsAndAnAgreedPriceIsThatOfTheFirstBuildAlone() {
        BigDecimal extra = step(NEXT, Discount.NONE, false).next().orElseThrow().extra();
        assertThat(step(NEXT, new Discount(Optional.of(BigDecimal.valueOf(50)), OptionalLong.empty()), false).next().orElseThrow().extra())
                .isCloseTo(extra.divide(BigDecimal.valueOf(2)), within(new BigDecimal("0.01")));
        BigDecimal above = step(NEXT, new Discount(Optional.empty(), OptionalLong.of(0)), false).next().orElseThrow().extra();
        assertThat(above).isEqualByComparingTo(Answers.SHOP.amount(NEXT.price().total()));
    }

    @Test
    void thatNothingDoesMoreIsSaid() {
        MoreWork none = MoreWork.of(Optional.empty(), BEST, Discount.NONE, Answers.SHOP);
        assertThat(none.words().toString()).isEqualTo("No valid build does 5 % more work.");
        Order any = Answers.order(Answers.ASKED.withAlternatives(1, 0), Answers.cool());
        assertThat(MoreWork.of(Optional.empty(), any, Discount.NONE, Answers.SHOP).words().toString()).isEqualTo("No valid build does more work.");
    }
}
