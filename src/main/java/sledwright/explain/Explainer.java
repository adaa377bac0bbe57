package sledwright.explain;

import java.util.List;
import sledwright.domain.Catalog;
import sledwright.generator.Deadline;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;

/** Answers what a person asks about findings, by the search that made them. */
public final class Explainer {

    private final Search search;
    private final Deadline deadline;
    private final Oracle oracle;

    /**
     * @param search   made the findings; its caches serve on
     * @param deadline ends the explanation, which then says so
     */
    public Explainer(Catalog catalog, Search search, Deadline deadline) {
        this.search = search;
        this.deadline = deadline;
        oracle = new Oracle(catalog, search, deadline);
    }

    /**
     * What conflicts where nothing can be had, and why each of the parts is not in the best build.
     *
     * @param whyNot part numbers of the catalogue
     */
    public Explanation explain(Findings findings, List<String> whyNot) {
        List<WhyNot> answers = whyNot.stream().distinct()
                .map(sku -> new WhyNotAnswer(sku, findings, search, deadline, oracle).find()).toList();
        if (findings.status() != Status.IMPOSSIBLE) {
            return new Explanation(answers, List.of(), List.of(), List.of());
        }
        Impossibility impossibility = Impossibility.of(findings.request(), oracle);
        List<Conflict> conflicts = impossibility.conflicts();
        List<Relaxation> relaxations = impossibility.relaxations();
        return new Explanation(answers, conflicts, relaxations, impossibility.notes());
    }
}
