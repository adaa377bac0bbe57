package sledwright.report.offer;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import sledwright.desk.view.Earnings;
import sledwright.desk.view.Line;
import sledwright.desk.view.OrderView;
import sledwright.desk.view.QuoteView;
import sledwright.desk.view.Sale;
import sledwright.domain.Catalog;
import sledwright.explain.whynot.WhyNot;
import sledwright.generator.Status;
import sledwright.report.page.Wording;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/**
 * What the shop alone reads in a quote; every text is finished.
 *
 * @param status  how sure the answer is
 * @param lots    where the parts of each option come from and what they leave
 * @param reasons why the first option is as it is
 * @param whyNot  answers about parts that were asked about
 * @param notes    what is missing
 * @param warnings what the shop should know before it offers this
 */
public record InternalPart(String status, List<LotList> lots, List<String> reasons, List<Answer> whyNot, List<String> notes,
        List<String> warnings) {

    /** The lots of one option. */
    public record LotList(String title, List<LotRow> rows, Margin all, String note) {
    }

    /** Units of one lot. */
    public record LotRow(String sku, Supplied from, String units, String costEach, String priceEach, Margin all) {
    }

    /** A lot: whose it is, its condition, and the days until it arrives. */
    public record Supplied(String lot, String supplier, String condition, String days) {
    }

    /** A cost, a price and what it leaves. */
    public record Margin(String cost, String price, String left) {
    }

    /** Why a part is not in the first option. */
    public record Answer(String sku, List<String> sentences) {
    }

    static InternalPart of(Offer offer, Wording words) {
        QuoteView answer = offer.answer();
        List<Sentence> reasons = answer.alternatives().isEmpty() ? List.of() : answer.alternatives().get(0).reasons();
        return new InternalPart(status(answer, words), offer.options().stream()
                .map(option -> lots(SideBySide.head(option, words), option.costs(), changed(option.alternative().sale(), words), words))
                .toList(), reasons.stream().map(reason -> reason.in(words.forShop())).toList(),
                answer.explanation().whyNot().stream().map(asked -> answer(asked, words)).toList(),
                answer.explanation().notes().stream().map(note -> note.in(words.forShop())).toList(),
                answer.day().warnings().stream().map(warning -> warning.in(words.forShop())).toList());
    }

    /** Of an order: where its parts come from and what they leave. */
    static InternalPart of(OrderView order, Catalog shop, Wording words) {
        List<String> warnings = order.day().warnings().stream().map(warning -> warning.in(words.forShop())).toList();
        List<LotList> lots = order.delivered() == 0 ? List.of()
                : List.of(lots("All machines", Costs.of(order.contents().picks(), shop.amount(0)), changed(order.sale(), words), words));
        return new InternalPart(status(order, words), lots, List.of(), List.of(), List.of(), warnings);
    }

    private static String status(OrderView order, Wording words) {
        return switch (order.proof().status()) {
            case PROVED -> "Proved: no order of all these machines comes to less.";
            case BEST_FOUND -> "Best found." + order.proof().bound().map(bound -> " No order of all these machines comes to less than %s%s."
                    .formatted(words.money(bound), order.proof().gapPercent().map(gap -> " (gap " + words.figure(gap) + " %)").orElse("")))
                    .orElse("");
            case SHORT -> "Short: machines are missing.";
            case IMPOSSIBLE -> "Impossible: not one of the machines can be delivered.";
        };
    }

    private static Answer answer(WhyNot asked, Wording words) {
        return new Answer(asked.sku(), asked.sentences().stream().map(sentence -> sentence.in(words.forShop())).toList());
    }

    private static String status(QuoteView answer, Wording words) {
        boolean cut = answer.proof().status() == Status.PROVED && answer.proof().doubts().late();
        String list = (cut ? " The time limit ended the search for further options." : "")
                + answer.reservations().stream().map(" "::concat).collect(Collectors.joining());
        return switch (answer.proof().status()) {
            case PROVED -> "Proved: nothing better exists in this catalogue." + list;
            case BEST_FOUND -> (answer.proof().doubts().late() ? "Best found in time." : "Best found.")
                    + answer.proof().bound().map(bound -> " No valid build is %s %s%s.".formatted(
                    answer.isMoney() ? "below" : "above", answer.isMoney() ? words.money(bound) : words.figure(bound),
                    answer.gapPercent().map(gap -> " (gap " + words.figure(gap) + " %)").orElse(""))).orElse("") + list;
            case IMPOSSIBLE -> "Impossible: no valid build exists in this catalogue.";
        };
    }

    private static LotList lots(String title, Costs costs, String discount, Wording words) {
        List<LotRow> rows = new ArrayList<>();
        for (Costs.Row row : costs.rows()) {
            Line.Source from = row.source();
            rows.add(new LotRow(row.line().sku(),
                    new Supplied(from.lot(), from.supplier(), from.condition(), words.figure(from.leadDays())),
                    words.figure(row.line().quantity()), money(row.unitCost(), words), words.money(row.line().unitPrice()),
                    margin(row.cost(), row.line().total(), row.margin(), words)));
        }
        String note = costs.unknown() == 0 ? "" : "The cost of %s is not known; the sum leaves %s out.".formatted(
                Numbers.counted((int) costs.unknown(), "lot"), costs.unknown() == 1 ? "it" : "them");
        return new LotList(title, List.copyOf(rows), margin(Optional.of(costs.cost()), costs.price(), costs.margin(), words),
                discount + note);
    }

    /** What is left where the customer pays something else than the price. */
    private static String changed(Sale sale, Wording words) {
        return !sale.pays().isChanged() ? "" : sale.earned().filter(Earnings::isKnown)
                .map(earned -> "Prices of this list are those before %s. After it the parts of known cost bring %s and leave %s%s. "
                .formatted(sale.pays().agreed() ? "the price was agreed" : "the discount", words.money(earned.paid()),
                words.money(earned.margin()), earned.percent().map(share -> ", %s %%".formatted(words.figure(share))).orElse("")))
                .orElse("");
    }

    private static String money(Optional<BigDecimal> amount, Wording words) {
        return amount.map(words::money).orElse("not known");
    }

    private static Margin margin(Optional<BigDecimal> cost, BigDecimal price, Optional<BigDecimal> left, Wording words) {
        return new Margin(money(cost, words), words.money(price), money(left, words) + left.flatMap(margin -> Costs.percent(margin, price))
                .map(share -> ", " + words.figure(share) + " %").orElse(""));
    }
}
