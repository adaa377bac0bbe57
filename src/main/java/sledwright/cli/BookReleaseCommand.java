package sledwright.cli;

import picocli.CommandLine.Command;
import sledwright.book.Book;
import sledwright.book.SavedQuote;
import sledwright.book.Signature;

/** {@code book release NUMBER}: what a quote holds is given back. */
@Command(name = "release", sortOptions = false, description = "Gives back what a quote holds, so that others may be offered it.")
final class BookReleaseCommand extends QuoteWork {

    @Override
    int work(Book book, Signature by, Output output) {
        SavedQuote quote = book.release(number(), by);
        return writeStanding(quote, output);
    }
}
