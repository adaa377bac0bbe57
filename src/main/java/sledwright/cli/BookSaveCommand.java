package sledwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sledwright.book.Answered;
import sledwright.book.Answering;
import sledwright.book.Book;
import sledwright.book.SavedQuote;
import sledwright.book.Signature;
import sledwright.input.Source;
import sledwright.report.papers.OfferPapers;

/** {@code book save FILE}: a new quote. */
@Command(
        name = "save",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Answers a request, keeps it with the answer and prints the quote's number. The exit code is 4 where no build was"
                + " found; what was asked for is kept all the same.")
final class BookSaveCommand extends BookWork {

    @Parameters(paramLabel = "FILE", arity = "0..1", description = "A request: a file with 'kind: quote' or 'kind: order'."
            + RequestInput.FILE)
    private Path file;

    @Option(names = "--customer", paramLabel = "NAME", required = true, description = "Who asks.")
    private String customer;

    @Option(names = "--note", paramLabel = "TEXT", defaultValue = "", description = "What the shop wants to remember of it.")
    private String note;

    @Option(names = "--set", paramLabel = "KEY=VALUE",
            description = "Answer as if the file had this value, such as require.cores=24. Repeatable.")
    private List<String> sets = new ArrayList<>();

    private Source source;

    @Override
    void prepare() {
        source = shared().request(file, "quote", sets);
    }

    @Override
    int work(Book book, Signature by, Output output) {
        Answered answered = Replies.answer(Answering.answer(source, sets, shared().catalog(),
                book.stock(Optional.empty(), by), shared().terms()));
        SavedQuote saved = book.save(answered, OfferPapers::of, customer, note, by);
        return writeNumber(saved, output);
    }
}
