package sledwright.cli;

import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import sledwright.book.Book;
import sledwright.book.Reviewed;
import sledwright.book.Signature;
import sledwright.report.book.ReviewJson;
import sledwright.report.book.ReviewReport;

/** {@code book review}: every open quote against today's catalogue. */
@Command(
        name = "review",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Answers every open quote from the catalogue that --catalog names, and says which cost the same, more or less, which"
                + " cannot be had any more, and what is sold out. A review that was broken off goes on where it was.")
final class BookReviewCommand extends BookWork {

    @Option(names = "--again", description = "Forget what was worked out today.")
    private boolean again;

    @Override
    int work(Book book, Signature by, Output output) {
        List<Reviewed> all = book.review(folder(), again, by, shared().watched());
        output.write(Renderings.of(screen -> ReviewReport.text(all, screen), () -> ReviewJson.of(all),
                () -> ReviewReport.csv(all)));
        return ExitCode.DONE;
    }
}
