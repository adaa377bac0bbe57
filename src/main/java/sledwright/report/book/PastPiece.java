package sledwright.report.book;

import java.math.BigDecimal;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sledwright.book.PastDemand;
import sledwright.book.PastDemand.AskedClass;
import sledwright.book.PastDemand.Lost;
import sledwright.domain.Catalog;
import sledwright.report.chart.BarStrip;
import sledwright.report.chart.MonthColumns;
import sledwright.report.chart.MonthColumns.Month;
import sledwright.report.page.Markup;
import sledwright.report.page.Wording;

/** What was asked for, bought and lost, for the page. */
public final class PastPiece {

    private static final int HUNDRED = 100;
    private static final DateTimeFormatter SHORT_DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);

    /** Quotes that were lost for one reason; what is not known is empty. */
    public record Reason(String reason, String quotes, Markup strip, String tooDear, String aboveOthers) {
    }

    /** A quote that was lost. */
    public record Row(String number, String customer, String state, String reason, Sums sums) {
    }

    /** Amounts of a lost quote; what is not known is empty. */
    public record Sums(String price, String wouldPay, String tooDear, String aboveOthers) {
    }

    /** Alike requests. */
    public record Alike(String name, Markup strip, Counts counts, String rate, String accepted) {
    }

    /** Quotes of alike requests; none is empty. */
    public record Counts(String asked, String bought, String lost, String open, String unmet) {
    }

    private final PastDemand demand;
    private final Wording words;

    private PastPiece(PastDemand demand, Wording words) {
        this.demand = demand;
        this.words = words;
    }

    /** @param shop whose manner of writing figures counts */
    public static Map<String, Object> of(PastDemand demand, Catalog shop) {
        return new PastPiece(demand, Wording.of(shop)).model();
    }

    private Map<String, Object> model() {
        int asked = demand.classes().stream().mapToInt(one -> sum(one.months().asked())).sum();
        int bought = demand.classes().stream().mapToInt(one -> sum(one.months().bought())).sum();
        return Map.ofEntries(Map.entry("months", String.valueOf(demand.months())), Map.entry("from", words.day(demand.from())),
                Map.entry("until", words.day(demand.until())), Map.entry("asked", asked), Map.entry("bought", bought),
                Map.entry("open", demand.classes().stream().mapToInt(AskedClass::open).sum()),
                Map.entry("unmet", demand.classes().stream().mapToInt(one -> sum(one.months().unmet())).sum()),
                Map.entry("lost", demand.lost().size()), Map.entry("columns", new Markup(columns())), Map.entry("reasons", reasons()),
                Map.entry("quotes", demand.lost().stream().map(this::row).toList()), Map.entry("classes", classes()),
                Map.entry("unread", demand.unread().stream().map(Object::toString).collect(Collectors.joining(", "))));
    }

    private String columns() {
        List<Month> months = IntStream.range(0, demand.months()).mapToObj(month -> new Month(
                SHORT_DAY.format(demand.from().plusMonths(month)), total(month, true), total(month, false))).toList();
        return MonthColumns.of(months, "Quotes bought of those asked for, by month, each from the day that is named: %s.".formatted(
                months.stream().map(month -> "%s %s of %s".formatted(month.label(), month.part(), month.whole()))
                .collect(Collectors.joining(", "))));
    }

    private int total(int month, boolean asked) {
        return demand.classes().stream().mapToInt(one -> (asked ? one.months().asked() : one.months().bought()).get(month)).sum();
    }

    private List<Reason> reasons() {
        List<LostReport.Reason> reasons = LostReport.reasons(demand);
        double most = reasons.stream().mapToInt(LostReport.Reason::quotes).max().orElse(1);
        return reasons.stream().map(one -> new Reason(one.reason(), words.figure(one.quotes()),
                new Markup(BarStrip.of(one.quotes() / most, 0)), money(one.tooDear()), money(one.aboveOthers()))).toList();
    }

    private Row row(Lost one) {
        return new Row(one.quote().number().toString(), one.quote().customer(), one.quote().state().label(), one.reason(),
                new Sums(money(one.price(), one), money(one.wouldPay(), one), money(one.tooDear(), one), money(one.aboveOthers())));
    }

    private List<Alike> classes() {
        double most = demand.classes().stream().mapToInt(one -> sum(one.months().asked())).max().orElse(1);
        return demand.classes().stream().map(one -> new Alike(one.name(),
                new Markup(BarStrip.of(sum(one.months().asked()) / most, sum(one.months().bought()) / most)),
                new Counts(some(sum(one.months().asked())), some(sum(one.months().bought())), some(one.lost()), some(one.open()),
                some(sum(one.months().unmet()))),
                one.winRate().isEmpty() ? "" : "%s %%".formatted(Math.round(HUNDRED * one.winRate().getAsDouble())),
                money(one.accepted()))).toList();
    }

    private static int sum(List<Integer> months) {
        return months.stream().mapToInt(Integer::intValue).sum();
    }

    private String some(int count) {
        return count == 0 ? "" : words.figure(count);
    }

    private String money(Optional<BigDecimal> amount, Lost of) {
        return of.currency().equals(demand.currency()) ? money(amount)
                : amount.map(known -> BookText.amount(known, of.currency(), demand.currency())).orElse("");
    }

    private String money(Optional<BigDecimal> amount) {
        return amount.map(words::money).orElse("");
    }
}
