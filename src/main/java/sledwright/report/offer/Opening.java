package sledwright.report.offer;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sledwright.desk.view.AnswerDay;
import sledwright.domain.Catalog;
import sledwright.input.Source;
import sledwright.report.offer.OfferPage.Fact;
import sledwright.report.page.Letterhead;
import sledwright.report.page.Wording;

/** How every document for a customer opens: who offers, to whom, under which reference and until when; and its terms. */
record Opening(Catalog shop, Wording words, List<String> customer, AnswerDay day) {

    /**
     * What the template of the document shows of it.
     *
     * @param heading  the key of its words
     * @param offering whether anything is offered, which holds until a day
     */
    Map<String, Object> model(String heading, Named reference, boolean offering, int machines) {
        Map<String, Object> model = new HashMap<>();
        model.put("say", words.texts());
        model.put("shop", Letterhead.of(shop));
        model.put("customer", customer);
        model.put("heading", customer.isEmpty() ? words.say(heading + ".plain") : words.say(heading, customer.get(0)));
        model.put("facts", facts(reference, offering, machines));
        model.put("terms", new TermsWords(words, shop, day).all());
        return model;
    }

    private List<Fact> facts(Named reference, boolean offering, int machines) {
        List<Fact> facts = new ArrayList<>();
        reference.number().ifPresent(number -> facts.add(new Fact(words.say("fact.number"), number)));
        if (!reference.request().equals(Source.UNNAMED)) {
            facts.add(new Fact(words.say("fact.reference"), reference.request()));
        }
        facts.add(new Fact(words.say("fact.date"), words.day(day.today())));
        if (offering) {
            day.validUntil().ifPresent(until -> facts.add(new Fact(words.say("fact.valid"), words.day(until))));
        }
        facts.add(new Fact(words.say("fact.machines"), words.figure(machines)));
        return facts;
    }
}
