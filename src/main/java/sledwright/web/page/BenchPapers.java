package sledwright.web.page;

import java.util.List;
import java.util.OptionalInt;
import org.eclipse.jetty.util.Fields;
import sledwright.desk.QuoteQuestion;
import sledwright.desk.SheetQuestion;
import sledwright.desk.Terms;
import sledwright.desk.view.Audience;
import sledwright.desk.view.QuoteAnswer;
import sledwright.desk.view.SheetAnswer;
import sledwright.input.Source;
import sledwright.report.offer.Offer;
import sledwright.report.offer.OfferPage;
import sledwright.report.page.PageHead;
import sledwright.report.page.Pdf;
import sledwright.report.sheet.SheetHtml;
import sledwright.report.sheet.SheetSvg;
import sledwright.report.sheet.SheetView;
import sledwright.report.sheet.Sheets;
import sledwright.web.api.DeskReplies;
import sledwright.web.http.RefusedException;
import sledwright.web.shop.ShopState;

/** What is handed on from an answer: the quote for the customer, the sheet for the bench, the board to look at. */
final class BenchPapers {

    private BenchPapers() {
    }

    /** The quote as the customer gets it, as PDF. */
    static byte[] offer(Source source, Fields query, ShopState shop, Terms terms) {
        QuoteAnswer answer = DeskReplies.of(shop.desk().quote(source, QuoteQuestion.plain(), terms));
        if (answer.view().day().stale() && query.get("stale-prices") == null) {
            throw RefusedException.of(409, "for", "customer", answer.view().day().refusal());
        }
        return OfferPage.pdf(Offer.of(answer), Audience.CUSTOMER);
    }

    /** The bench sheet of one of the builds, as PDF. */
    static byte[] sheet(Source source, Fields query, ShopState shop, Terms terms) {
        SheetAnswer.Work work = work(source, query, shop, terms);
        SheetView view = Sheets.of(work);
        PageHead head = PageHead.of(SheetHtml.title(view), SheetHtml.subject(view), work.shop());
        return Pdf.of(SheetHtml.of(view, head), head);
    }

    /** The board of one of the builds as a drawing within a page. */
    static String board(Source source, Fields query, ShopState shop, Terms terms) {
        String file = SheetSvg.of(Sheets.of(work(source, query, shop, terms)));
        return file.substring(file.indexOf("<svg"));
    }

    private static SheetAnswer.Work work(Source source, Fields query, ShopState shop, Terms terms) {
        SheetAnswer answer = DeskReplies.of(shop.desk().sheet(source, new SheetQuestion(List.of(), rank(query)), terms));
        if (answer instanceof SheetAnswer.Work work) {
            return work;
        }
        throw RefusedException.of(409, "the request", "", "leads to no build that could be put together");
    }

    private static OptionalInt rank(Fields query) {
        String rank = query.getValue("rank");
        if (rank == null) {
            return OptionalInt.empty();
        }
        if (!rank.matches("[0-9]{1,3}")) {
            throw RefusedException.of(400, "rank", rank, "must be a number");
        }
        return OptionalInt.of(Integer.parseInt(rank));
    }
}
