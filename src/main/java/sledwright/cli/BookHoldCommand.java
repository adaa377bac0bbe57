package sledwright.cli;

import java.time.LocalDate;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import sledwright.book.Book;
import sledwright.book.Reserving;
import sledwright.book.SavedQuote;
import sledwright.book.Signature;

/** {@code book hold NUMBER}: the parts of a quote are kept for it. */
@Command(
        name = "hold",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Keeps the units that a quote takes from each lot for it alone, until its last day. Where someone was first, nothing"
                + " is kept and the exit code is 4: what is gone is said, and what the quote costs now.")
final class BookHoldCommand extends QuoteWork {

    @Option(names = "--option", paramLabel = "N", description = "The option of the quote that it is about. Default: as before; at first 1.")
    private Integer choice;

    @Option(names = "--until", paramLabel = "DAY", converter = Word.OfDay.class,
            description = "The last day. Default: that of the quote.")
    private LocalDate until;

    @Override
    int work(Book book, Signature by, Output output) {
        SavedQuote quote = new Reserving(book, shared().catalog(), shared().terms()).hold(number(), Optional.ofNullable(choice),
                Optional.ofNullable(until), by);
        return writeStanding(quote, output);
    }
}
