package sledwright.report.book;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sledwright.book.Reviewed;
import sledwright.report.text.Csv;
import sledwright.report.text.Page;
import sledwright.report.text.Screen;
import sledwright.report.text.TextTable;
import sledwright.report.text.TextTable.Fit;
import sledwright.words.Numbers;

/** Open quotes against today's catalogue. */
public final class ReviewReport {

    private ReviewReport() {
    }

    public static String text(List<Reviewed> all, Screen screen) {
        Page page = new Page(screen).text("%s against today's catalogue".formatted(Numbers.counted(all.size(), "open quote")));
        counts(all).forEach((outcome, count) -> page.line("%s %s".formatted(count, outcome.label())));
        List<Reviewed> moved = all.stream().filter(one -> one.outcome() != Reviewed.Outcome.SAME && one.outcome() != Reviewed.Outcome.HELD
                || !one.soldOut().isEmpty()).toList();
        if (!moved.isEmpty()) {
            TextTable table = new TextTable().column("number", Fit.LEFT).column("customer", Fit.FLEXIBLE).column("now", Fit.LEFT)
                    .column("was", Fit.RIGHT).column("is", Fit.RIGHT).column("", Fit.LEFT).column("sold out", Fit.FLEXIBLE);
            moved.forEach(one -> table.row(one.quote().number(), one.quote().customer(), one.outcome().label(),
                    one.quote().offered().price().map(Object::toString).orElse("none"), one.now().map(Object::toString).orElse(""),
                    one.quote().offered().currency(), String.join("; ", one.soldOut())));
            page.gap().table(table);
            String changed = moved.stream().filter(one -> !one.quote().offered().pays().equals(one.quote().offered().price()))
                    .map(one -> one.quote().number().toString()).collect(Collectors.joining(", "));
            if (!changed.isEmpty()) {
                page.gap().text("These are the prices of the list; a discount or an agreed price holds in the place of that of %s."
                        .formatted(changed));
            }
            moved.stream().filter(Reviewed::isOpen).forEach(one -> page.gap().text("%s: the best found, not proved%s."
                    .formatted(one.quote().number(), one.least().map(least -> "; nothing costs less than %s %s"
                            .formatted(least, one.quote().offered().currency())).orElse(""))));
        }
        return page.toString();
    }

    static Map<Reviewed.Outcome, Integer> counts(List<Reviewed> all) {
        Map<Reviewed.Outcome, Integer> counts = new EnumMap<>(Reviewed.Outcome.class);
        all.forEach(one -> counts.merge(one.outcome(), 1, Integer::sum));
        return counts;
    }

    public static String csv(List<Reviewed> all) {
        return Csv.write(List.of("number", "customer", "outcome", "was", "is", "bound", "currency", "sold_out"), all.stream().map(one ->
                List.of(one.quote().number().toString(), one.quote().customer(), one.outcome().label(),
                Csv.cell(one.quote().offered().price()), Csv.cell(one.now()), Csv.cell(one.least()), one.quote().offered().currency(),
                String.join("; ", one.soldOut()))).toList());
    }
}
