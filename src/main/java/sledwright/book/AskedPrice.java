package sledwright.book;

import java.nio.charset.StandardCharsets;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import sledwright.domain.Discount;
import sledwright.input.Source;
import sledwright.request.RequestReader;

/** What a request that is kept says of the price: most say nothing, and a list is of many. */
final class AskedPrice {

    private static final String PERCENT = "discount_percent";
    private static final String AGREED = "agreed_price";

    private AskedPrice() {
    }

    /** What is paid in the place of the price. */
    static Discount of(byte[] request, List<String> sets, String currency) {
        String text = new String(request, StandardCharsets.UTF_8);
        if (Stream.concat(Stream.of(text), sets.stream()).noneMatch(AskedPrice::mayName)) {
            return Discount.NONE;
        }
        // Of a customer who was erased nothing is left but what was set.
        byte[] left = request.length == 0 ? "{}".getBytes(StandardCharsets.UTF_8) : request;
        return RequestReader.discount(Source.named("request", "request", left), sets, Currency.getInstance(currency));
    }

    /** Letters of a key may be written as their numbers, behind a backslash. */
    private static boolean mayName(String text) {
        return text.contains(PERCENT) || text.contains(AGREED) || text.indexOf('\\') >= 0;
    }

    /** The same as a key and its value that are set; empty: nothing is to be said. */
    static Optional<String> set(Discount discount, String currency) {
        return discount.percent().map(percent -> PERCENT + "=" + percent.toPlainString()).or(() -> discount.agreed().isEmpty()
                ? Optional.empty() : Optional.of(AGREED + "=" + Quotes.amount(discount.agreed().getAsLong(), currency).toPlainString()));
    }
}
