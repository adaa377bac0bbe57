package sledwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sledwright.book.Answered;
import sledwright.book.AskingAgain;
import sledwright.book.Book;
import sledwright.book.QuoteNumber;
import sledwright.book.SavedQuote;
import sledwright.book.Signature;
import sledwright.report.book.BookCsv;
import sledwright.report.book.BookJson;
import sledwright.report.papers.OfferPapers;

/** {@code book copy NUMBER}: a new quote like another. */
@Command(
        name = "copy",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Answers the request of a quote again from today's catalogue, keeps that as a new quote and prints its number.")
final class BookCopyCommand implements Callable<Integer> {

    @Parameters(paramLabel = "NUMBER", converter = BookOptions.Number.class, description = "Such as 2026-0001.")
    private QuoteNumber number;

    @Option(names = "--customer", paramLabel = "NAME", description = "Who asks now. Default: the same.")
    private String customer;

    @Option(names = "--set", paramLabel = "KEY=VALUE",
            description = "Change the request: this value beside those that were set before. Repeatable.")
    private List<String> sets = new ArrayList<>();

    @Mixin
    private BookOptions options;

    @Mixin
    private SharedOptions shared;

    @Override
    public Integer call() {
        Output output = shared.output();
        Signature by = options.signature(shared);
        try (Book book = BookOpening.open(shared)) {
            SavedQuote old = book.find(number, by);
            Answered answered = Replies.answer(new AskingAgain(book, shared.catalog(), shared.terms())
                    .of(old, sets, Optional.empty(), by));
            SavedQuote copy = book.copy(old, answered, OfferPapers::of, customer == null ? old.customer() : customer, by);
            output.write(Renderings.of(screen -> copy.number() + "\n", () -> BookJson.of(copy), () -> BookCsv.of(List.of(copy))));
            return copy.offered().price().isPresent() ? ExitCode.DONE : ExitCode.NO_VALID_BUILD;
        }
    }
}
