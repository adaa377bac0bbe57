package sledwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.input.Source;
import sledwright.planner.Outcome;
import sledwright.planner.Planner;
import sledwright.planner.StockDraw;
import sledwright.planner.upgrade.Installed;
import sledwright.planner.upgrade.Upgrade;
import sledwright.planner.upgrade.Upgrader;
import sledwright.report.page.PageHead;
import sledwright.report.page.Pdf;
import sledwright.report.sheet.SheetCsv;
import sledwright.report.sheet.SheetHtml;
import sledwright.report.sheet.SheetJson;
import sledwright.report.sheet.SheetSvg;
import sledwright.report.sheet.SheetText;
import sledwright.report.sheet.SheetView;
import sledwright.report.sheet.Sheets;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;
import sledwright.rules.Machine;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;

/** {@code sheet FILE}: what the bench needs to put machines together. */
@Command(
        name = "sheet",
        sortOptions = false,
        description = "Writes the bench sheet of a build, of an alternative of a quote or of an upgrade: parts to pick, the board, the"
                + " steps,"
                + " what the first start must show. Formats: text, json, csv (the pick list), html, pdf, svg (the board). Nothing is"
                + " written"
                + " for a build that breaks a rule; the exit code is then 4.",
        footer = {
            "",
            "Examples:",
            "  sledwright sheet scenarios/build-valid.yaml",
            "  sledwright sheet scenarios/render-node.yaml --rank 2 --format pdf -o sheet.pdf",
            "  sledwright sheet scenarios/sled-in-place.yaml --format html -o sheet.html"})
final class SheetCommand implements Callable<Integer> {

    private final Terminal terminal;

    @Parameters(paramLabel = "FILE", description = "A file with 'kind: build', 'kind: quote' or 'kind: upgrade'.")
    private Path file;

    @Option(names = "--rank", paramLabel = "N",
            description = "Of a quote, the alternative at this place of the list. Default: 1, the best.")
    private Integer rank;

    @Option(names = "--set", paramLabel = "KEY=VALUE",
            description = "Work as if the file had this value, such as require.cores=24. Repeatable.")
    private List<String> sets = new ArrayList<>();

    @Mixin
    private SharedOptions shared;

    SheetCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (rank != null && rank < 1) {
            throw new UsageException("--rank %d: the list begins with 1.".formatted(rank));
        }
        Output output = shared.output(terminal, Format.HTML, Format.PDF, Format.SVG);
        Job job = RequestReader.read(Source.of(file), sets, shared.catalogSource(), Set.of(Kind.BUILD, Kind.QUOTE, Kind.UPGRADE));
        Optional<SheetView> made = sheet(job);
        made.ifPresent(view -> write(view, job, output));
        return made.isPresent() ? ExitCode.DONE : ExitCode.NO_VALID_BUILD;
    }

    private static void write(SheetView view, Job job, Output output) {
        PageHead head = PageHead.of(SheetHtml.title(view), SheetHtml.subject(view), job.catalog());
        output.write(Renderings.of(screen -> SheetText.of(view, screen), () -> SheetJson.of(view), () -> SheetCsv.of(view))
                .and(Format.HTML, () -> SheetHtml.of(view, head)).andBytes(Format.PDF, () -> Pdf.of(SheetHtml.of(view, head), head))
                .and(Format.SVG, () -> SheetSvg.of(view)));
    }

    /** Empty where there is nothing to put together, which has been said by then. */
    private Optional<SheetView> sheet(Job job) {
        if (rank != null && !(job instanceof Job.Quote)) {
            throw new UsageException("--rank %d: only a quote has alternatives to choose from.\nMaybe leave --rank out.".formatted(rank));
        }
        if (job instanceof Job.Judge build) {
            return ofBuild(build);
        }
        return job instanceof Job.Upgrade upgrade ? ofUpgrade(upgrade) : ofQuote((Job.Quote) job);
    }

    private Optional<SheetView> ofBuild(Job.Judge job) {
        Machine machine = Machine.of(job.build(), job.request(), job.catalog().throughputFactors());
        StockDraw draw = StockDraw.of(Collections.nCopies(job.request().machines(), job.build()), job.request(), job.catalog());
        List<Violation> violations = Stream.concat(Rulebook.judge(machine).stream(), Rulebook.judge(draw.order()).stream()).toList();
        if (!violations.isEmpty()) {
            say("%s: no sheet, because the build is invalid.".formatted(job.request().name()));
            violations.forEach(violation -> say("- %s: %s".formatted(violation.rule(), violation.message())));
            return Optional.empty();
        }
        return Optional.of(Sheets.ofBuild(draw.order()));
    }

    private Optional<SheetView> ofQuote(Job.Quote job) {
        Outcome outcome = new Planner(shared.seed()).plan(new Search(job.catalog()).run(job.request(), shared.deadline()));
        int alternatives = outcome.ranked().size();
        if (alternatives == 0) {
            say("%s: no sheet, because no valid build was found.\nMaybe run 'sledwright quote', which says what conflicts."
                    .formatted(job.request().name()));
            return Optional.empty();
        }
        int chosen = rank == null ? 1 : rank;
        if (chosen > alternatives) {
            throw new UsageException("--rank %d: the list has %s.\nMaybe take %s, or ask for more with --set alternatives=%1$d."
                    .formatted(chosen, alternatives == 1 ? "1 alternative" : alternatives + " alternatives", alternatives == 1 ? "1"
                    : "one of 1 to " + alternatives));
        }
        return Optional.of(Sheets.ofAlternative(outcome.ranked().get(chosen - 1).order(), chosen));
    }

    private Optional<SheetView> ofUpgrade(Job.Upgrade job) {
        Deadline deadline = shared.deadline();
        Installed installed = Installed.of(job.build(), job.request().machines(), job.tradeIn(), job.request().limit(), job.catalog());
        Upgrader upgrader = new Upgrader(job.catalog(), job.request(), installed, shared.seed());
        Upgrade upgrade = upgrader.answer(upgrader.findings(deadline), deadline);
        if (upgrade.plan().isEmpty()) {
            say("%s: no sheet, because no upgrade was found.\nMaybe run 'sledwright upgrade', which says what conflicts."
                    .formatted(job.request().name()));
        }
        return upgrade.plan().map(plan -> Sheets.ofUpgrade(plan, installed));
    }

    private void say(String words) {
        terminal.err().println(words);
    }
}
