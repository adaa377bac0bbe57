package sledwright.desk.view;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import sledwright.domain.Catalog;
import sledwright.domain.Discount;
import sledwright.explain.WorkStep;
import sledwright.rules.Order;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/**
 * What one step of work costs.
 *
 * @param step   of at least this many percent
 * @param next   the cheapest build that does so much more; empty where none does
 * @param words  the same as a sentence
 */
public record MoreWork(BigDecimal step, Optional<Next> next, Sentence words) {

    /**
     * The next build.
     *
     * @param work    of one machine
     * @param percent more than the first build's
     * @param extra   what is paid more for all machines; below 0: less
     * @param within  whether it keeps the limit of the price
     * @param freed   whether its cores no longer wait for memory
     */
    public record Next(double work, BigDecimal percent, BigDecimal extra, boolean within, boolean freed, List<WorkStep.Swap> swaps) {
    }

    public static MoreWork of(Optional<WorkStep> found, Order best, Discount discount, Catalog shop) {
        BigDecimal step = BigDecimal.valueOf(best.request().step()).movePointRight(2).stripTrailingZeros();
        Optional<Next> next = found.map(one -> new Next(one.order().figures().work(),
                BigDecimal.valueOf(one.share() * 100).setScale(1, RoundingMode.HALF_UP).stripTrailingZeros(),
                shop.amount(discount.ofOthers().net(one.order().price().total()) - discount.net(best.price().total())),
                one.within(), one.freed(), one.swaps()));
        return new MoreWork(step, next, next.map(one -> words(one, found.orElseThrow().order())).orElseGet(() -> step.signum() == 0
                ? Sentence.plain("No valid build does more work.")
                : Sentence.of("No valid build does %s %% more work.", Numbers.plain(step.doubleValue()))));
    }

    private static Sentence words(Next next, Order order) {
        Object with = next.swaps.isEmpty() ? "Otherwise fitted, it does" : next.freed
                ? Sentence.of("With %s the cores no longer wait for memory:", swaps(next)) : Sentence.of("With %s it does", swaps(next));
        Object price = next.extra.signum() == 0 ? "at the same price"
                : Sentence.of("for %s %s", order.words(next.extra.abs().unscaledValue().longValueExact()),
                next.extra.signum() > 0 ? "more" : "less");
        return Sentence.of("%s %s %% more work (%s) %s%s.", with, Numbers.plain(next.percent.doubleValue()),
                Numbers.plain(Math.rint(next.work * 10) / 10), price, next.within ? "" : ", above the limit of the price");
    }

    private static String swaps(Next next) {
        return String.join(", ", next.swaps.stream().map(swap -> "%s instead of %s".formatted(swap.to(), swap.from())).toList());
    }
}
