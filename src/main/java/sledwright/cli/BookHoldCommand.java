package sledwright.cli;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sledwright.book.Book;
import sledwright.book.QuoteNumber;
import sledwright.book.Reserving;
import sledwright.book.SavedQuote;
import sledwright.report.book.BookCsv;
import sledwright.report.book.BookJson;
import sledwright.report.book.BookText;

/** {@code book hold NUMBER}: the parts of a quote are kept for it. */
@Command(
        name = "hold",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Keeps the units that a quote takes from each lot for it alone, until its last day. Where someone was first, nothing"
                + " is kept and the exit code is 4: what is gone is said, and what the quote costs now.")
final class BookHoldCommand implements Callable<Integer> {

    @Parameters(paramLabel = "NUMBER", converter = BookOptions.Number.class, description = "Such as 2026-0001.")
    private QuoteNumber number;

    @Option(names = "--until", paramLabel = "DAY", converter = Word.OfDay.class,
            description = "The last day. Default: that of the quote.")
    private LocalDate until;

    @Mixin
    private BookOptions options;

    @Mixin
    private SharedOptions shared;

    @Override
    public Integer call() {
        Output output = shared.output();
        try (Book book = BookOpening.open(shared)) {
            SavedQuote quote = new Reserving(book, shared.catalog(), shared.terms())
                    .hold(number, Optional.ofNullable(until), options.signature(shared));
            output.write(Renderings.of(screen -> BookText.after(quote, screen), () -> BookJson.of(quote),
                    () -> BookCsv.of(List.of(quote))));
            return ExitCode.DONE;
        }
    }
}
