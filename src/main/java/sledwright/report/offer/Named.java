package sledwright.report.offer;

import java.util.Optional;
import sledwright.desk.view.KeptAs;
import sledwright.report.page.Wording;

/**
 * What a document for a customer is called.
 *
 * @param request the customer's own name of it
 * @param kept    under what the shop keeps it; empty: it does not
 */
record Named(Wording words, String request, Optional<KeptAs> kept) {

    /** The number with its version; empty where there is none. */
    Optional<String> number() {
        return kept.map(under -> words.say("kept.number", under.number(), under.version()));
    }

    /** Number and name, for a title or a reference. */
    String whole() {
        return number().map(under -> words.say("kept.named", under, request)).orElse(request);
    }
}
