package sledwright.report.offer;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import sledwright.desk.view.Payment;
import sledwright.report.page.Wording;

/** Lines and sums of a price list in finished texts. */
final class PriceLists {

    private final Wording words;

    PriceLists(Wording words) {
        this.words = words;
    }

    List<OfferPage.PriceLine> lines(List<OfferLine> lines) {
        return lines.stream().map(line -> new OfferPage.PriceLine(line.goods().sku(), line.goods().shownName(words),
                line.goods().shownCondition(words), words.figure(line.quantity()), words.money(line.goods().unitPrice()),
                words.money(line.total()))).toList();
    }

    /** @param label of the last sum */
    List<OfferPage.Sum> sums(Payment pays, String label) {
        Map<String, String> amounts = PriceSums.of(pays, label, words);
        List<OfferPage.Sum> sums = new ArrayList<>();
        amounts.forEach((what, amount) -> sums.add(new OfferPage.Sum(what, amount, sums.size() == amounts.size() - 1)));
        return sums;
    }

    /** The sum of machines, by their number. */
    String total(int machines) {
        return machines == 1 ? words.say("sum.total") : words.say("sum.total.many", words.figure(machines));
    }
}
