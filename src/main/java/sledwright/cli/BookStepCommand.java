package sledwright.cli;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IFactory;
import picocli.CommandLine.Option;
import sledwright.book.Book;
import sledwright.book.QuoteStep;
import sledwright.book.Reserving;
import sledwright.book.SavedQuote;
import sledwright.book.Signature;

/** A step in the life of a quote, such as {@code book send NUMBER}. */
@Command(sortOptions = false)
final class BookStepCommand extends QuoteWork {

    private static final Map<QuoteStep, String> DOES = Map.of(
            QuoteStep.SEND, "Notes that a draft was sent to the customer. From now on this version stays as it is.",
            QuoteStep.ACCEPT, "Notes that the customer takes a quote that was sent and still holds.",
            QuoteStep.DECLINE, "Notes that the customer does not take a quote, or no longer wants what was accepted.",
            QuoteStep.WITHDRAW, "Takes back a quote that nobody has accepted.",
            QuoteStep.PICK, "Notes that the parts of an accepted quote were taken from the shelf.",
            QuoteStep.DELIVER, "Notes that the machines of a picked quote are with the customer.");

    private final QuoteStep step;

    @Option(names = "--option", paramLabel = "N", description = "The option of the quote that it is about. Default: as before; at first 1.")
    private Integer choice;

    @Option(names = "--hold", description = "When it is sent: hold its parts until its last day.")
    private boolean hold;

    @Option(names = "--reason", paramLabel = "TEXT", defaultValue = "", description = "Why.")
    private String reason;

    @Option(names = "--stale-prices", description = "When it is sent: also with prices that are older than the shop's stale_after_days.")
    private boolean stalePrices;

    @Option(names = "--would-pay", paramLabel = "AMOUNT", converter = Word.OfAmount.class, description = "When it is declined: what the"
            + " customer would have paid for all its machines.")
    private BigDecimal wouldPay;

    private BookStepCommand(QuoteStep step) {
        this.step = step;
    }

    static CommandLine line(IFactory factory, QuoteStep step) {
        CommandLine line = new CommandLine(new BookStepCommand(step), factory).setCommandName(step.label());
        line.getCommandSpec().usageMessage().description(DOES.get(step));
        return line;
    }

    @Override
    int work(Book book, Signature by, Output output) {
        if (wouldPay != null && step != QuoteStep.DECLINE) {
            throw new UsageException("--would-pay is for 'decline' alone");
        }
        if ((hold || stalePrices) && step != QuoteStep.SEND) {
            throw new UsageException("%s is for 'send' alone".formatted(hold ? "--hold" : "--stale-prices"));
        }
        Optional<Integer> option = Optional.ofNullable(choice);
        SavedQuote quote = step == QuoteStep.DECLINE ? book.decline(number(), option, Optional.ofNullable(wouldPay), reason, by)
                : new Reserving(book, shared().catalog(), shared().terms()).step(number(), step, option, hold, stalePrices, reason, by);
        return writeStanding(quote, output);
    }
}
