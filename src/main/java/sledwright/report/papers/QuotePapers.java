package sledwright.report.papers;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import sledwright.desk.view.Audience;
import sledwright.desk.view.ForCustomers;
import sledwright.desk.view.QuoteAnswer;
import sledwright.desk.view.QuoteView;
import sledwright.report.offer.Offer;
import sledwright.report.offer.OfferLetter;
import sledwright.report.offer.OfferMail;
import sledwright.report.offer.OfferPage;
import sledwright.report.quote.QuoteCsv;
import sledwright.report.quote.QuoteJson;
import sledwright.report.quote.QuoteText;
import sledwright.report.text.Screen;

/** A quote in every form in which it is ever shown: kept as they are, they stay the same whatever a later version of the program writes. */
public final class QuotePapers {

    private QuotePapers() {
    }

    /** Name -> bytes; {@link #name} has the names. */
    public static Map<String, byte[]> of(QuoteAnswer answer) {
        Offer offer = Offer.of(answer);
        Map<String, byte[]> papers = new LinkedHashMap<>();
        for (Audience audience : Audience.values()) {
            QuoteView view = audience == Audience.SHOP ? answer.view() : ForCustomers.of(answer.view());
            papers.put(name("text", audience), bytes(audience == Audience.CUSTOMER ? OfferLetter.of(offer)
                    : QuoteText.of(view, new Screen(Screen.LEAST_WIDTH, false))));
            papers.put(name("json", audience), bytes(QuoteJson.of(view)));
            papers.put(name("csv", audience), bytes(QuoteCsv.of(view)));
            papers.put(name("html", audience), bytes(OfferPage.html(offer, audience)));
            papers.put(name("pdf", audience), OfferPage.pdf(offer, audience));
        }
        papers.put(name("eml", Audience.CUSTOMER), OfferMail.of(offer));
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
