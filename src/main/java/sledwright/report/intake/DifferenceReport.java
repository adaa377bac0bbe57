package sledwright.report.intake;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import sledwright.desk.view.DifferenceView;
import sledwright.desk.view.DifferenceView.Answer;
import sledwright.desk.view.DifferenceView.RequestMove;
import sledwright.explain.change.CatalogDifference.Move;
import sledwright.explain.change.CatalogDifference.OfferMove;
import sledwright.explain.change.CatalogDifference.Terms;
import sledwright.report.text.Csv;
import sledwright.report.text.Ink;
import sledwright.report.text.Page;
import sledwright.report.text.Screen;
import sledwright.report.text.TextTable;
import sledwright.report.text.TextTable.Fit;

/** How two catalogues differ, in text and CSV. */
public final class DifferenceReport {

    private static final String NONE = "none";

    private final DifferenceView view;

    private DifferenceReport(DifferenceView view) {
        this.view = view;
    }

    public static String text(DifferenceView view, Screen screen) {
        return new DifferenceReport(view).text(new Page(screen));
    }

    private String text(Page page) {
        page.text(Ink.HEAD, "%s, prices of %s, against %s, prices of %s"
                .formatted(view.after().name(), view.after().pricedOn(), view.before().name(), view.before().pricedOn()));
        if (view.difference().parts().isEmpty() && view.difference().offers().isEmpty()) {
            page.text("the same parts, prices and stock");
        }
        if (!view.difference().settings().isEmpty()) {
            page.text("otherwise in catalog.yaml: " + String.join(", ", view.difference().settings()));
        }
        if (!view.difference().parts().isEmpty()) {
            TextTable parts = new TextTable().column("part", Fit.LEFT).column("", Fit.LEFT).column("description", Fit.FLEXIBLE);
            view.difference().parts().forEach(part -> parts.row(part.sku(), part.move().label(), part.description()));
            page.heading("Parts").table(parts);
        }
        if (!view.difference().offers().isEmpty()) {
            TextTable offers = new TextTable().column("part", Fit.LEFT).column("lot", Fit.LEFT).column("from", Fit.RIGHT)
                    .column("", Fit.LEFT)
                    .column("price", Fit.RIGHT).column("change", Fit.RIGHT).column("in stock", Fit.RIGHT).column("days", Fit.RIGHT)
                    .column("also", Fit.FLEXIBLE);
            view.difference().offers()
                    .forEach(offer -> offers.row(offer.sku(), offer.lot(), offer.minQuantity(), offer.move().label(),
                    moved(offer, terms -> amount(terms).toPlainString()), offer.pricePercent().map(DifferenceReport::percent).orElse(""),
                    moved(offer, terms -> String.valueOf(terms.available())), moved(offer, terms -> String.valueOf(terms.leadDays())),
                    also(offer)));
            page.heading("Offers, amounts in " + view.currency()).table(offers);
        }
        if (!view.requests().isEmpty()) {
            page.heading("Requests");
            view.requests().forEach(request -> request(page, request));
        }
        return page.toString();
    }

    private static String percent(double percent) {
        BigDecimal rounded = BigDecimal.valueOf(percent).setScale(1, RoundingMode.HALF_UP);
        return (rounded.signum() > 0 ? "+" : "") + rounded.toPlainString() + " %";
    }

    private static String moved(OfferMove offer, Function<Terms, String> figure) {
        String before = offer.before().map(figure).orElse("");
        String after = offer.after().map(figure).orElse("");
        return offer.move() != Move.CHANGED ? before + after : before.equals(after) ? after : before + " -> " + after;
    }

    /** What else of an offer is otherwise. */
    private String also(OfferMove offer) {
        Map<String, Function<Terms, String>> words = new LinkedHashMap<>();
        words.put("supplier", Terms::supplier);
        words.put("condition", Terms::condition);
        words.put("cost", terms -> terms.unitCost().isPresent() ? view.amount().apply(terms.unitCost().getAsLong()).toPlainString() : NONE);
        words.put("until", terms -> terms.validUntil().map(LocalDate::toString).orElse(NONE));
        return words.entrySet().stream().filter(one -> offer.move() == Move.CHANGED
                        && !offer.before().map(one.getValue()).equals(offer.after().map(one.getValue())))
                .map(one -> one.getKey() + " " + moved(offer, one.getValue())).collect(Collectors.joining("; "));
    }

    private BigDecimal amount(Terms terms) {
        return view.amount().apply(terms.unitPrice());
    }

    private void request(Page page, RequestMove request) {
        String price = request.changesPrice() ? "%s -> %s".formatted(price(request.before()), price(request.after()))
                : price(request.after()) + ", as before";
        page.item("- ", "%s: %s%s".formatted(request.name(), price, request.changesBuild() ? "; another build" : "; the same build"));
        if (request.changesBuild()) {
            page.item("    before: ", build(request.before()));
            page.item("    now:    ", build(request.after()));
        }
    }

    private static String build(Answer answer) {
        String words = answer.build().isEmpty() ? answer.status() : answer.build();
        return answer.reasons().isEmpty() ? words : String.join("; ", answer.reasons());
    }

    private String price(Answer answer) {
        return answer.price().map(price -> price.toPlainString() + " " + view.currency()).orElse(answer.status());
    }

    /** One row for each part, offer and request that differs, and for each request that does not. */
    public static String csv(DifferenceView view) {
        DifferenceReport report = new DifferenceReport(view);
        List<List<Object>> rows = new ArrayList<>();
        view.difference().parts().forEach(part -> rows.add(List.of("part", part.move().label(), part.sku(), "", "", "", "", "", "", "", "",
                "")));
        view.difference().offers()
                .forEach(offer -> rows.add(List.of("offer", offer.move().label(), offer.sku(), offer.lot(), offer.minQuantity(),
                Csv.cell(offer.before().map(report::amount)), Csv.cell(offer.after().map(report::amount)),
                Csv.cell(offer.before().map(Terms::available)), Csv.cell(offer.after().map(Terms::available)),
                Csv.cell(offer.before().map(Terms::leadDays)), Csv.cell(offer.after().map(Terms::leadDays)), report.also(offer))));
        view.difference().settings().forEach(key -> rows.add(List.of("setting", "changed", key, "", "", "", "", "", "", "", "", "")));
        view.requests().forEach(request -> rows.add(List.of("request", request.changesBuild() ? "another build"
                : request.changesPrice() ? "another price"
                : "unchanged", request.name(), "", "", Csv.cell(request.before().price()),
                Csv.cell(request.after().price()), "", "", "", "", "")));
        return Csv.write(List.of("kind", "change", "name", "lot", "min_quantity", "price_before", "price_after", "available_before",
                "available_after", "days_before", "days_after", "also"), rows);
    }
}
