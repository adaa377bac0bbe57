package sledwright.cli;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import picocli.CommandLine.Option;
import sledwright.desk.view.AnswerDay;
import sledwright.desk.view.Audience;

/** For whom an answer is written. */
final class Readership {

    /** Formats that people of the shop and other programs read. */
    private static final Set<Format> SHOPS = EnumSet.of(Format.TEXT, Format.JSON, Format.CSV);

    @Option(names = "--for", paramLabel = "READER", converter = Word.OfAudience.class,
            description = "Write for the customer, who sees no supplier, lot, cost, margin or stock, or for the shop, which sees all."
                    + " Default: text, json and csv for the shop, every other format for the customer.")
    private Audience reader;

    @Option(names = "--internal", description = "The same as --for shop.")
    private boolean internal;

    @Option(names = "--stale-prices", description = "Give a customer prices that are older than the shop's stale_after_days, too.")
    private boolean stalePrices;

    /** @throws UsageException when the options contradict each other */
    Audience of(Format format) {
        if (internal && reader == Audience.CUSTOMER) {
            throw new UsageException("--internal is not for the customer's eyes.\nMaybe leave it out, or take --for shop.");
        }
        return internal ? Audience.SHOP : reader != null ? reader : SHOPS.contains(format) ? Audience.SHOP : Audience.CUSTOMER;
    }

    /** @throws UsageException when a mail is to be written for the shop: a mail goes to the customer */
    void requireCustomer(Format format, Audience reads) {
        if (format == Format.EML && reads == Audience.SHOP) {
            throw new UsageException("--format eml is a mail to the customer, not for the shop.\nMaybe leave --for and --internal out.");
        }
    }

    /** Whether a customer must not have the answer, for its prices are stale; says so. */
    boolean refuses(AnswerDay day, Audience reads, Terminal terminal) {
        Optional<String> refusal = refusal(day, reads);
        refusal.ifPresent(terminal.err()::println);
        return refusal.isPresent();
    }

    /** Why a customer must not have the answer. */
    Optional<String> refusal(AnswerDay day, Audience reads) {
        return reads == Audience.SHOP || !day.stale() || stalePrices ? Optional.empty()
                : Optional.of("no answer for the customer: " + day.refusal()
                + ".\nMaybe bring the catalogue up to date, or allow them with --stale-prices.");
    }
}
