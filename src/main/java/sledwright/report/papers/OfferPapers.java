package sledwright.report.papers;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import sledwright.desk.view.Audience;
import sledwright.desk.view.ForCustomers;
import sledwright.desk.view.OfferAnswer;
import sledwright.desk.view.OrderAnswer;
import sledwright.desk.view.OrderView;
import sledwright.desk.view.QuoteAnswer;
import sledwright.desk.view.QuoteView;
import sledwright.report.offer.Offer;
import sledwright.report.offer.OfferLetter;
import sledwright.report.offer.OfferMail;
import sledwright.report.offer.OfferPage;
import sledwright.report.offer.OrderLetter;
import sledwright.report.offer.OrderPage;
import sledwright.report.offer.OrderWorkbook;
import sledwright.report.order.OrderCsv;
import sledwright.report.order.OrderJson;
import sledwright.report.order.OrderText;
import sledwright.report.quote.QuoteCsv;
import sledwright.report.quote.QuoteJson;
import sledwright.report.quote.QuoteText;
import sledwright.report.text.Screen;

/** An offer in every form in which it is ever shown: kept as they are, they stay the same whatever later versions of the program write. */
public final class OfferPapers {

    private OfferPapers() {
    }

    /** Name -> bytes; {@link #name} has the names. */
    public static Map<String, byte[]> of(OfferAnswer answer) {
        return answer instanceof OrderAnswer order ? of(order) : of((QuoteAnswer) answer);
    }

    private static Map<String, byte[]> of(QuoteAnswer answer) {
        Offer offer = Offer.of(answer);
        Map<String, byte[]> papers = new LinkedHashMap<>();
        for (Audience audience : Audience.values()) {
            QuoteView view = audience == Audience.SHOP ? answer.view() : ForCustomers.of(answer.view());
            papers.put(name("text", audience), bytes(audience == Audience.CUSTOMER ? OfferLetter.of(offer)
                    : QuoteText.of(view, Screen.PAGE)));
            papers.put(name("json", audience), bytes(QuoteJson.of(view)));
            papers.put(name("csv", audience), bytes(QuoteCsv.of(view)));
            papers.put(name("html", audience), bytes(OfferPage.html(offer, audience)));
            papers.put(name("pdf", audience), OfferPage.pdf(offer, audience));
        }
        papers.put(name("eml", Audience.CUSTOMER), OfferMail.of(offer));
        return papers;
    }

    private static Map<String, byte[]> of(OrderAnswer answer) {
        Map<String, byte[]> papers = new LinkedHashMap<>();
        for (Audience audience : Audience.values()) {
            OrderView view = audience == Audience.SHOP ? answer.view() : ForCustomers.of(answer.view());
            papers.put(name("text", audience), bytes(audience == Audience.CUSTOMER ? OrderLetter.of(answer)
                    : OrderText.of(view, Screen.PAGE)));
            papers.put(name("json", audience), bytes(OrderJson.of(view)));
            papers.put(name("csv", audience), bytes(OrderCsv.of(view)));
            papers.put(name("html", audience), bytes(OrderPage.html(answer, audience)));
            papers.put(name("pdf", audience), OrderPage.pdf(answer, audience));
            papers.put(name("xlsx", audience), OrderWorkbook.of(answer, audience));
        }
        papers.put(name("eml", Audience.CUSTOMER), OfferMail.of(answer));
        return papers;
    }

    /** What a paper is called: {@code html.customer}. */
    public static String name(String format, Audience audience) {
        return format + "." + audience;
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
