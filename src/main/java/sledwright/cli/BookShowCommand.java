package sledwright.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sledwright.book.Book;
import sledwright.book.QuoteNumber;
import sledwright.book.SavedQuote;
import sledwright.report.papers.OfferPapers;

/** {@code book show NUMBER}: a quote again, as it was saved. */
@Command(
        name = "show",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Prints a quote exactly as it was saved, whatever has changed since. Formats: text, json, csv, html, pdf, eml,"
                + " and xlsx of an order.")
final class BookShowCommand implements Callable<Integer> {

    @Parameters(paramLabel = "NUMBER", converter = BookOptions.Number.class, description = "Such as 2026-0001.")
    private QuoteNumber number;

    @Option(names = "--version", paramLabel = "N", description = "This version of it. Default: the last.")
    private Integer version;

    @Mixin
    private Readership readership;

    @Mixin
    private BookOptions options;

    @Mixin
    private SharedOptions shared;

    @Override
    public Integer call() {
        Output output = shared.output(Format.HTML, Format.PDF, Format.XLSX, Format.EML);
        readership.requireCustomer(shared.format(), readership.of(shared.format()));
        try (Book book = BookOpening.open(shared)) {
            SavedQuote quote = book.find(number, options.signature(shared));
            String name = OfferPapers.name(shared.format().toString(), readership.of(shared.format()));
            byte[] paper = book.paper(quote, version == null ? quote.offered().version() : version, name);
            output.write(Renderings.asKept(shared.format(), paper));
            return ExitCode.DONE;
        }
    }
}
