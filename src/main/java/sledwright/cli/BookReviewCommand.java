package sledwright.cli;

import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import sledwright.book.Book;
import sledwright.book.Reviewed;
import sledwright.report.book.ReviewJson;
import sledwright.report.book.ReviewReport;

/** {@code book review}: every open quote against today's catalogue. */
@Command(
        name = "review",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Answers every open quote from the catalogue that --catalog names, and says which cost the same, more or less, which"
                + " cannot be had any more, and what is sold out. A review that was broken off goes on where it was.")
final class BookReviewCommand implements Callable<Integer> {

    @Option(names = "--again", description = "Forget what was worked out today.")
    private boolean again;

    @Mixin
    private BookOptions options;

    @Mixin
    private SharedOptions shared;

    @Override
    public Integer call() {
        Output output = shared.output();
        try (Book book = BookOpening.open(shared)) {
            List<Reviewed> all = book.review(shared.folder(null, "--catalog"), again, options.signature(shared),
                    shared.watched());
            output.write(Renderings.of(screen -> ReviewReport.text(all, screen), () -> ReviewJson.of(all),
                    () -> ReviewReport.csv(all)));
            return ExitCode.DONE;
        }
    }
}
