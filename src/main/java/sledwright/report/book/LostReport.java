package sledwright.report.book;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sledwright.book.PastDemand;
import sledwright.book.PastDemand.Lost;
import sledwright.report.text.Csv;
import sledwright.report.text.Page;
import sledwright.report.text.Screen;
import sledwright.report.text.TextTable;
import sledwright.report.text.TextTable.Fit;
import sledwright.report.workbook.Workbooks;
import sledwright.report.workbook.WorkbookSheet;
import sledwright.report.workbook.WorkbookSheet.Column;
import sledwright.words.Numbers;

/** Quotes that came to nothing: why, and by how much they were too dear. */
public final class LostReport {

    private static final String NOT_SAID = "not said";
    private static final String TOO_DEAR = "too dear by";
    private static final String ABOVE = "above others";

    private LostReport() {
    }

    /**
     * Quotes that were lost for one reason.
     *
     * @param tooDear     in the middle, of those of which it is known
     * @param aboveOthers the same, beside what others took
     */
    record Reason(String reason, int quotes, Optional<BigDecimal> tooDear, Optional<BigDecimal> aboveOthers) {
    }

    /** The most frequent first; a reason is the same whatever its case. */
    static List<Reason> reasons(PastDemand demand) {
        Map<String, List<Lost>> byReason = demand.lost().stream().collect(Collectors.groupingBy(one ->
                reason(one).toLowerCase(Locale.ROOT), TreeMap::new, Collectors.toList()));
        return byReason.values().stream().map(some -> new Reason(reason(some.get(0)), some.size(), middle(demand, some, Lost::tooDear),
                middle(demand, some, Lost::aboveOthers))).sorted(Comparator.comparingInt(Reason::quotes).reversed()).toList();
    }

    private static String reason(Lost one) {
        return one.reason().isEmpty() ? NOT_SAID : one.reason();
    }

    private static Optional<BigDecimal> middle(PastDemand demand, List<Lost> some, Function<Lost, Optional<BigDecimal>> figure) {
        List<BigDecimal> known = some.stream().filter(one -> one.currency().equals(demand.currency()))
                .flatMap(one -> figure.apply(one).stream()).sorted().toList();
        return known.isEmpty() ? Optional.empty() : Optional.of(known.get(known.size() / 2));
    }

    public static String text(PastDemand demand, Screen screen) {
        Page page = new Page(screen).text("%s lost from %s to %s".formatted(Numbers.counted(demand.lost().size(), "quote"), demand.from(),
                demand.until()));
        if (demand.lost().isEmpty()) {
            return page.toString();
        }
        TextTable reasons = new TextTable().column("reason", Fit.FLEXIBLE).column("quotes", Fit.RIGHT).column(TOO_DEAR, Fit.RIGHT)
                .column(ABOVE, Fit.RIGHT);
        reasons(demand).forEach(one -> reasons.row(one.reason(), one.quotes(), words(one.tooDear()), words(one.aboveOthers())));
        TextTable quotes = new TextTable().column("number", Fit.LEFT).column("customer", Fit.FLEXIBLE).column("state", Fit.LEFT)
                .column("reason", Fit.FLEXIBLE).column("price", Fit.RIGHT).column("would pay", Fit.RIGHT).column(TOO_DEAR, Fit.RIGHT)
                .column(ABOVE, Fit.RIGHT);
        demand.lost().forEach(one -> quotes.row(one.quote().number(), one.quote().customer(), one.quote().state().label(), reason(one),
                words(one.price(), one, demand), words(one.wouldPay(), one, demand), words(one.tooDear(), one, demand),
                words(one.aboveOthers())));
        return page.gap().table(reasons).gap().table(quotes).gap()
                .text("Amounts are %s, of a reason those in the middle. too dear by: what the customer would have paid is known from"
                        .formatted(demand.currency())
                + " 'book decline --would-pay'. above others: beside what machines of alike requests were bought for; below 0 it was"
                + " cheaper.").toString();
    }

    private static String words(Optional<BigDecimal> amount) {
        return amount.map(BigDecimal::toPlainString).orElse("");
    }

    /** Amounts of a quote that was made in another currency name it. */
    private static String words(Optional<BigDecimal> amount, Lost of, PastDemand demand) {
        return amount.map(known -> BookText.amount(known, of.currency(), demand.currency())).orElse("");
    }

    public static String csv(PastDemand demand) {
        return Csv.write(List.of("number", "customer", "state", "reason", "price", "would_pay", "too_dear", "above_others", "currency",
                "asked_price"), demand.lost().stream().map(one -> {
            List<Object> row = new ArrayList<>(row(one, one.quote().offered().price()));
            row.add(one.currency());
            row.add(Csv.cell(one.price()));
            return row;
        }).toList());
    }

    private static List<Object> row(Lost one, Optional<BigDecimal> price) {
        return List.of(one.quote().number().toString(), one.quote().customer(), one.quote().state().label(), one.reason(),
                Csv.cell(price), Csv.cell(one.wouldPay()), Csv.cell(one.tooDear()), Csv.cell(one.aboveOthers()));
    }

    /** Both tables as a workbook. */
    public static byte[] xlsx(PastDemand demand) {
        int digits = Math.max(0, Currency.getInstance(demand.currency()).getDefaultFractionDigits());
        WorkbookSheet reasons = new WorkbookSheet("Reasons", List.of(Column.of("reason"), Column.of("quotes"),
                Column.amounts(TOO_DEAR, digits), Column.amounts(ABOVE, digits)),
                reasons(demand).stream().map(one -> List.<Object>of(one.reason(), one.quotes(), Csv.cell(one.tooDear()),
                Csv.cell(one.aboveOthers()))).toList());
        WorkbookSheet quotes = new WorkbookSheet("Quotes", List.of(Column.of("number"), Column.of("customer"), Column.of("state"),
                Column.of("reason"), Column.amounts("price", digits), Column.amounts("would pay", digits),
                Column.amounts(TOO_DEAR, digits), Column.amounts(ABOVE, digits), Column.of("currency")), demand.lost().stream()
                .map(one -> Stream.concat(row(one, one.price()).stream(), Stream.of((Object) one.currency())).toList()).toList());
        return Workbooks.of("Lost quotes", demand.until(), List.of(reasons, quotes));
    }
}
