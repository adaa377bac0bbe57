package sledwright.book;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** What is done with a quote that is in the book. */
public enum QuoteStep {
    SEND(QuoteState.SENT, QuoteState.DRAFT),
    ACCEPT(QuoteState.ACCEPTED, QuoteState.SENT),
    /** By the customer, who may also think better of what was accepted. */
    DECLINE(QuoteState.DECLINED, QuoteState.SENT, QuoteState.EXPIRED, QuoteState.ACCEPTED),
    /** By the shop, which is bound by what was accepted. */
    WITHDRAW(QuoteState.WITHDRAWN, QuoteState.DRAFT, QuoteState.SENT, QuoteState.EXPIRED),
    PICK(QuoteState.PICKED, QuoteState.ACCEPTED),
    DELIVER(QuoteState.DELIVERED, QuoteState.PICKED),
    REVISE(QuoteState.DRAFT, QuoteState.DRAFT, QuoteState.SENT, QuoteState.EXPIRED);

    private final QuoteState to;
    private final Set<QuoteState> from;

    QuoteStep(QuoteState to, QuoteState first, QuoteState... others) {
        this.to = to;
        this.from = EnumSet.of(first, others);
    }

    public String label() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Where a quote that stands there gets by it; empty where that is not allowed. */
    public Optional<QuoteState> from(QuoteState state) {
        return from.contains(state) ? Optional.of(to) : Optional.empty();
    }

    /** Where a quote may stand before it. */
    public Set<QuoteState> starts() {
        return EnumSet.copyOf(from);
    }
}
