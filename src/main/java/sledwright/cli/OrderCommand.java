package sledwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sledwright.desk.view.OrderView;
import sledwright.domain.Catalog;
import sledwright.domain.Request;
import sledwright.explain.Explainer;
import sledwright.explain.Explanation;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.OrderOutcome;
import sledwright.planner.order.OrderOutcome.LineFill;
import sledwright.planner.order.OrderPlanner;
import sledwright.report.order.OrderCsv;
import sledwright.report.order.OrderJson;
import sledwright.report.order.OrderText;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;

/** {@code order FILE}: the cheapest joint fill of several lines from one stock. */
@Command(
        name = "order",
        sortOptions = false,
        description = "Fills several lines of machines from one stock at the least price, and says how far from it the answer can be at"
                + " most."
                + " Ctrl-C gives the best found so far; once more ends at once. The exit code is 4 when machines are missing.",
        footer = {
            "",
            "Examples:",
            "  sledwright order scenarios/branch-offices-order.yaml",
            "  sledwright order scenarios/short-order.yaml --set lines.reports.machines=4",
            "  sledwright order scenarios/sled-rack-order.yaml --format csv -o picks.csv"})
final class OrderCommand implements Callable<Integer> {

    private final Terminal terminal;

    @Parameters(paramLabel = "FILE", arity = "0..1", description = "Lines of machines: a file with 'kind: order'." + RequestInput.FILE)
    private Path file;

    @Option(names = "--set", paramLabel = "KEY=VALUE",
            description = "Answer as if the file had this value, such as lines.web.machines=5. Repeatable.")
    private List<String> sets = new ArrayList<>();

    @Mixin
    private SharedOptions shared;

    OrderCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        Output output = shared.output(terminal);
        Job.Order job = (Job.Order) RequestReader.read(shared.request(file, "order", sets, terminal), sets, shared.catalogSource(),
                Set.of(Kind.ORDER));
        OrderView view;
        try (Interrupt interrupt = Interrupt.listen(terminal.err())) {
            Deadline deadline = shared.deadline().or(interrupt::isAsked);
            OrderOutcome outcome = new OrderPlanner(job.catalog(), shared.seed()).plan(job.order(), deadline,
                    new ProgressLine(terminal.err(), minor -> job.catalog().amount(Math.round(minor)) + " "
                    + job.catalog().currency().getCurrencyCode()));
            view = OrderView.of(outcome, why(outcome, job.catalog(), deadline));
        }
        output.write(Renderings.of(screen -> OrderText.of(view, screen), () -> OrderJson.of(view), () -> OrderCsv.of(view)));
        return view.shortage().isEmpty() ? ExitCode.DONE : ExitCode.NO_VALID_BUILD;
    }

    /** Name of each line of which not one machine can be built, even if it stood alone -> what conflicts. */
    private static Map<String, Explanation> why(OrderOutcome outcome, Catalog catalog, Deadline deadline) {
        Map<String, Explanation> why = new LinkedHashMap<>();
        Search search = new Search(catalog);
        for (LineFill fill : outcome.lines()) {
            if (fill.delivered() == 0) {
                explained(fill.line().request().withOnHand(outcome.order().onHand()), catalog, search, deadline)
                        .ifPresent(said -> why.put(fill.line().name(), said));
            }
        }
        return why;
    }

    private static Optional<Explanation> explained(Request asked, Catalog catalog, Search search, Deadline deadline) {
        Findings findings = search.run(asked.withMachines(1), deadline);
        return findings.status() == Status.IMPOSSIBLE ? Optional.of(new Explainer(catalog, search, deadline).explain(findings, List.of()))
                : Optional.empty();
    }
}
