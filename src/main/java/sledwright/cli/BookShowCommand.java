package sledwright.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import sledwright.book.Book;
import sledwright.book.SavedQuote;
import sledwright.book.Signature;
import sledwright.report.papers.OfferPapers;

/** {@code book show NUMBER}: a quote again, as it was saved. */
@Command(
        name = "show",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Prints a quote exactly as it was saved, whatever has changed since. Formats: text, json, csv, html, pdf, eml,"
                + " and xlsx of an order.")
final class BookShowCommand extends QuoteWork {

    @Option(names = "--version", paramLabel = "N", description = "This version of it. Default: the last.")
    private Integer version;

    @Mixin
    private Readership readership;

    BookShowCommand() {
        super(Format.HTML, Format.PDF, Format.XLSX, Format.EML);
    }

    @Override
    void prepare() {
        readership.requireCustomer(shared().format(), readership.of(shared().format()));
    }

    @Override
    int work(Book book, Signature by, Output output) {
        SavedQuote quote = book.find(number(), by);
        String name = OfferPapers.name(shared().format().toString(), readership.of(shared().format()));
        byte[] paper = book.paper(quote, version == null ? quote.offered().version() : version, name);
        output.write(Renderings.asKept(shared().format(), paper));
        return ExitCode.DONE;
    }
}
