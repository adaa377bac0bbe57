package sledwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import sledwright.book.Answered;
import sledwright.book.AskingAgain;
import sledwright.book.Book;
import sledwright.book.SavedQuote;
import sledwright.book.Signature;
import sledwright.report.papers.OfferPapers;

/** {@code book copy NUMBER}: a new quote like another. */
@Command(
        name = "copy",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Answers the request of a quote again from today's catalogue, keeps that as a new quote and prints its number.")
final class BookCopyCommand extends QuoteWork {

    @Option(names = "--customer", paramLabel = "NAME", description = "Who asks now. Default: the same.")
    private String customer;

    @Option(names = "--set", paramLabel = "KEY=VALUE",
            description = "Change the request: this value beside those that were set before. Repeatable.")
    private List<String> sets = new ArrayList<>();

    @Override
    int work(Book book, Signature by, Output output) {
        SavedQuote old = book.find(number(), by);
        Answered answered = Replies.answer(new AskingAgain(book, shared().catalog(), shared().terms())
                .of(old, sets, Optional.empty(), by));
        SavedQuote copy = book.copy(old, answered, OfferPapers::of, customer == null ? old.customer() : customer, by);
        return writeNumber(copy, output);
    }
}
