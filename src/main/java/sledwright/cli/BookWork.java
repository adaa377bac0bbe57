package sledwright.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import picocli.CommandLine.Mixin;
import sledwright.book.Book;
import sledwright.book.SavedQuote;
import sledwright.book.Signature;
import sledwright.report.book.BookCsv;
import sledwright.report.book.BookJson;
import sledwright.report.book.BookText;
import sledwright.report.text.Screen;

/** A command on the book of quotes, which is open while it works. */
abstract class BookWork extends ResultCommand {

    @Mixin
    private BookOptions options;

    private final Format[] beside;

    /** @param beside what it writes beside text, JSON and CSV */
    BookWork(Format... beside) {
        this.beside = beside;
    }

    @Override
    public final Integer call() {
        Output output = shared().output(beside);
        prepare();
        try (Book book = BookOpening.open(shared())) {
            return work(book, options.signature(shared()), output);
        }
    }

    /** Looks at what else is asked for, before a book is made where there is none. */
    void prepare() {
    }

    /** Does it, writes what comes of it and returns the exit code. */
    abstract int work(Book book, Signature by, Output output);

    /** The catalogue's folder, which must be named. */
    final Path folder() {
        return shared().folder(null, "--catalog");
    }

    /** Writes where a quote stands after a step. */
    static int writeStanding(SavedQuote quote, Output output) {
        write(quote, screen -> BookText.after(quote, screen), output);
        return ExitCode.DONE;
    }

    /** Writes the number of a quote that is new. */
    final int writeNumber(SavedQuote quote, Output output) {
        write(quote, screen -> quote.number() + "\n", output);
        return answered(quote);
    }

    /** The exit code of a request that was answered: whether a build was found. Where none was, that is said, too. */
    final int answered(SavedQuote quote) {
        if (quote.offered().price().isPresent()) {
            return ExitCode.DONE;
        }
        shared().terminal().err().println(("sledwright: %1$s is kept and offers nothing, for not all that is asked for was found;"
                + " 'book show %1$s' says why").formatted(quote.number()));
        return ExitCode.NO_VALID_BUILD;
    }

    private static void write(SavedQuote quote, Function<Screen, String> text, Output output) {
        output.write(Renderings.of(text, () -> BookJson.of(quote), () -> BookCsv.of(List.of(quote))));
    }
}
