package sledwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import sledwright.desk.CatalogDesk;
import sledwright.desk.view.DifferenceView;
import sledwright.input.Source;
import sledwright.report.intake.DifferenceJson;
import sledwright.report.intake.DifferenceReport;

/** {@code catalog diff OLD NEW}: what moved between two catalogues, and which requests that touches. */
@Command(
        name = "diff",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Shows which parts, prices and stock differ between two catalogues, and whether the best build or price of"
                + " requests does.",
        footer = {
            "",
            "--time-limit counts for each request and catalogue by itself.",
            "",
            "Example:",
            "  sledwright catalog diff last-week this-week scenarios/render-node.yaml scenarios/cache-node.yaml"})
final class CatalogDiffCommand extends ResultCommand {

    @Parameters(index = "0", paramLabel = "OLD", description = "The older catalogue's folder.")
    private Path before;

    @Parameters(index = "1", paramLabel = "NEW", description = "The newer one's.")
    private Path after;

    @Parameters(index = "2..*", paramLabel = "REQUEST", description = "Requests of kind quote.")
    private List<Path> requests = new ArrayList<>();

    @Override
    public Integer call() {
        Output output = shared().output();
        DifferenceView view = Replies.answer(CatalogDesk.difference(before, after, requests.stream().map(Source::of).toList(),
                shared().terms()));
        output.write(Renderings.of(screen -> DifferenceReport.text(view, screen), () -> DifferenceJson.of(view),
                () -> DifferenceReport.csv(view)));
        return ExitCode.DONE;
    }
}
