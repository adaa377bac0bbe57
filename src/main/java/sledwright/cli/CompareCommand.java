package sledwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sledwright.desk.CompareQuestion;
import sledwright.desk.view.Audience;
import sledwright.desk.view.CompareAnswer;
import sledwright.desk.view.CompareView;
import sledwright.desk.view.ForCustomers;
import sledwright.input.Fault;
import sledwright.input.FaultsException;
import sledwright.report.compare.CompareLetter;
import sledwright.report.compare.ComparePage;
import sledwright.report.compare.CompareSheets;
import sledwright.report.compare.CompareSvg;
import sledwright.report.compare.CompareText;
import sledwright.report.compare.CompareCsv;
import sledwright.report.compare.CompareJson;

/** {@code compare FILE}: what more money buys, figure by figure. */
@Command(
        name = "compare",
        addMethodSubcommands = false,
        sortOptions = false,
        description = "Finds what money buys: for each figure of a machine every build unless another is as good and costs less, with what"
                + " each step costs and brings, the knee of the curve and the best price of a unit."
                + " Writes text, json, csv, xlsx, svg or html.",
        footer = {
            "",
            "Examples:",
            "  sledwright compare scenarios/render-node.yaml",
            "  sledwright compare scenarios/render-node.yaml --figure throughput --figure load",
            "  sledwright compare scenarios/cache-node.yaml --by-platform",
            "  sledwright compare scenarios/cache-node.yaml --years 4 --price-per-kwh 0.28 --duty 0.6",
            "  sledwright compare scenarios/cache-node.yaml --format html --output cache-node.html"})
final class CompareCommand extends ResultCommand {

    @Parameters(paramLabel = "FILE", arity = "0..1", description = "A request: a file with 'kind: quote'." + RequestInput.FILE)
    private Path file;

    @Option(names = "--set", paramLabel = "KEY=VALUE",
            description = "Answer as if the file had this value, such as require.cores=24. Repeatable.")
    private List<String> sets = new ArrayList<>();

    @Option(names = "--figure", paramLabel = "FIGURE", converter = Word.OfFigure.class,
            description = "Compare this figure: throughput, cores, bandwidth, memory or load. Repeatable. Otherwise all.")
    private List<String> figures = new ArrayList<>();

    @Option(names = "--over", paramLabel = "COST", converter = Word.OfCost.class,
            description = "Weigh this cost: price, or total, which needs energy. Repeatable. Otherwise both, so far as known.")
    private List<String> costs = new ArrayList<>();

    @Option(names = "--platform", paramLabel = "SKU", description = "Compare builds on this platform. Repeatable. Otherwise those of the"
            + " file.")
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
    private Readership readership;

    @Override
    public Integer call() {
        Output output = shared().output(Format.HTML, Format.SVG, Format.XLSX);
        Audience audience = readership.of(shared().format());
        CompareAnswer answer = answer();
        if (readership.refuses(answer.view().day(), audience, shared().terminal())) {
            return ExitCode.NO_VALID_BUILD;
        }
        CompareView view = audience == Audience.SHOP ? answer.view() : ForCustomers.of(answer.view());
        output.write(Renderings.of(screen -> audience == Audience.SHOP ? CompareText.of(view, screen)
                : CompareLetter.of(view, answer.job()), () -> CompareJson.of(view), () -> CompareCsv.of(view))
                .and(Format.SVG, () -> CompareSvg.of(view, answer.shop()))
                .and(Format.HTML, () -> ComparePage.of(view, answer.job()))
                .andBytes(Format.XLSX, () -> CompareSheets.of(view, answer.shop())));
        return view.isImpossible() ? ExitCode.NO_VALID_BUILD : ExitCode.DONE;
    }

    private CompareAnswer answer() {
        Map<String, String> energy = energy();
        List<String> all = new ArrayList<>(sets);
        all.addAll(energy.keySet());
        try {
            return Replies.answer(shared().desk().compare(shared().request(file, "quote", sets), new CompareQuestion(all, figures, costs,
                    platforms, byPlatform, together == null ? OptionalDouble.empty() : OptionalDouble.of(together)), shared().terms()));
        } catch (FaultsException wrong) {
            // What was typed here is named as it was typed; where nothing else is wrong, the command line is.
            List<Fault> faults = wrong.faults().stream().map(fault -> new Fault(energy.entrySet().stream()
                    .filter(option -> fault.file().equals("--set " + option.getKey())).map(Map.Entry::getValue).findFirst()
                    .orElse(fault.file()), fault.line(), fault.message(), fault.value())).toList();
            if (faults.stream().allMatch(fault -> energy.containsValue(fault.file()))) {
                throw new UsageException(faults.stream().map(Fault::toString).collect(Collectors.joining("\n")));
            }
            throw new FaultsException(faults);
        }
    }

    /** What the options of energy set, and how they were typed. */
    private Map<String, String> energy() {
        Map<String, String> energy = new LinkedHashMap<>();
        Optional.ofNullable(years).ifPresent(given -> energy.put("energy.years=" + given, "--years " + given));
        Optional.ofNullable(pricePerKwh).ifPresent(given -> energy.put("energy.price_per_kwh=" + given, "--price-per-kwh " + given));
        Optional.ofNullable(duty).ifPresent(given -> energy.put("energy.duty=" + given, "--duty " + given));
        return energy;
    }
}
