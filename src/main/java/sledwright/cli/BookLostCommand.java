package sledwright.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import sledwright.book.Book;
import sledwright.book.PastDemand;
import sledwright.book.Signature;
import sledwright.report.book.LostJson;
import sledwright.report.book.LostReport;

/** {@code book lost}: quotes that came to nothing. */
@Command(
        name = "lost",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Lists quotes of the months up to today that were declined, withdrawn or expired: by reason, and by how much they"
                + " were too dear. Formats: text, json, csv, xlsx. Requests are read with the catalogue that --catalog names.")
final class BookLostCommand extends BookWork {

    @Option(names = "--months", paramLabel = "N", required = true, converter = Word.OfMonths.class, description = "How many months up to"
            + " today.")
    private int months;

    BookLostCommand() {
        super(Format.XLSX);
    }

    @Override
    int work(Book book, Signature by, Output output) {
        PastDemand demand = book.demand(folder(), months, by);
        output.write(Renderings.of(screen -> LostReport.text(demand, screen), () -> LostJson.of(demand), () -> LostReport.csv(demand))
                .andBytes(Format.XLSX, () -> LostReport.xlsx(demand)));
        return ExitCode.DONE;
    }
}
