package sledwright.cli;

import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sledwright.catalog.CatalogTable;
import sledwright.desk.CatalogDesk;
import sledwright.desk.ImportQuestion;
import sledwright.desk.view.ImportView;
import sledwright.input.Source;
import sledwright.report.intake.ImportJson;
import sledwright.report.intake.ImportReport;

/** {@code catalog import FILE}: a supplier's list into a table of a catalogue. */
@Command(
        name = "import",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Lays a supplier's list (XLSX or CSV) over a table of a catalogue and shows what that adds and changes. Nothing is"
                + " written"
                + " without --apply, and nothing when the catalogue would then have a fault.",
        footer = {
            "",
            "The exit code is 3 when rows cannot be taken, unless --skip-faulty says to do without them.",
            "",
            "Example:",
            "  sledwright catalog import prices.xlsx --as offers --mapping prices.yaml --into catalogs/heronfold-yard"})
final class CatalogImportCommand extends ResultCommand {

    @Parameters(paramLabel = "FILE", description = "The list: .xlsx, .csv, .tsv or .txt.")
    private Path file;

    @Option(names = "--as", paramLabel = "TABLE", required = true, converter = TableName.class,
            description = "The table that it goes into: offers, memory, processors, drives, cards or extras.")
    private CatalogTable table;

    @Option(names = "--into", paramLabel = "DIR", description = "The catalogue's folder; or name it with --catalog.")
    private Path into;

    @Option(names = "--mapping", paramLabel = "MAP",
            description = "The YAML file that says which column of the list is which of ours. Without it, the list has our headings.")
    private Path mapping;

    @Option(names = "--sheet", paramLabel = "NAME", description = "The sheet of the workbook. Default: as the mapping says, or the only"
            + " one.")
    private String sheet;

    @Option(names = "--apply", description = "Write the table; the file as it was is kept beside it as .bak.")
    private boolean apply;

    @Option(names = "--skip-faulty", description = "Take the other rows when some cannot be taken.")
    private boolean skipFaulty;

    @Override
    public Integer call() {
        Output output = shared().output();
        ImportView view = Replies.answer(CatalogDesk.importList(shared().folder(into, "--into"), new ImportQuestion(table, Source.of(file),
                Optional.ofNullable(mapping).map(Source::of), Optional.ofNullable(sheet), apply, skipFaulty)));
        output.write(Renderings.of(screen -> ImportReport.text(view, screen), () -> ImportJson.of(view), () -> ImportReport.csv(view)));
        return view.made().refused().isEmpty() || skipFaulty ? ExitCode.DONE : ExitCode.INPUT_FAULT;
    }
}
