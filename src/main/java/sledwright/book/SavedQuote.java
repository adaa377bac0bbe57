package sledwright.book;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Optional;

/**
 * A quote as the book has it.
 *
 * @param reason why it was declined or withdrawn; may be empty
 */
public record SavedQuote(QuoteNumber number, String customer, QuoteState state, Offered offered, Days days, String note, String reason) {

    /** @throws BookRefusal where it never had that version */
    void requireVersion(int version) {
        if (version < 1 || version > offered.version()) {
            throw new BookRefusal(BookRefusal.Kind.VALUE, "%s has no version %s; its last is %s".formatted(number, version,
                    offered.version()));
        }
    }

    /**
     * Whoever looks at a quote for long may mean what somebody else has revised since: another machine at another price.
     *
     * @throws BookRefusal where there is a later version than the one that was seen, or never was such a one
     */
    void requireNoneAfter(int seen) {
        requireVersion(seen);
        if (seen < offered.version()) {
            throw new BookRefusal(BookRefusal.Kind.STEP, "%s was revised by somebody else meanwhile; version %s is the last now"
                    .formatted(number, offered.version()));
        }
    }

    /**
     * What it offers.
     *
     * @param version the last one, from 1
     * @param chosen  which of its options it is about, from 1
     * @param name    what the customer calls the request
     * @param price   what the chosen option comes to, for all machines; empty where there is nothing to offer
     * @param pays    what the customer is asked to pay in its place, before tax
     */
    public record Offered(int version, int chosen, String name, int machines, Optional<BigDecimal> price, Optional<BigDecimal> pays,
                          String currency) {
    }

    /**
     * When it was made, and until when.
     *
     * @param validUntil the last day on which it holds; empty where the shop names none
     * @param heldUntil  the last day on which its parts are held; empty: they are not, or for good
     */
    public record Days(LocalDate madeOn, Optional<LocalDate> validUntil, Optional<LocalDate> heldUntil) {
    }
}
