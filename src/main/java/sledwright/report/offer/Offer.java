package sledwright.report.offer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sledwright.desk.view.KeptAs;
import sledwright.desk.view.Lines;
import sledwright.desk.view.Payment;
import sledwright.desk.view.QuoteAnswer;
import sledwright.desk.view.QuoteView;
import sledwright.domain.Catalog;
import sledwright.domain.Discount;
import sledwright.domain.Request;
import sledwright.domain.Stationery;
import sledwright.explain.Difference;
import sledwright.planner.Judged;
import sledwright.planner.Outcome;
import sledwright.report.page.Wording;
import sledwright.rules.Order;

/**
 * An answer to a request with everything that a document says beside it.
 *
 * @param customer lines that say for whom; may be empty
 * @param options  the ranked builds, the best first
 * @param granted  what the customer pays in the place of the price
 * @param number   under what it is kept; empty: it is not
 */
public record Offer(QuoteView answer, Request request, Catalog shop, List<String> customer, List<Option> options,
                    Discount granted, Optional<KeptAs> number) {

    /**
     * One build.
     *
     * @param difference what it buys against the first; empty for the first itself
     */
    record Option(QuoteView.Alternative alternative, List<OfferLine> lines, Optional<Difference> difference, Costs costs) {

        /** What the customer pays. */
        Payment pays() {
            return alternative.sale().pays();
        }
    }

    public static Offer of(QuoteAnswer answer) {
        return of(answer.outcome(), answer.view(), answer.shop(), answer.customer())
                .of(answer.job().discount(), answer.number());
    }

    /**
     * @param outcome  the ranked builds of that answer
     * @param customer lines that say for whom; may be empty
     */
    static Offer of(Outcome outcome, QuoteView answer, Catalog shop, List<String> customer) {
        List<Option> options = new ArrayList<>();
        Order best = outcome.ranked().isEmpty() ? null : outcome.ranked().get(0).order();
        for (QuoteView.Alternative alternative : answer.alternatives()) {
            Judged judged = outcome.ranked().get(options.size());
            Order order = judged.order();
            options.add(new Option(alternative, OfferLine.of(alternative.build().lines(), line -> Lines.place(line, shop)),
                    order == best ? Optional.empty() : Optional.of(difference(outcome, answer, options.size())),
                    Costs.of(alternative.build().lines(), shop.amount(0))));
        }
        return new Offer(answer, outcome.request(), shop, List.copyOf(customer), List.copyOf(options), Discount.NONE,
                Optional.empty());
    }

    private Offer of(Discount discount, Optional<KeptAs> kept) {
        return new Offer(answer, request, shop, customer, options, discount, kept);
    }

    /** What the documents call it. */
    Named named(Wording words) {
        return new Named(words, answer.topic().request(), number);
    }

    Stationery stationery() {
        return shop.stationery();
    }

    /** What an option buys against the first, a price point against the one before. */
    private static Difference difference(Outcome outcome, QuoteView answer, int option) {
        int other = answer.hasPoints() ? option - 1 : 0;
        long extra = answer.alternatives().get(option).sale().pays().net().subtract(answer.alternatives().get(other).sale().pays().net())
                .unscaledValue()
                .longValueExact();
        return Difference.of(outcome.ranked().get(option).order(), outcome.ranked().get(other).order(), extra);
    }
}
