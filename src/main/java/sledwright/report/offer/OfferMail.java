package sledwright.report.offer;

import java.time.LocalDate;
import java.util.List;
import sledwright.desk.view.Audience;
import sledwright.desk.view.OrderAnswer;
import sledwright.domain.Catalog;
import sledwright.report.letter.Correspondence;
import sledwright.report.letter.Mail;
import sledwright.report.page.Wording;

/** A quote as a mail to the customer: the letter as its text, the document attached. */
public final class OfferMail {

    private OfferMail() {
    }

    public static byte[] of(Offer offer) {
        Wording words = Wording.of(offer.shop());
        String title = words.say(offer.options().isEmpty() ? "quote.request.title" : "quote.title", offer.named(words).whole());
        return mail(offer.shop(), offer.customer(), title, offer.answer().day().today(), OfferLetter.of(offer),
                OfferPage.pdf(offer, Audience.CUSTOMER));
    }

    public static byte[] of(OrderAnswer answer) {
        Catalog shop = answer.shop();
        Wording words = Wording.of(shop);
        String title = words.say("order.title", new Named(words, answer.view().topic().request(), answer.number()).whole());
        return mail(shop, answer.customer(), title,
                answer.view().day().today(), OrderLetter.of(answer), OrderPage.pdf(answer, Audience.CUSTOMER));
    }

    private static byte[] mail(Catalog shop, List<String> customer, String title, LocalDate day, String letter, byte[] pdf) {
        Correspondence from = Correspondence.of(shop.name(), shop.stationery().contact());
        Correspondence to = Correspondence.of(customer.isEmpty() ? "" : customer.get(0), customer);
        return new Mail(from, to, title, day, Wording.of(shop).language(), letter, new Mail.Paper(title.replace(":", ""), pdf)).bytes();
    }
}
