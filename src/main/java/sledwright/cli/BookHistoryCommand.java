package sledwright.cli;

import java.util.List;
import picocli.CommandLine.Command;
import sledwright.book.Book;
import sledwright.book.HistoryEntry;
import sledwright.book.SavedQuote;
import sledwright.book.Signature;
import sledwright.report.book.BookCsv;
import sledwright.report.book.BookJson;
import sledwright.report.book.BookText;

/** {@code book history NUMBER}: what was done with a quote. */
@Command(name = "history", sortOptions = false, description = "Lists everything that was done with a quote, by whom and when.")
final class BookHistoryCommand extends QuoteWork {

    @Override
    int work(Book book, Signature by, Output output) {
        SavedQuote quote = book.find(number(), by);
        List<HistoryEntry> entries = book.history(number(), by);
        output.write(Renderings.of(screen -> BookText.history(quote, entries, screen), () -> BookJson.history(quote, entries),
                () -> BookCsv.history(entries)));
        return ExitCode.DONE;
    }
}
