package sledwright.cli;

import picocli.CommandLine.Parameters;
import sledwright.book.QuoteNumber;

/** A command on one quote of the book. */
abstract class QuoteWork extends BookWork {

    @Parameters(paramLabel = "NUMBER", converter = BookOptions.Number.class, description = "Such as 2026-0001.")
    private QuoteNumber number;

    QuoteWork(Format... beside) {
        super(beside);
    }

    final QuoteNumber number() {
        return number;
    }
}
