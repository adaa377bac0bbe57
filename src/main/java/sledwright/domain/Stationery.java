package sledwright.domain;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What a shop puts on the documents that it gives out.
 *
 * @param address    lines under the shop's name; may be empty
 * @param contact    lines on how to reach the shop; may be empty
 * @param taxPercent what is added to prices; empty: documents say nothing about tax
 * @param taxName    what that tax is called
 * @param terms      sentences at the end of a quote; may be empty
 * @param validDays  days from the day of the prices for which a quote holds; empty: documents name none
 * @param locale     how money and figures are written
 */
public record Stationery(List<String> address, List<String> contact, Optional<BigDecimal> taxPercent, String taxName, List<String> terms,
                         OptionalInt validDays, Locale locale, Paper paper) {

    public static final String DEFAULT_TAX_NAME = "VAT";

    /** Of a shop that says nothing of the kind. */
    public static final Stationery PLAIN = new Stationery(List.of(), List.of(), Optional.empty(), DEFAULT_TAX_NAME, List.of(),
            OptionalInt.empty(), Locale.ENGLISH, Paper.A4);

    public Stationery {
        address = List.copyOf(address);
        contact = List.copyOf(contact);
        terms = List.copyOf(terms);
    }
}
