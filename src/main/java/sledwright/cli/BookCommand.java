package sledwright.cli;

import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IFactory;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import sledwright.book.QuoteStep;

/** {@code book STEP}: the quotes of the shop and what becomes of them. */
@Command(
        name = "book",
        addMethodSubcommands = false,
        sortOptions = false,
        synopsisSubcommandLabel = "STEP",
        description = "Keeps quotes with their answers, numbered by year, and what becomes of them: sent, accepted, picked, delivered.",
        footer = {
            "",
            "Examples:",
            "  sledwright book save scenarios/render-node.yaml --customer 'Orchard Surveys'",
            "  sledwright book list --state sent",
            "  sledwright book show 2026-0001 --format pdf -o quote.pdf",
            "  sledwright book send 2026-0001",
            "",
            "'sledwright book STEP --help' shows the options of a step."})
final class BookCommand implements Runnable {

    @Spec
    private CommandSpec command;

    @Option(names = {"-h", "--help"}, usageHelp = true, description = "Show this help.")
    private boolean help;

    /**
     * The command with those below it.
     *
     * @param asked whether it is the one that is asked for; otherwise nothing below it is looked at, which would take its time of every run
     */
    static CommandLine line(IFactory factory, boolean asked) {
        CommandLine line = new CommandLine(new BookCommand(), factory);
        if (!asked) {
            return line;
        }
        line.addSubcommand(new BookSaveCommand()).addSubcommand(new BookListCommand())
                .addSubcommand(new BookShowCommand()).addSubcommand(new BookHistoryCommand());
        for (QuoteStep step : List.of(QuoteStep.SEND, QuoteStep.ACCEPT, QuoteStep.DECLINE, QuoteStep.WITHDRAW, QuoteStep.PICK,
                QuoteStep.DELIVER)) {
            line.addSubcommand(BookStepCommand.line(factory, step));
        }
        return line.addSubcommand(new BookHoldCommand()).addSubcommand(new BookReleaseCommand())
                .addSubcommand(new BookReviseCommand()).addSubcommand(new BookCopyCommand())
                .addSubcommand(new BookReviewCommand()).addSubcommand(new BookAllocateCommand())
                .addSubcommand(new BookDemandCommand()).addSubcommand(new BookLostCommand())
                .addSubcommand(BookCustomerCommand.exporting(factory)).addSubcommand(BookCustomerCommand.erasing(factory))
                .addSubcommand(new BookBackupCommand());
    }

    @Override
    public void run() {
        throw new ParameterException(command.commandLine(), "a step is missing; it is one of "
                + String.join(", ", command.subcommands().keySet()));
    }
}
