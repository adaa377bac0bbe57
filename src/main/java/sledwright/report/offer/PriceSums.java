package sledwright.report.offer;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import sledwright.desk.view.Payment;
import sledwright.report.page.Wording;

/** The sums under a price list: the price, what is taken off it, the tax, and last what is to be paid. */
final class PriceSums {

    private PriceSums() {
    }

    /**
     * Label -> amount, the last one what is to be paid.
     *
     * @param total what the last sum is called, such as {@code Total}
     */
    static Map<String, String> of(Payment pays, String total, Wording words) {
        Map<String, BigDecimal> sums = new LinkedHashMap<>();
        if (pays.isChanged()) {
            sums.put("Sum of all lines", pays.price());
            sums.put(pays.percent().map(percent -> "Discount, %s %%".formatted(words.figure(percent))).orElse("To the agreed price"),
                    pays.change());
        }
        pays.tax().ifPresentOrElse(tax -> {
            sums.put("Before " + tax.name(), pays.net());
            sums.put("%s, %s %%".formatted(tax.name(), words.figure(tax.percent())), tax.amount());
            sums.put("%s with %s".formatted(total, tax.name()), pays.gross());
        }, () -> sums.put(total, pays.net()));
        Map<String, String> worded = new LinkedHashMap<>();
        sums.forEach((label, amount) -> worded.put(label, words.money(amount)));
        return worded;
    }
}
