package sledwright.cli;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import sledwright.book.Book;
import sledwright.book.BookSearch;
import sledwright.book.QuoteState;
import sledwright.book.SavedQuote;
import sledwright.book.Signature;
import sledwright.report.book.BookCsv;
import sledwright.report.book.BookJson;
import sledwright.report.book.BookText;

/** {@code book list}: quotes that are looked for. */
@Command(
        name = "list",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Finds quotes: by customer, state, words, part or day. Without an option it lists all.")
final class BookListCommand extends BookWork {

    @Option(names = "--customer", paramLabel = "NAME", description = "Quotes for customers with this in their names.")
    private String customer;

    @Option(names = {"--state", "--status"}, paramLabel = "STATE", converter = Word.OfState.class,
            description = "Quotes that are draft, sent, accepted, declined, expired, withdrawn, picked or delivered.")
    private QuoteState state;

    @Option(names = "--words", paramLabel = "WORDS", description = "Quotes in which all of these words stand: in names, note or parts.")
    private String words;

    @Option(names = "--part", paramLabel = "SKU", description = "Quotes that take this part from the shop.")
    private String part;

    @Option(names = "--since", paramLabel = "DAY", converter = Word.OfDay.class, description = "Quotes of this day and later.")
    private LocalDate since;

    @Option(names = "--until", paramLabel = "DAY", converter = Word.OfDay.class, description = "Quotes of this day and earlier.")
    private LocalDate until;

    @Override
    int work(Book book, Signature by, Output output) {
        List<SavedQuote> found = book.find(new BookSearch(Optional.ofNullable(customer), Optional.ofNullable(state),
                Optional.ofNullable(words), Optional.ofNullable(part), Optional.ofNullable(since), Optional.ofNullable(until)), by);
        output.write(Renderings.of(screen -> BookText.of(found, screen), () -> BookJson.of(found), () -> BookCsv.of(found)));
        return ExitCode.DONE;
    }
}
