package sledwright.cli;

import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import sledwright.book.Allocated;
import sledwright.book.Book;
import sledwright.book.Signature;
import sledwright.report.book.AllocationJson;
import sledwright.report.book.AllocationReport;

/** {@code book allocate}: everything that is promised, drawn anew from today's stock. */
@Command(
        name = "allocate",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Draws everything that is accepted and not yet picked anew from the stock of the catalogue that --catalog names:"
                + " what customers were told is kept, as few machines as possible change, and they cost as little as possible. It only"
                + " proposes, unless --apply is given. The exit code is 4 where a promise cannot be kept, or where the book has moved on.")
final class BookAllocateCommand extends BookWork {

    @Option(names = "--apply", description = "Keep for every promise what it was given: all of it or, where the book has moved on,"
            + " nothing.")
    private boolean apply;

    @Override
    void prepare() {
        folder();
    }

    @Override
    int work(Book book, Signature by, Output output) {
        Path folder = folder();
        Allocated allocated = book.allocate(folder, by, shared().terms());
        if (apply) {
            book.apply(allocated, folder, by);
        }
        output.write(Renderings.of(screen -> AllocationReport.text(allocated, apply, screen),
                () -> AllocationJson.of(allocated, apply), () -> AllocationReport.csv(allocated)));
        return allocated.isWhole() ? ExitCode.DONE : ExitCode.NO_VALID_BUILD;
    }
}
