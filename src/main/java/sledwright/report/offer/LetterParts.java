package sledwright.report.offer;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import sledwright.domain.Catalog;
import sledwright.input.Source;
import sledwright.report.offer.OfferPage.Fact;
import sledwright.report.offer.OfferPage.PriceLine;
import sledwright.report.offer.OfferPage.PriceList;
import sledwright.report.page.Wording;
import sledwright.report.text.Letter;
import sledwright.report.text.TextTable;
import sledwright.report.text.TextTable.Fit;

/** What letters to customers share: greeting, price lists, terms, and who writes. */
public final class LetterParts {

    private final Wording words;
    private final Catalog shop;

    public LetterParts(Wording words, Catalog shop) {
        this.words = words;
        this.shop = shop;
    }

    public Letter begin(List<String> customer) {
        return new Letter().paragraph(customer.isEmpty() ? words.say("letter.greeting.plain")
                : words.say("letter.greeting", customer.get(0))).paragraph(words.say("letter.thanks"));
    }

    static List<String> facts(List<Fact> facts) {
        return facts.stream().map(fact -> "%s: %s".formatted(fact.label(), fact.value())).toList();
    }

    TextTable prices(PriceList list) {
        TextTable table = new TextTable().column(words.say("column.units"), Fit.RIGHT).column(words.say("column.part"), Fit.FLEXIBLE)
                .column(words.say("column.each"), Fit.RIGHT).column(words.say("column.price"), Fit.RIGHT);
        for (PriceLine line : list.lines()) {
            table.row(line.quantity(), String.join(", ", Stream.of(line.sku(), line.name(), line.condition())
                    .filter(text -> !text.isEmpty()).toList()), line.each(), line.total());
        }
        list.sums().forEach(sum -> table.row("", sum.label(), "", sum.amount()));
        return table;
    }

    /** @param reference what the customer calls the request */
    public String end(Letter letter, List<String> terms, String reference) {
        if (!terms.isEmpty()) {
            letter.paragraph(words.say("letter.terms")).items("- ", terms);
        }
        if (!reference.equals(Source.UNNAMED)) {
            letter.paragraph(words.say("letter.reference", reference));
        }
        letter.paragraph(words.say("letter.regards"));
        List<String> sender = new ArrayList<>(List.of(shop.name()));
        sender.addAll(shop.stationery().address());
        sender.addAll(shop.stationery().contact());
        return letter.lines(sender).toString();
    }
}
