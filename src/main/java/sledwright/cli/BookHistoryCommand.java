package sledwright.cli;

import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import sledwright.book.Book;
import sledwright.book.HistoryEntry;
import sledwright.book.QuoteNumber;
import sledwright.book.SavedQuote;
import sledwright.book.Signature;
import sledwright.report.book.BookCsv;
import sledwright.report.book.BookJson;
import sledwright.report.book.BookText;

/** {@code book history NUMBER}: what was done with a quote. */
@Command(name = "history", sortOptions = false, description = "Lists everything that was done with a quote, by whom and when.")
final class BookHistoryCommand implements Callable<Integer> {

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
            Signature by = options.signature(shared);
            SavedQuote quote = book.find(number, by);
            List<HistoryEntry> entries = book.history(number, by);
            output.write(Renderings.of(screen -> BookText.history(quote, entries, screen), () -> BookJson.history(quote, entries),
                    () -> BookCsv.history(entries)));
            return ExitCode.DONE;
        }
    }
}
