package sledwright.cli;

import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import sledwright.book.Book;
import sledwright.book.PastDemand;
import sledwright.book.Signature;
import sledwright.report.book.DemandJson;
import sledwright.report.book.DemandReport;
import sledwright.report.book.DemandYaml;

/** {@code book demand}: the plan of a stock, made from what was asked for and bought. */
@Command(
        name = "demand",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Writes the plan of a stock for 'sledwright restock', whose classes are made from what was asked for, offered and"
                + " bought in the months up to today: alike requests together, with the orders of each month and the price that customers"
                + " accepted. Requests are read with the catalogue that --catalog names.",
        footer = {
            "",
            "Example:",
            "  sledwright book demand --months 6 --catalog catalogs/heronfold-yard --supply scenarios/spring-supply.csv -o plan.yaml",
            "  sledwright restock plan.yaml --book sledwright-book.db"})
final class BookDemandCommand extends BookWork {

    @Option(names = "--months", paramLabel = "N", required = true, converter = Word.OfMonths.class, description = "How many months up to"
            + " today.")
    private int months;

    @Option(names = "--supply", paramLabel = "FILE", description = "The table of what suppliers offer, which the plan then names. It may"
            + " be added to the plan later.")
    private Path supply;

    @Option(names = "--horizon", paramLabel = "N", defaultValue = "3", converter = Word.OfMonths.class,
            description = "For how many months the plan looks ahead. Default: ${DEFAULT-VALUE}.")
    private int horizon;

    @Override
    void prepare() {
        folder();
        Optional.ofNullable(supply).ifPresent(PastDemand::requireSupply);
    }

    @Override
    int work(Book book, Signature by, Output output) {
        Path folder = folder();
        PastDemand demand = book.demand(folder, months, by);
        output.write(Renderings.of(screen -> DemandYaml.of(demand, folder, Optional.ofNullable(supply), horizon),
                () -> DemandJson.of(demand), () -> DemandReport.csv(demand)));
        return demand.isPlanned() ? ExitCode.DONE : ExitCode.NO_VALID_BUILD;
    }
}
