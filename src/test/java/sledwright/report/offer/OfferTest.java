package sledwright.report.offer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import java.math.BigDecimal;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import sledwright.desk.view.Audience;
import sledwright.desk.view.Payment;
import sledwright.desk.view.QuoteView;
import sledwright.domain.Catalog;
import sledwright.domain.Discount;
import sledwright.domain.Objective;
import sledwright.domain.Paper;
import sledwright.domain.Request;
import sledwright.domain.SalesTax;
import sledwright.domain.Stationery;
import sledwright.explain.Explanation;
import sledwright.explain.conflict.Conflict;
import sledwright.generator.Doubts;
import sledwright.generator.Findings;
import sledwright.generator.Status;
import sledwright.planner.Outcome;
import sledwright.report.page.Wording;
import sledwright.samples.Answers;
import sledwright.samples.Variations;
import sledwright.words.Sentence;

class OfferTest {

    private static Offer offer(Findings findings, Catalog shop) {
        Outcome outcome = Answers.outcome(findings);
        return Offer.of(outcome, QuoteView.of(outcome, shop, Explanation.NONE), shop, List.of());
    }

    private static Catalog taxed(String percent) {
        return Variations.of(Answers.SHOP, new Stationery(List.of(), List.of(), new SalesTax(Optional.of(new BigDecimal(percent)), "VAT"), List.of(),
                OptionalInt.of(30), Locale.ENGLISH, Paper.A4));
    }

    @Test
    void taxIsRoundedToACoin() {
        Offer offer = offer(Answers.proved(), taxed("8.1"));
        Payment paid = Payment.of(10_055, Discount.NONE, taxed("8.1"));
        assertThat(paid.tax().map(Payment.Tax::amount)).contains(new BigDecimal("8.14"));
        assertThat(paid.gross()).isEqualTo("108.69");
        assertThat(offer.answer().day().validUntil()).contains(Answers.SHOP.pricedOn().plusDays(30));
        assertThat(Payment.of(10_055, Discount.NONE, taxed("0")).gross()).isEqualTo("100.55");
        assertThat(Payment.of(10_055, Discount.NONE, Answers.SHOP).gross()).isEqualTo("100.55");
    }

    /** What a customer sees adds up to the price, whichever lots it comes from. */
    @Test
    void linesAddUp() {
        for (Findings findings : List.of(Answers.proved(), Answers.unequal())) {
            for (Offer.Option option : offer(findings, Answers.SHOP).options()) {
                assertThat(option.lines().stream().map(OfferLine::total).reduce(BigDecimal.ZERO, BigDecimal::add)).isEqualByComparingTo(option.pays().net());
                assertThat(option.lines()).allSatisfy(line -> assertThat(line.goods().unitPrice().multiply(BigDecimal.valueOf(line.quantity())))
                        .isEqualByComparingTo(line.total()));
                assertThat(option.lines().stream().map(OfferLine::goods)).doesNotHaveDuplicates();
            }
        }
    }

    @Test
    void theCustomersOwnPartsAreFreeAndCalledSo() {
        Request request = Answers.rich();
        Offer offer = offer(Answers.findings(request, Status.PROVED, Answers.order(request, Answers.cool())), Answers.SHOP);
        List<OfferLine> modules = offer.options().get(0).lines().stream().filter(line -> line.goods().sku().equals("R16")).toList();
        assertThat(modules).extracting(line -> line.goods().shownCondition(Wording.of(Answers.SHOP)), OfferLine::quantity).contains(tuple("yours", 4));
        assertThat(offer.options().get(0).lines()).anySatisfy(line -> assertThat(line.goods().shownName(Wording.of(Answers.SHOP))).isEqualTo("Software licence, per core"));
    }

    /** The sample shop says of no lot what it cost. */
    @Test
    void aCostThatIsNotKnownLeavesTheMarginOpen() {
        Costs costs = offer(Answers.proved(), Answers.SHOP).options().get(0).costs();
        assertThat(costs.unknown()).isEqualTo(costs.rows().size());
        assertThat(costs.margin()).isEmpty();
        assertThat(costs.cost()).isEqualByComparingTo("0");
        assertThat(Costs.percent(new BigDecimal("2.00"), new BigDecimal("3.00"))).contains(new BigDecimal("66.7"));
        assertThat(Costs.percent(new BigDecimal("2.00"), new BigDecimal("0.00"))).isEmpty();
    }

    /** A document claims no more than the search does. */
    @Test
    void howSureTheAnswerIsIsSaid() {
        assertThat(OfferPage.html(offer(Answers.proved(), Answers.SHOP), Audience.CUSTOMER)).contains("option 1 has the lowest price. Each other option betters");
        Findings inTime = Answers.findings(Answers.ASKED, Status.BEST_FOUND, Answers.order(Answers.ASKED, Answers.cool()));
        assertThat(OfferPage.html(offer(inTime, Answers.SHOP), Audience.CUSTOMER)).contains("Option 1 is the best that was found for your request in the time at hand; a better one may exist.")
                .doesNotContain("lowest price");
        Findings cut = new Findings(Answers.ASKED, Status.PROVED, 59400, 59400, Answers.proved().ranked(), Doubts.of(Doubts.Cause.TIME));
        assertThat(OfferPage.html(offer(cut, Answers.SHOP), Audience.SHOP)).contains("Proved: nothing better exists in this catalogue. The time limit ended the search for further options.");
        Findings twice = Answers.findings(Answers.ASKED, Status.PROVED, Answers.order(Answers.ASKED, Answers.cool()), Answers.order(Answers.ASKED, Answers.cool()));
        assertThat(OfferPage.html(offer(twice, Answers.SHOP), Audience.CUSTOMER)).contains("Option 2: the same price");
        assertThat(OfferPage.html(offer(inTime, Answers.SHOP), Audience.SHOP)).contains("Best found in time. No valid build is below \u20ac");
        Findings large = new Findings(Answers.ASKED, Status.BEST_FOUND, 59400, 56430, Answers.proved().ranked(),
                new Doubts(Set.of(Doubts.Cause.SIZE), new TreeSet<>(Set.of("WIDE"))));
        assertThat(OfferPage.html(offer(large, Answers.SHOP), Audience.SHOP)).contains("Best found. No valid build is below \u20ac564.30 (gap 5\u00a0%).",
                "WIDE takes more populations of memory than are listed");
        assertThat(OfferPage.html(offer(large, Answers.SHOP), Audience.CUSTOMER)).contains("Option 1 is the best that was found for your request; a better one may exist.");
        Findings nothing = Answers.findings(Answers.ASKED, Status.BEST_FOUND);
        assertThat(OfferPage.html(offer(nothing, Answers.SHOP), Audience.CUSTOMER)).contains("It is not certain that there is none.");
        Request most = Answers.ASKED.withObjective(Objective.MOST_BANDWIDTH);
        assertThat(OfferPage.html(offer(Answers.findings(most, Status.PROVED, Answers.order(most, Answers.cool())), Answers.SHOP), Audience.CUSTOMER))
                .contains("option 1 has the most memory bandwidth.").doesNotContain("other option");
    }

    /** What the lots hold is no customer's matter: only that it is not enough. */
    @Test
    void whatTheShopLacksIsToldInItsOwnWords() {
        Conflict stock = new Conflict(List.of(new Conflict.Member("stock", Optional.empty(), Sentence.plain("what the lots hold"))), List.of("in-stock"), Sentence.plain("There are 2 processors in all."));
        Outcome outcome = Answers.outcome(Answers.findings(Answers.ASKED, Status.IMPOSSIBLE));
        Explanation why = new Explanation(List.of(), List.of(stock), List.of(), List.of(), List.of());
        Offer offer = Offer.of(outcome, QuoteView.of(outcome, Answers.SHOP, why), Answers.SHOP, List.of());
        assertThat(OfferPage.html(offer, Audience.CUSTOMER)).contains("We have no parts for such a machine.").doesNotContain("There are 2 processors");
        assertThat(OfferPage.html(offer, Audience.SHOP)).contains("There are 2 processors in all.").doesNotContain("We have no parts");
    }

    @Test
    void moreOptionsThanFitStandInSeveralTables() {
        Offer.Option option = offer(Answers.proved(), Answers.SHOP).options().get(0);
        assertThat(Sheet.split(Collections.nCopies(11, option), List::size, number -> 0)).containsExactly(4, 4, 3);
        assertThat(Sheet.split(Collections.nCopies(5, option), List::size, number -> 15.0 * number)).containsExactly(3, 2);
        assertThat(Sheet.split(Collections.nCopies(2, option), List::size, number -> 100)).containsExactly(1, 1);
    }
}
