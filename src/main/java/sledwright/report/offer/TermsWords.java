package sledwright.report.offer;

import java.util.ArrayList;
import java.util.List;
import sledwright.desk.view.AnswerDay;
import sledwright.domain.Catalog;
import sledwright.report.page.Wording;

/** The terms of an offer: of which day its prices are, until when it holds, and what the shop says besides. */
record TermsWords(Wording words, Catalog shop, AnswerDay day) {

    List<String> all() {
        List<String> terms = new ArrayList<>();
        terms.add(words.say("terms.prices", words.day(shop.pricedOn()), shop.currency().getCurrencyCode()));
        day.validUntil().ifPresent(until -> terms.add(words.say("terms.valid", words.day(until))));
        terms.addAll(shop.stationery().terms());
        return terms;
    }
}
