package sledwright.cli;

import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sledwright.catalog.CatalogTable;
import sledwright.catalog.intake.TableExport;
import sledwright.desk.CatalogDesk;
import sledwright.report.intake.TableSheet;

/** {@code catalog export DIR}: a table of a catalogue for a spreadsheet. */
@Command(
        name = "export",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Writes a table of a catalogue for a spreadsheet, as csv (also what text gives), xlsx or json. What a spreadsheet"
                + " would run as a"
                + " formula gets an apostrophe before it; catalog import takes it away again.",
        footer = {
            "",
            "Example:",
            "  sledwright catalog export catalogs/heronfold-yard --as offers --format xlsx --output offers.xlsx"})
final class CatalogExportCommand extends ResultCommand {

    @Parameters(paramLabel = "DIR", arity = "0..1", description = "The catalogue's folder; or name it with --catalog.")
    private Path folder;

    @Option(names = "--as", paramLabel = "TABLE", required = true, converter = TableName.class,
            description = "The table: offers, memory, processors, drives, cards or extras.")
    private CatalogTable table;

    @Override
    public Integer call() {
        Output output = shared().outputWhereTextIs(Format.CSV, Format.XLSX);
        TableExport export = Replies.answer(CatalogDesk.export(shared().folder(folder, "DIR"), table));
        output.write(Renderings.of(screen -> export.csv(), () -> TableSheet.json(export), export::csv)
                .andBytes(Format.XLSX, () -> TableSheet.workbook(export)));
        return ExitCode.DONE;
    }
}
