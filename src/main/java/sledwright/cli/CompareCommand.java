package sledwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sledwright.compare.Comparer;
import sledwright.compare.Comparison;
import sledwright.compare.Cost;
import sledwright.desk.view.CompareView;
import sledwright.domain.Request;
import sledwright.generator.Axis;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.input.Nearest;
import sledwright.report.compare.CompareCsv;
import sledwright.report.compare.CompareJson;
import sledwright.report.compare.ComparePage;
import sledwright.report.compare.CompareSheets;
import sledwright.report.compare.CompareSvg;
import sledwright.report.compare.CompareText;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;

/** {@code compare FILE}: what each further coin buys, figure by figure. */
@Command(
        name = "compare",
        sortOptions = false,
        description = "Finds what money buys: for each figure of a machine every build than which none is cheaper and as good, with what"
                + " each"
                + " step costs and brings, the knee of the curve and the best price of a unit. Writes text, json, csv, xlsx, svg or html.",
        footer = {
            "",
            "Examples:",
            "  sledwright compare scenarios/render-node.yaml",
            "  sledwright compare scenarios/render-node.yaml --figure throughput --figure load",
            "  sledwright compare scenarios/cache-node.yaml --by-platform",
            "  sledwright compare scenarios/cache-node.yaml --years 4 --price-per-kwh 0.28 --duty 0.6",
            "  sledwright compare scenarios/cache-node.yaml --format html --output cache-node.html"})
final class CompareCommand implements Callable<Integer> {

    private final Terminal terminal;

    @Parameters(paramLabel = "FILE", arity = "0..1", description = "A request: a file with 'kind: quote'." + RequestInput.FILE)
    private Path file;

    @Option(names = "--set", paramLabel = "KEY=VALUE",
            description = "Answer as if the file had this value, such as require.cores=24. Repeatable.")
    private List<String> sets = new ArrayList<>();

    @Option(names = "--figure", paramLabel = "FIGURE", converter = Word.OfAxis.class,
            description = "Compare this figure: throughput, cores, bandwidth, memory or load. Repeatable. Otherwise all.")
    private List<Axis> figures = new ArrayList<>();

    @Option(names = "--over", paramLabel = "COST", converter = Word.OfCost.class,
            description = "Weigh this cost: price, or total, which needs energy. Repeatable. Otherwise both, so far as known.")
    private List<Cost> costs = new ArrayList<>();

    @Option(names = "--platform", paramLabel = "SKU",
            description = "Compare builds on this platform. Repeatable. Otherwise those of the file.")
    private List<String> platforms = new ArrayList<>();

    @Option(names = "--by-platform", description = "Draw a curve for each platform instead of one for all.")
    private boolean byPlatform;

    @Option(names = "--together", paramLabel = "SHARE",
            description = "Also list the builds of which each beats every cheaper one by this share in some figure, such as 0.2.")
    private Double together;

    @Option(names = "--years", paramLabel = "YEARS", description = "Years of energy in the total cost: energy.years of the file.")
    private String years;

    @Option(names = "--price-per-kwh", paramLabel = "AMOUNT", description = "What a kWh costs: energy.price_per_kwh of the file.")
    private String pricePerKwh;

    @Option(names = "--duty", paramLabel = "SHARE", description = "Mean share of the load, from 0 to 1: energy.duty of the file.")
    private String duty;

    @Mixin
    private SharedOptions shared;

    CompareCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        Output output = shared.output(terminal, Format.HTML, Format.SVG, Format.XLSX);
        Job.Quote job = (Job.Quote) RequestReader.read(shared.request(file, "quote", sets, terminal), allSets(), shared.catalogSource(),
                Set.of(Kind.QUOTE));
        Request request = onPlatforms(job);
        if (costs.contains(Cost.TOTAL) && job.energy().isEmpty()) {
            throw new UsageException(
                    "--over total needs to know about energy.\nMaybe add --years 4 --price-per-kwh 0.30, or a section energy to the file.");
        }
        Deadline deadline = shared.deadline();
        Comparer comparer = new Comparer(job.catalog());
        Comparison curves = comparer.compare(request, job.energy(), costs(job), distinct(figures, Axis.values()), byPlatform,
                together == null ? deadline : deadline.share(2));
        Comparison comparison = together == null ? curves : curves.with(comparer.together(request, share(), deadline));
        CompareView view = CompareView.of(comparison, job.catalog());
        output.write(Renderings.of(screen -> CompareText.of(view, screen), () -> CompareJson.of(view), () -> CompareCsv.of(view))
                .and(Format.SVG, () -> CompareSvg.of(view, job.catalog()))
                .and(Format.HTML, () -> ComparePage.of(view, job.catalog()))
                .andBytes(Format.XLSX, () -> CompareSheets.of(view, job.catalog().pricedOn())));
        return comparison.status() == Status.IMPOSSIBLE ? ExitCode.NO_VALID_BUILD : ExitCode.DONE;
    }

    private List<String> allSets() {
        List<String> all = new ArrayList<>(sets);
        Optional.ofNullable(years).ifPresent(given -> all.add("energy.years=" + given));
        Optional.ofNullable(pricePerKwh).ifPresent(given -> all.add("energy.price_per_kwh=" + given));
        Optional.ofNullable(duty).ifPresent(given -> all.add("energy.duty=" + given));
        return all;
    }

    private Request onPlatforms(Job.Quote job) {
        for (String sku : platforms) {
            if (job.catalog().platform(sku).isEmpty()) {
                throw new UsageException("--platform %s is no platform of the catalogue%s".formatted(sku,
                        new Nearest(job.catalog().platforms().stream().map(platform -> platform.sku()).toList()).hint(sku)));
            }
            if (!job.request().platforms().isEmpty() && !job.request().platforms().contains(sku)) {
                throw new UsageException("--platform %s is none that the request allows: %s".formatted(sku,
                        String.join(", ", job.request().platforms().stream().sorted().toList())));
            }
        }
        return platforms.isEmpty() ? job.request() : job.request().withPlatforms(Set.copyOf(platforms));
    }

    private List<Cost> costs(Job.Quote job) {
        return costs.isEmpty() && job.energy().isEmpty() ? List.of(Cost.PRICE) : distinct(costs, Cost.values());
    }

    private double share() {
        if (!(together >= 0 && together <= 10)) {
            throw new UsageException("--together %s must be a share from 0 to 10, such as 0.2 for a fifth".formatted(together));
        }
        return together;
    }

    private static <T> List<T> distinct(List<T> given, T[] otherwise) {
        return given.isEmpty() ? Arrays.asList(otherwise) : List.copyOf(new LinkedHashSet<>(given));
    }
}
