package sledwright.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sledwright.domain.Catalog;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.explain.ask.Oracle;
import sledwright.explain.ask.Unproved;
import sledwright.explain.ask.UnsettledException;
import sledwright.explain.conflict.Impossibility;
import sledwright.explain.steps.DroppedWishes;
import sledwright.explain.steps.PriceSteps;
import sledwright.explain.steps.RequirementSteps;
import sledwright.explain.steps.Steps;
import sledwright.explain.whynot.WhyNot;
import sledwright.explain.whynot.WhyNotAnswer;
import sledwright.generator.Exact;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.rules.Order;
import sledwright.words.Sentence;

/** Answers what a person asks about findings, by the search that made them. */
public final class Explainer {

    private static final String NO_STEPS = "The best is not proved, so there are no steps from it.";

    private final Catalog catalog;
    private final Search search;
    private final Deadline deadline;
    private final Oracle oracle;

    /**
     * @param search   made the findings; its caches serve on
     * @param deadline ends the explanation, which then says so
     */
    public Explainer(Catalog catalog, Search search, Deadline deadline) {
        this.catalog = catalog;
        this.search = search;
        this.deadline = deadline;
        oracle = new Oracle(catalog, search, deadline);
    }

    /**
     * What conflicts where nothing is possible, and why each of the parts is not in the best build.
     *
     * @param whyNot part numbers of the catalogue
     */
    public Explanation explain(Findings findings, List<String> whyNot) {
        List<WhyNot> answers = whyNot.stream().distinct()
                .map(sku -> new WhyNotAnswer(sku, findings, search, deadline, oracle).find()).toList();
        if (findings.status() != Status.IMPOSSIBLE) {
            return new Explanation(answers, List.of(), List.of(), List.of(), List.of());
        }
        return explanation(answers, Impossibility.of(findings.request(), oracle));
    }

    /** What conflicts where machines that stand cannot be made to answer a request; their number and platform are beyond question. */
    public static Explanation ofStanding(Findings impossible, Catalog catalog, Exact search, Deadline deadline) {
        return explanation(List.of(), Impossibility.ofStanding(impossible.request(), new Oracle(catalog, search, deadline)));
    }

    private static Explanation explanation(List<WhyNot> answers, Impossibility impossibility) {
        return new Explanation(answers, impossibility.conflicts(), impossibility.relaxations(), impossibility.lacks(),
                impossibility.notes());
    }

    /**
     * What one step of work costs from the best of the findings; empty, too, where no build does more.
     *
     * @throws UnsettledException when time runs out
     */
    public Optional<WorkStep> workStep(Findings findings) {
        return WorkStep.from(findings.ranked().get(0), oracle);
    }

    /**
     * How the best of the findings changes with what is asked for.
     *
     * @param prices whether to say at which prices of its parts it stays the best, too
     */
    public Steps steps(Findings findings, boolean prices) {
        if (findings.status() != Status.PROVED) {
            return new Steps(List.of(), List.of(), List.of(), List.of(findings.status() == Status.IMPOSSIBLE
                    ? Sentence.plain("No valid build exists, so there are no steps from it.")
                    : Unproved.sentence(NO_STEPS, NO_STEPS, findings.doubts())));
        }
        Request request = findings.request();
        Order best = findings.ranked().get(0);
        List<Steps.Curve> curves = new ArrayList<>();
        List<Steps.Dropped> wishes = new ArrayList<>();
        List<Steps.PriceRange> parts = new ArrayList<>();
        try {
            RequirementSteps.addTo(curves, request, best, oracle);
            DroppedWishes.addTo(wishes, request, best, oracle);
            for (String sku : prices ? paidFor(best) : List.<String>of()) {
                parts.add(new PriceSteps(sku, request, best, catalog, search, deadline).find());
            }
        } catch (UnsettledException open) {
            return new Steps(curves, wishes, parts, List.of(Unproved.sentence("Time ran out before every step was found.",
                    "Not every step could be found.", open.doubts())));
        }
        return new Steps(curves, wishes, parts, curves.isEmpty()
                ? List.of(Sentence.plain("The request asks for no figure that could be more or less.")) : List.of());
    }

    private static List<String> paidFor(Order best) {
        return best.picks().stream().filter(pick -> !pick.lot().onHand()).map(Pick::sku).distinct().toList();
    }
}
