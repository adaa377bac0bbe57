package sledwright.cli;

import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import sledwright.book.Book;

/** {@code book backup FILE}: a whole copy of the book. */
@Command(
        name = "backup",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Copies the whole book into a new file, which its owner alone can read, while others go on writing. To go back to it,"
                + " put it in the book's place while nobody uses the book.")
final class BookBackupCommand extends ResultCommand {

    @Parameters(paramLabel = "FILE", description = "Where nothing is yet.")
    private Path file;

    @Mixin
    private BookOptions options;

    @Override
    public Integer call() {
        try (Book book = BookOpening.open(shared())) {
            book.backup(file);
        }
        return ExitCode.DONE;
    }
}
