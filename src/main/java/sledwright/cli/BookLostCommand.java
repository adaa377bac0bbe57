package sledwright.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import sledwright.book.Book;
import sledwright.book.PastDemand;
import sledwright.report.book.LostJson;
import sledwright.report.book.LostReport;

/** {@code book lost}: quotes that came to nothing. */
@Command(
        name = "lost",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Lists quotes of the months up to today that were declined, withdrawn or expired: by reason, and by how much they"
                + " were too dear. Formats: text, json, csv, xlsx. Requests are read with the catalogue that --catalog names.")
final class BookLostCommand implements Callable<Integer> {

    @Option(names = "--months", paramLabel = "N", required = true, converter = Word.OfMonths.class, description = "How many months up to"
            + " today.")
    private int months;

    @Mixin
    private BookOptions options;

    @Mixin
    private SharedOptions shared;

    @Override
    public Integer call() {
        Output output = shared.output(Format.XLSX);
        try (Book book = BookOpening.open(shared)) {
            PastDemand demand = book.demand(shared.folder(null, "--catalog"), months, options.signature(shared));
            output.write(Renderings.of(screen -> LostReport.text(demand, screen), () -> LostJson.of(demand), () -> LostReport.csv(demand))
                    .andBytes(Format.XLSX, () -> LostReport.xlsx(demand)));
            return ExitCode.DONE;
        }
    }
}
