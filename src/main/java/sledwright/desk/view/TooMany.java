package sledwright.desk.view;

import java.math.BigDecimal;
import java.util.Optional;
import sledwright.domain.Catalog;
import sledwright.domain.Request;
import sledwright.explain.conflict.Relaxation;
import sledwright.planner.order.OrderOutcome;
import sledwright.planner.order.OrderStatus;
import sledwright.rules.stock.Budget;
import sledwright.words.Numbers;
import sledwright.words.Sentence;
import sledwright.words.Sum;

/**
 * How many machines can be had where not all that were asked for can be alike. Prices are of the list, in units of the currency.
 *
 * @param asked      machines
 * @param alike      the most alike ones that were found
 * @param alikePrice of these
 * @param mixed      an order of machines that may differ; empty where there was no time for it, or none differ
 */
public record TooMany(int asked, int alike, BigDecimal alikePrice, Optional<Mixed> mixed, String currency) {

    /**
     * An order of machines of several builds, each as it was asked for.
     *
     * @param machines that it delivers
     * @param builds   how many kinds there are
     * @param proved   whether no such order costs less
     * @param within   whether it keeps the limit of the price
     */
    public record Mixed(int machines, int builds, BigDecimal price, boolean proved, boolean within) {
    }

    /**
     * @param fewer   the way out that asks for fewer machines and changes nothing else
     * @param outcome the same request filled as an order; empty where that was not tried
     */
    public static TooMany of(Request request, Catalog shop, Relaxation fewer, Optional<OrderOutcome> outcome) {
        int alike = Integer.parseInt(fewer.changes().get(0).to());
        return new TooMany(request.machines(), alike, fewer.price(), outcome.filter(order -> order.delivered() > alike)
                .map(order -> new Mixed(order.delivered(), order.lines().stream().mapToInt(line -> line.fills().size()).sum(),
                        shop.amount(order.price().total()), order.status() == OrderStatus.PROVED,
                        Budget.allows(request.limit(), order.price().total()))), shop.currency().getCurrencyCode());
    }

    /** What can be had, in a sentence or two. */
    public Sentence words() {
        Sentence same = Sentence.of("%s of the %s machines can be had alike, for %s.", alike, asked, sum(alikePrice));
        return mixed.map(order -> Sentence.of("%s An order of %s machines of %s costs %s%s%s.", same,
                order.machines() < asked ? order.machines() : "all " + asked, Numbers.counted(order.builds(), "build"), sum(order.price()),
                order.within() ? "" : ", above the limit of the price",
                order.proved() ? "" : "; it is the first that was found")).orElse(same);
    }

    private Sum sum(BigDecimal amount) {
        return new Sum(amount, currency);
    }
}
