package sledwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import sledwright.book.Answered;
import sledwright.book.AskingAgain;
import sledwright.book.Book;
import sledwright.book.SavedQuote;
import sledwright.book.Signature;
import sledwright.report.papers.OfferPapers;

/** {@code book revise NUMBER}: the next version of a quote. */
@Command(
        name = "revise",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Answers the request of a quote again from today's catalogue and keeps that as its next version, which is a draft.")
final class BookReviseCommand extends QuoteWork {

    @Option(names = "--set", paramLabel = "KEY=VALUE",
            description = "Change the request: this value beside those that were set before. Repeatable.")
    private List<String> sets = new ArrayList<>();

    @Override
    int work(Book book, Signature by, Output output) {
        SavedQuote old = book.find(number(), by);
        Answered answered = Replies.answer(new AskingAgain(book, shared().catalog(), shared().terms())
                .of(old, sets, Optional.of(number()), by));
        SavedQuote revised = book.revise(old, answered, OfferPapers::of, by);
        writeStanding(revised, output);
        return answered(revised);
    }
}
