package sledwright.report.offer;

import sledwright.desk.view.QuoteView;
import sledwright.generator.Status;
import sledwright.report.page.Wording;

/** What a customer is told first of an answer: what the first option is the best of, or that there is none. */
public final class QuoteLead {

    private QuoteLead() {
    }

    /** @param machines of the request */
    public static String of(QuoteView answer, int machines, Wording words) {
        int options = answer.alternatives().size();
        String late = answer.proof().doubts().late() ? ".time" : "";
        if (options == 0) {
            return answer.proof().status() == Status.IMPOSSIBLE ? words.say("quote.refused") : words.say("quote.refused.open" + late);
        }
        String others = options == 1 || answer.hasPoints() ? "" : " " + words.say("quote.lead.others");
        if (answer.proof().status() != Status.PROVED) {
            return words.say("quote.lead.open" + late) + others;
        }
        if (answer.hasPoints()) {
            return words.say("quote.lead.points", options);
        }
        return words.say(machines == 1 ? "quote.lead" : "quote.lead.many", words.say("aim." + answer.objective().name())) + others;
    }
}
