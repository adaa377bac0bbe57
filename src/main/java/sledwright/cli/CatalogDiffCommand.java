package sledwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import sledwright.catalog.CatalogReader;
import sledwright.catalog.CatalogSource;
import sledwright.desk.view.DifferenceView;
import sledwright.desk.view.DifferenceView.Answer;
import sledwright.desk.view.DifferenceView.RequestMove;
import sledwright.desk.view.QuoteView;
import sledwright.domain.Catalog;
import sledwright.explain.Explanation;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.input.Fault;
import sledwright.input.FaultsException;
import sledwright.input.Source;
import sledwright.planner.Planner;
import sledwright.report.intake.DifferenceReport;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;

/** {@code catalog diff OLD NEW}: what moved between two catalogues, and which requests that touches. */
@Command(
        name = "diff",
        sortOptions = false,
        description = "Shows which parts, prices and stock differ between two catalogues, and whether the best build or price of"
                + " requests does.",
        footer = {
            "",
            "--time-limit counts for each request and catalogue by itself.",
            "",
            "Example:",
            "  sledwright catalog diff last-week this-week scenarios/render-node.yaml scenarios/cache-node.yaml"})
final class CatalogDiffCommand implements Callable<Integer> {

    /** The best alone is compared. */
    private static final List<String> BEST_ALONE = List.of("alternatives=1");

    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "OLD", description = "The older catalogue's folder.")
    private Path before;

    @Parameters(index = "1", paramLabel = "NEW", description = "The newer one's.")
    private Path after;

    @Parameters(index = "2..*", paramLabel = "REQUEST", description = "Requests of kind quote.")
    private List<Path> requests = new ArrayList<>();

    @Mixin
    private SharedOptions shared;

    CatalogDiffCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        Output output = shared.output(terminal);
        Catalog old = CatalogReader.read(before);
        Catalog now = CatalogReader.read(after);
        if (!old.currency().equals(now.currency())) {
            throw new UsageException("amounts of %s are in %s, those of %s in %s; they cannot be compared."
                    .formatted(before, old.currency(), after, now.currency()));
        }
        List<RequestMove> moves = requests.stream().map(this::move).toList();
        DifferenceView view = DifferenceView.of(before.toString(), after.toString(), old, now, moves);
        output.write(Renderings.of(screen -> DifferenceReport.text(view, screen), () -> DifferenceReport.json(view),
                () -> DifferenceReport.csv(view)));
        return ExitCode.DONE;
    }

    private RequestMove move(Path file) {
        Job.Quote job = read(file, before);
        return new RequestMove(file.toString(), job.request().name(), answer(job), answer(file));
    }

    private Answer answer(Path file) {
        try {
            return answer(read(file, after));
        } catch (FaultsException gone) {
            return Answer.unreadable(gone.faults().stream().map(Fault::toString).toList());
        }
    }

    private Job.Quote read(Path file, Path catalog) {
        return (Job.Quote) RequestReader.read(Source.of(file), BEST_ALONE, Optional.of(CatalogSource.of(catalog)), Set.of(Kind.QUOTE));
    }

    private Answer answer(Job.Quote job) {
        Deadline deadline = shared.deadline();
        return Answer.of(QuoteView.of(new Planner(shared.seed()).plan(new Search(job.catalog()).run(job.request(), deadline)),
                job.catalog(), Explanation.NONE));
    }
}
