package sledwright.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import sledwright.catalog.CatalogReader;
import sledwright.report.CatalogText;
import sledwright.report.CatalogView;
import sledwright.report.Csv;
import sledwright.report.Json;

/** {@code catalog DIR}: what a catalogue holds, or every fault in it. */
@Command(
        name = "catalog",
        sortOptions = false,
        description = "Reads a catalogue and counts what it holds, or lists every fault in it as file:line: message.",
        footer = {
            "",
            "Examples:",
            "  sledwright catalog catalogs/heronfold-yard",
            "  sledwright catalog catalogs/heronfold-yard --format json"})
final class CatalogCommand implements Callable<Integer> {

    private final Terminal terminal;

    @Parameters(paramLabel = "DIR", arity = "0..1", description = "The catalogue's folder; or name it with --catalog.")
    private Path folder;

    @Mixin
    private SharedOptions shared;

    CatalogCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        Output output = shared.output(terminal);
        CatalogView view = CatalogView.of(CatalogReader.read(folder()));
        output.write(Renderings.of(screen -> CatalogText.of(view, screen), () -> Json.of(view), () -> Csv.of(view)));
        return ExitCode.DONE;
    }

    private Path folder() {
        if ((folder == null) == shared.catalog().isEmpty()) {
            throw new UsageException(folder == null ? "name the catalogue's folder, such as catalogs/heronfold-yard"
                    : "name one folder, not %s and --catalog %s".formatted(folder, shared.catalog().get()));
        }
        return folder == null ? shared.catalog().get() : folder;
    }
}
