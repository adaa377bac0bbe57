package sledwright.desk.view;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sledwright.compare.PricePoints;
import sledwright.domain.Catalog;
import sledwright.domain.Discount;
import sledwright.domain.Objective;
import sledwright.explain.Difference;
import sledwright.explain.Explanation;
import sledwright.explain.Reasons;
import sledwright.explain.ask.Unproved;
import sledwright.explain.steps.Steps;
import sledwright.generator.Doubts;
import sledwright.generator.Status;
import sledwright.metrics.Figures;
import sledwright.metrics.SurplusWorth;
import sledwright.planner.Judged;
import sledwright.planner.Outcome;
import sledwright.rules.Order;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/**
 * The answer to one request.
 *
 * @param alternatives the best first
 */
public record QuoteView(Topic topic, Objective objective, QuoteProof proof, List<Alternative> alternatives, Explanation explanation,
                        Outlook outlook, AnswerDay day) {

    /**
     * How good the best is, and how sure that is.
     *
     * @param best   the objective's figure of the best: units of the currency for cheapest and best-value, else the figure of one
     *               machine; empty when there is none
     * @param bound  nothing better than this exists; empty when there is none
     * @param doubts whether the alternatives are the right ones; a time limit may end their list after the best is proved
     */
    public record QuoteProof(Status status, Optional<BigDecimal> best, Optional<BigDecimal> bound, Doubts doubts) {
    }

    /**
     * What other requests would be answered.
     *
     * @param moreWork what one step of work costs; empty where the request has no workload or it is not known
     * @param tooMany  how many machines can be had where not all of them can; empty where their number is not what is in the way
     * @param steps    how the best changes with the request and with prices; empty where nobody asked
     */
    public record Outlook(Optional<MoreWork> moreWork, Optional<TooMany> tooMany, Optional<Steps> steps) {
    }

    /**
     * What decides beside the price, in units of the currency.
     *
     * @param priceLessWorth what a best-value request ranks by; empty for every other objective
     * @param energy         what the electricity of all machines costs over the years; empty where the request counts none
     */
    public record Weighed(Optional<BigDecimal> priceLessWorth, Optional<BigDecimal> energy) {
    }

    /**
     * A ranked order.
     *
     * @param mark       what a price point is chosen for; empty for an alternative
     * @param difference what it buys against the best; empty for the best itself
     * @param reasons    why it is as it is
     */
    public record Alternative(int rank, BuildView build, Optional<PricePoints.Mark> mark, Optional<Sentence> difference,
                              List<Sentence> reasons, Weighed weighed, Sale sale) {

        /** What sets the memory speed and what holds the work back come first. */
        private static final int AFTER_WORK = 2;

        /** The same with one more reason, behind what holds its work back. */
        private Alternative saying(Sentence more) {
            List<Sentence> told = new ArrayList<>(reasons);
            told.add(Math.min(AFTER_WORK, told.size()), more);
            return new Alternative(rank, build, mark, difference, List.copyOf(told), weighed, sale);
        }

        /** The price and the electricity; empty where the request counts none. */
        public Optional<BigDecimal> total() {
            return weighed.energy().map(sale.pays().price()::add);
        }

        /** All sentences, the difference first. */
        public List<Sentence> sentences() {
            List<Sentence> sentences = new ArrayList<>(difference.stream().toList());
            sentences.addAll(reasons);
            return List.copyOf(sentences);
        }
    }

    /** An answer whose prices are paid as they are. */
    public static QuoteView of(Outcome outcome, Catalog catalog, Explanation explanation) {
        return of(outcome, catalog, explanation, Discount.NONE, List.of());
    }

    /**
     * @param discount what the customer pays in the place of the price; a price that was agreed is that of the first build
     * @param marks    what each build is chosen for as a price point, which is held against the one before; none: alternatives
     */
    public static QuoteView of(Outcome outcome, Catalog catalog, Explanation explanation, Discount discount, List<PricePoints.Mark> marks) {
        List<Alternative> alternatives = new ArrayList<>();
        List<Sentence> warnings = new ArrayList<>();
        Order best = outcome.ranked().isEmpty() ? null : outcome.ranked().get(0).order();
        for (Judged judged : outcome.ranked()) {
            Order order = judged.order();
            Discount granted = order == best ? discount : discount.ofOthers();
            long price = order.price().total();
            Order against = marks.isEmpty() || order == best ? best : outcome.ranked().get(alternatives.size() - 1).order();
            Optional<Sentence> difference = order == best ? Optional.empty() : Optional.of(Difference.sentence(order, against,
                    granted.net(price) - discount.net(against.price().total()), marks.isEmpty() ? "the best" : "the one before"));
            BuildView build = BuildView.of(order, true);
            Payment pays = Payment.of(price, granted, catalog);
            Earnings earned = Earnings.of(build.lines(), pays, catalog.house().marginFloor());
            alternatives.add(new Alternative(alternatives.size() + 1, build, marks.stream().skip(alternatives.size()).findFirst(),
                    difference, reasons(judged, pays), new Weighed(priceLessWorth(order, build.figures()),
                    order.request().energy().map(counted -> catalog.amount(order.energy()))), new Sale(pays, Optional.of(earned))));
            earned.warning("Rank " + alternatives.size(), catalog.currency().getCurrencyCode()).ifPresent(warnings::add);
        }
        Objective objective = outcome.request().objective();
        return new QuoteView(Topic.of(outcome.request(), catalog), objective, new QuoteProof(outcome.status(),
                figure(outcome.best(), objective, catalog), figure(outcome.bound(), objective, catalog), outcome.doubts()),
                List.copyOf(alternatives), explanation, new Outlook(Optional.empty(), Optional.empty(), Optional.empty()),
                AnswerDay.of(catalog, outcome.ranked().stream().flatMap(judged -> judged.order().picks().stream())).warning(warnings));
    }

    /** Sentences about prices are of what the search weighs. */
    private static List<Sentence> reasons(Judged judged, Payment pays) {
        List<Sentence> reasons = new ArrayList<>(Reasons.of(judged));
        if (pays.isChanged()) {
            reasons.add(Sentence.plain(pays.agreed() ? "Prices in these sentences are those of the list, not the price that was agreed."
                    : "Prices in these sentences are before the discount."));
        }
        return List.copyOf(reasons);
    }

    /** Whether it is proved that the alternatives are the right ones. */
    public boolean complete() {
        return proof.doubts().none();
    }

    /** Whether the builds are price points, each chosen for something. */
    public boolean hasPoints() {
        return alternatives.stream().anyMatch(alternative -> alternative.mark().isPresent());
    }

    /** What keeps the best or the alternatives from being proved and more time would not change. */
    public List<String> reservations() {
        return Unproved.whateverTheTime(proof.doubts());
    }

    /** The same answer with what one step of work costs, which stands among the reasons of the first build, too. */
    public QuoteView with(Optional<MoreWork> more) {
        if (more.isEmpty()) {
            return this;
        }
        List<Alternative> told = new ArrayList<>(alternatives);
        told.set(0, alternatives.get(0).saying(more.get().words()));
        return new QuoteView(topic, objective, proof, List.copyOf(told), explanation, new Outlook(more, outlook.tooMany(), outlook.steps()),
                day);
    }

    /** The same answer with how many machines can be had. */
    public QuoteView lacking(Optional<TooMany> some) {
        return new QuoteView(topic, objective, proof, alternatives, explanation, new Outlook(outlook.moreWork(), some, outlook.steps()),
                day);
    }

    /** The same answer with its steps. */
    public QuoteView with(Steps found) {
        return new QuoteView(topic, objective, proof, alternatives, explanation,
                new Outlook(outlook.moreWork(), outlook.tooMany(), Optional.of(found)), day);
    }

    private static Optional<BigDecimal> priceLessWorth(Order order, Figures figures) {
        if (order.request().objective() != Objective.BEST_VALUE) {
            return Optional.empty();
        }
        double worth = SurplusWorth.of(order.request(), figures);
        return figure(order.price().total() - worth, Objective.BEST_VALUE, order.catalog());
    }

    /** What one of the builds is judged by where that is money and not the price itself; empty where no prices are shown, too. */
    public Optional<BigDecimal> judged(Alternative one) {
        if (one.build().price().isEmpty()) {
            return Optional.empty();
        }
        return objective == Objective.LEAST_TOTAL ? one.total() : one.weighed().priceLessWorth();
    }

    /** Whether the objective is an amount of money of which less is better. */
    public boolean isMoney() {
        return objective.isMoney();
    }

    private static Optional<BigDecimal> figure(double figure, Objective objective, Catalog catalog) {
        if (!Double.isFinite(figure)) {
            return Optional.empty();
        }
        return Optional.of(objective.isMoney() ? catalog.amount(Math.round(figure)) : Numbers.decimal(figure));
    }

    /** The distance between best and bound as a share of the best, percent; empty where either is not known or the best is 0. */
    public Optional<BigDecimal> gapPercent() {
        if (proof.best().isEmpty() || proof.bound().isEmpty() || proof.best().get().signum() == 0) {
            return Optional.empty();
        }
        return Optional.of(proof.best().get().subtract(proof.bound().get()).abs().multiply(BigDecimal.valueOf(100))
                .divide(proof.best().get().abs(), 2, RoundingMode.HALF_UP));
    }
}
