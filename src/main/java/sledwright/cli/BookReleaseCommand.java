package sledwright.cli;

import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import sledwright.book.Book;
import sledwright.book.QuoteNumber;
import sledwright.book.SavedQuote;
import sledwright.report.book.BookCsv;
import sledwright.report.book.BookJson;
import sledwright.report.book.BookText;

/** {@code book release NUMBER}: what a quote holds is given back. */
@Command(name = "release", sortOptions = false, description = "Gives back what a quote holds, so that others may be offered it.")
final class BookReleaseCommand implements Callable<Integer> {

    @Parameters(paramLabel = "NUMBER", converter = BookOptions.Number.class, description = "Such as 2026-0001.")
    private QuoteNumber number;

    @Mixin
    private BookOptions options;

    @Mixin
    private SharedOptions shared;

    @Override
    public Integer call() {
        Output output = shared.output();
        try (Book book = BookOpening.open(shared)) {
            SavedQuote quote = book.release(number, options.signature(shared));
            output.write(Renderings.of(screen -> BookText.after(quote, screen), () -> BookJson.of(quote),
                    () -> BookCsv.of(List.of(quote))));
            return ExitCode.DONE;
        }
    }
}
