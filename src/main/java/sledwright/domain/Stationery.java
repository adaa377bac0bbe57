package sledwright.domain;

import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;

/**
 * What a shop puts on the documents that it gives out.
 *
 * @param address    lines under the shop's name; may be empty
 * @param contact    lines on how to reach the shop; may be empty
 * @param terms      sentences at the end of a quote; may be empty
 * @param validDays  days from the day of the prices for which a quote holds; empty: documents name none
 * @param locale     how money and figures are written
 */
public record Stationery(List<String> address, List<String> contact, SalesTax tax, List<String> terms, OptionalInt validDays, Locale locale,
                         Paper paper) {

    /** Of a shop that says nothing of the kind. */
    public static final Stationery PLAIN =
            new Stationery(List.of(), List.of(), SalesTax.NONE, List.of(), OptionalInt.empty(), Locale.ENGLISH, Paper.A4);

    public Stationery {
        address = List.copyOf(address);
        contact = List.copyOf(contact);
        terms = List.copyOf(terms);
    }
}
