package sledwright.report.intake;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import sledwright.desk.view.DifferenceView;
import sledwright.explain.change.CatalogDifference;
import sledwright.report.text.Json;

/** How two catalogues differ, as JSON. */
public record DifferenceJson(@JsonUnwrapped Head head, List<PartJson> parts, List<OfferJson> offers, List<String> settings,
                             List<RequestJson> requests) {

    /** Which catalogues, and of which days. */
    public record Head(String before, String after, String pricedBefore, String pricedAfter, String currency) {
    }

    /** A part that came or went. */
    public record PartJson(String change, String sku, String description) {

        private static PartJson of(CatalogDifference.PartMove part) {
            return new PartJson(part.move().label(), part.sku(), part.description());
        }
    }

    /** A price, stock or time that changed; null on the side where the offer is not. */
    public record OfferJson(String change, String sku, String lot, int minQuantity, TermsJson before, TermsJson after) {

        private static OfferJson of(CatalogDifference.OfferMove offer, DifferenceView view) {
            return new OfferJson(offer.move().label(), offer.sku(), offer.lot(), offer.minQuantity(),
                    offer.before().map(terms -> TermsJson.of(terms, view)).orElse(null),
                    offer.after().map(terms -> TermsJson.of(terms, view)).orElse(null));
        }
    }

    /** What is offered; null where a cost or a last day is not known. */
    public record TermsJson(String supplier, String condition, BigDecimal unitPrice, BigDecimal unitCost, int available, int leadDays,
                            String validUntil) {

        private static TermsJson of(CatalogDifference.Terms terms, DifferenceView view) {
            return new TermsJson(terms.supplier(), terms.condition(), view.amount().apply(terms.unitPrice()),
                    terms.unitCost().isPresent() ? view.amount().apply(terms.unitCost().getAsLong()) : null, terms.available(),
                    terms.leadDays(), terms.validUntil().map(LocalDate::toString).orElse(null));
        }
    }

    /** A request whose answer differs. */
    public record RequestJson(String file, String request, boolean buildChanged, boolean priceChanged, AnswerJson before,
                              AnswerJson after) {

        private static RequestJson of(DifferenceView.RequestMove request) {
            return new RequestJson(request.file(), request.name(), request.changesBuild(), request.changesPrice(),
                    AnswerJson.of(request.before()), AnswerJson.of(request.after()));
        }
    }

    /** @param price null where there is no build */
    public record AnswerJson(String status, BigDecimal price, String build, List<String> reasons) {

        private static AnswerJson of(DifferenceView.Answer answer) {
            return new AnswerJson(answer.status(), answer.price().orElse(null), answer.build(), answer.reasons());
        }
    }

    public static String of(DifferenceView view) {
        return Json.of(new DifferenceJson(new Head(view.before().name(), view.after().name(), view.before().pricedOn().toString(),
                view.after().pricedOn().toString(), view.currency()), view.difference().parts().stream().map(PartJson::of).toList(),
                view.difference().offers().stream().map(offer -> OfferJson.of(offer, view)).toList(),
                view.difference().settings(),
                view.requests().stream().map(RequestJson::of).toList()));
    }
}
