package sledwright.cli;

import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IFactory;
import picocli.CommandLine.Option;
import sledwright.book.Book;
import sledwright.book.CustomerFile;
import sledwright.book.Erased;
import sledwright.book.SavedQuote;
import sledwright.book.Signature;
import sledwright.report.book.BookCsv;
import sledwright.report.book.BookJson;
import sledwright.report.book.BookText;
import sledwright.words.Numbers;

/** {@code book export} and {@code book erase}: what is kept of one customer. */
@Command(sortOptions = false)
final class BookCustomerCommand extends BookWork {

    private final boolean erase;

    @Option(names = "--customer", paramLabel = "NAME", required = true, description = "The customer, named in full.")
    private String customer;

    private BookCustomerCommand(boolean erase) {
        this.erase = erase;
    }

    static CommandLine exporting(IFactory factory) {
        CommandLine line = new CommandLine(new BookCustomerCommand(false), factory).setCommandName("export");
        line.getCommandSpec().usageMessage().description("Writes all that the book has of one customer; --format json has everything.");
        return line;
    }

    static CommandLine erasing(IFactory factory) {
        CommandLine line = new CommandLine(new BookCustomerCommand(true), factory).setCommandName("erase");
        line.getCommandSpec().usageMessage().description("Takes a customer out of the book: names, notes, requests, documents"
                + " and links go for good; prices, figures and parts stay. Backups keep what they have.");
        return line;
    }

    @Override
    int work(Book book, Signature by, Output output) {
        CustomerFile file = book.export(customer, by);
        if (erase) {
            Erased erased = book.erase(customer, by);
            String links = erased.links() == 0 ? "" : " and " + Numbers.counted(erased.links(), "link");
            shared().terminal().err().println("erased from %s%s".formatted(Numbers.counted(erased.quotes(), "quote"), links));
            return ExitCode.DONE;
        }
        List<SavedQuote> quotes = file.kept().stream().map(CustomerFile.Kept::quote).toList();
        output.write(Renderings.of(screen -> BookText.of(quotes, screen), () -> BookJson.of(file), () -> BookCsv.of(quotes)));
        return ExitCode.DONE;
    }
}
