package sledwright.report.offer;

import java.util.List;
import sledwright.desk.view.Audience;
import sledwright.report.offer.Offer.Option;
import sledwright.report.offer.OfferPage.Gain;
import sledwright.report.page.Wording;
import sledwright.report.text.Letter;

/** A quote as a plain letter to the customer, ready to be pasted into a mail. */
public final class OfferLetter {

    private final Offer offer;
    private final OfferPage page;
    private final Wording words;
    private final LetterParts parts;

    private OfferLetter(Offer offer) {
        this.offer = offer;
        page = new OfferPage(offer, Audience.CUSTOMER);
        words = Wording.of(offer.shop());
        parts = new LetterParts(words, offer.shop());
    }

    public static String of(Offer offer) {
        return new OfferLetter(offer).write();
    }

    private String write() {
        Letter letter = parts.begin(offer.customer()).paragraph(page.asked());
        if (offer.options().isEmpty()) {
            return refused(letter);
        }
        Option first = offer.options().get(0);
        letter.paragraph(page.lead()).paragraph(words.say(offer.options().size() == 1 ? "letter.what" : "quote.option.what"))
                .items("", LetterParts.facts(page.what(first.alternative().build()))).table(parts.prices(page.prices(first)));
        List<String> energy = SideBySide.energy(offer, words, first);
        if (!energy.isEmpty() && !offer.answer().hasPoints()) {
            letter.lines(energy);
        }
        List<Gain> gains = page.gains();
        List<Option> others = offer.options().subList(offer.options().size() - gains.size(), offer.options().size());
        for (int i = 0; i < gains.size(); i++) {
            Gain gain = gains.get(i);
            letter.paragraph(gain.title()).items("+ ", gain.better()).items("- ", gain.worse());
            letter.items("  ", gain.other().isEmpty() ? List.of() : List.of(gain.other()));
            letter.items("  ", SideBySide.energy(offer, words, others.get(i)));
        }
        page.loss().ifPresent(letter::paragraph);
        offer.answer().outlook().moreWork().ifPresent(more -> letter.paragraph(words.say("quote.more") + ":")
                .items("", List.of(new MoreWorkWords(words).of(more))));
        return parts.end(letter, new TermsWords(words, offer.shop(), offer.answer().day()).all(), offer.named(words).whole());
    }

    private String refused(Letter letter) {
        letter.paragraph(page.lead());
        page.many().forEach(letter::paragraph);
        if (!page.conflicts().isEmpty()) {
            letter.paragraph(words.say("quote.conflicts") + ":").items("- ", page.conflicts());
        }
        if (!page.ways().isEmpty()) {
            letter.paragraph(words.say("quote.ways") + ":").items("- ", page.ways()).paragraph(page.eachWay());
        }
        return parts.end(letter, List.of(), offer.named(words).whole());
    }
}
