package sledwright.report.offer;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import sledwright.desk.view.Payment;
import sledwright.domain.Catalog;
import sledwright.domain.Discount;
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
        Map<String, String> worded = new LinkedHashMap<>();
        amounts(pays, total, words).forEach((label, amount) -> worded.put(label, words.money(amount)));
        return worded;
    }

    /** An amount in words, and that it is before tax where the shop names one. */
    static String net(String amount, Catalog shop, Wording words) {
        return shop.stationery().tax().percent().isEmpty() ? amount : words.say("price.before", amount, shop.stationery().tax().name());
    }

    /**
     * How the prices of what would be possible are to be read: each way by itself, before tax, and before what is taken off.
     *
     * @param key of the sentence that says for how many machines they are
     */
    static String ways(String key, Catalog shop, Discount granted, Wording words) {
        String each = shop.stationery().tax().percent().isEmpty() ? words.say(key)
                : words.say(key + ".taxed", shop.stationery().tax().name());
        return granted.percent().map(percent -> each + " " + words.say("said.prices-are-before-the-discount-of", words.rate(percent)))
                .orElse(each);
    }

    /** The same amounts as numbers. */
    static Map<String, BigDecimal> amounts(Payment pays, String total, Wording words) {
        Map<String, BigDecimal> sums = new LinkedHashMap<>();
        if (pays.isChanged()) {
            sums.put(words.say("sum.lines"), pays.price());
            sums.put(pays.percent().map(percent -> words.say("sum.discount", words.rate(percent))).orElse(words.say("sum.agreed")),
                    pays.change());
        }
        pays.tax().ifPresentOrElse(tax -> {
            sums.put(words.say("sum.before", tax.name()), pays.net());
            sums.put(words.say("sum.tax", tax.name(), words.rate(tax.percent())), tax.amount());
            sums.put(words.say("sum.with", total, tax.name()), pays.gross());
        }, () -> sums.put(total, pays.net()));
        return sums;
    }
}
