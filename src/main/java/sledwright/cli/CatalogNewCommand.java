package sledwright.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import sledwright.desk.CatalogDesk;
import sledwright.report.catalog.NewShopJson;
import sledwright.report.text.Csv;

/** {@code catalog new DIR}: a small shop to start from. */
@Command(
        name = "new",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Writes a small shop to start from into a folder that is not there yet, or is empty: every file of a catalogue with"
                + " comments, and a first request. All of it is invented.",
        footer = {
            "",
            "Example:",
            "  sledwright catalog new my-shop"})
final class CatalogNewCommand extends ResultCommand {

    @Parameters(paramLabel = "DIR", arity = "0..1", description = "The folder; or name it with --catalog.")
    private Path folder;

    @Override
    public Integer call() {
        Output output = shared().output();
        Path named = shared().folder(folder, "DIR");
        List<String> files = Replies.answer(CatalogDesk.begin(named, shared().day()));
        output.write(Renderings.of(screen -> text(named, files), () -> NewShopJson.of(named.toString(), files),
                () -> Csv.write(List.of("file"), files.stream().map(file -> List.<Object>of(file)).toList())));
        return ExitCode.DONE;
    }

    private static String text(Path folder, List<String> files) {
        return files.stream().map(file -> folder.resolve(file) + "\n").collect(Collectors.joining())
                + "\nLook at it: sledwright catalog %s\nAsk it:     sledwright quote %s\n".formatted(folder,
                folder.resolve(files.get(files.size() - 1)));
    }
}
