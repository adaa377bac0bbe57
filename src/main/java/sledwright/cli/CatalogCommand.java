package sledwright.cli;

import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import sledwright.desk.CatalogDesk;
import sledwright.desk.view.CatalogView;
import sledwright.report.catalog.CatalogText;
import sledwright.report.catalog.CatalogCsv;
import sledwright.report.catalog.CatalogJson;

/** {@code catalog DIR}: what a catalogue holds, or every fault in it. */
@Command(
        name = "catalog",
        addMethodSubcommands = false,
        sortOptions = false,
        synopsisSubcommandLabel = "[COMMAND]",
        subcommands = {CatalogNewCommand.class, CatalogImportCommand.class, CatalogExportCommand.class, CatalogDiffCommand.class},
        description = "Reads a catalogue, counts what it holds and shows what is odd about it, or lists every fault in it as file:line:"
                + " message.",
        footer = {
            "",
            "Examples:",
            "  sledwright catalog catalogs/heronfold-yard",
            "  sledwright catalog catalogs/heronfold-yard --format json",
            "",
            "A folder that is called new, import, export or diff is named as ./import."})
final class CatalogCommand extends ResultCommand {

    @Parameters(paramLabel = "DIR", arity = "0..1", description = "The catalogue's folder; or name it with --catalog.")
    private Path folder;

    @Override
    public Integer call() {
        Output output = shared().output();
        CatalogView view = Replies.answer(CatalogDesk.check(shared().folder(folder, "DIR")));
        output.write(Renderings.of(screen -> CatalogText.of(view, screen), () -> CatalogJson.of(view), () -> CatalogCsv.of(view)));
        return ExitCode.DONE;
    }
}
