package sledwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sledwright.book.Answered;
import sledwright.book.AskingAgain;
import sledwright.book.Book;
import sledwright.book.QuoteNumber;
import sledwright.book.SavedQuote;
import sledwright.book.Signature;
import sledwright.report.book.BookCsv;
import sledwright.report.book.BookJson;
import sledwright.report.book.BookText;
import sledwright.report.papers.OfferPapers;

/** {@code book revise NUMBER}: the next version of a quote. */
@Command(
        name = "revise",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Answers the request of a quote again from today's catalogue and keeps that as its next version, which is a draft.")
final class BookReviseCommand implements Callable<Integer> {

    @Parameters(paramLabel = "NUMBER", converter = BookOptions.Number.class, description = "Such as 2026-0001.")
    private QuoteNumber number;

    @Option(names = "--set", paramLabel = "KEY=VALUE",
            description = "Change the request: this value beside those that were set before. Repeatable.")
    private List<String> sets = new ArrayList<>();

    @Mixin
    private BookOptions options;

    @Mixin
    private SharedOptions shared;

    @Override
    public Integer call() {
        Output output = shared.output();
        Signature by = options.signature(shared);
        try (Book book = BookOpening.open(shared)) {
            SavedQuote old = book.find(number, by);
            Answered answered = Replies.answer(new AskingAgain(book, shared.catalog(), shared.terms())
                    .of(old, sets, Optional.of(number), by));
            SavedQuote revised = book.revise(old, answered, OfferPapers::of, by);
            output.write(Renderings.of(screen -> BookText.after(revised, screen), () -> BookJson.of(revised),
                    () -> BookCsv.of(List.of(revised))));
            return revised.offered().price().isPresent() ? ExitCode.DONE : ExitCode.NO_VALID_BUILD;
        }
    }
}
