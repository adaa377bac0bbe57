package sledwright.desk;

import java.util.List;
import java.util.Optional;
import sledwright.desk.view.QuoteAnswer;
import sledwright.desk.view.MoreWork;
import sledwright.desk.view.QuoteView;
import sledwright.domain.Catalog;
import sledwright.domain.Part;
import sledwright.explain.Explainer;
import sledwright.explain.Explanation;
import sledwright.explain.ask.UnsettledException;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.input.Nearest;
import sledwright.planner.Outcome;
import sledwright.planner.Planner;
import sledwright.request.Job;

/** Ranked builds for one request. */
final class Quoting {

    private Quoting() {
    }

    static Reply<QuoteAnswer> answer(Job.Quote job, Search search, QuoteQuestion asked, Terms terms) {
        Optional<Misasking> unknown = asked.whyNot().stream().flatMap(sku -> unknown(sku, job.catalog()).stream()).findFirst();
        if (unknown.isPresent()) {
            return new Reply.Misasked<>(unknown.get());
        }
        Deadline deadline = terms.deadline();
        Optional<Pointing> points = Pointing.of(job, search, deadline);
        Findings findings = points.map(Pointing::findings).orElseGet(() -> search.run(job.request(), deadline));
        Outcome outcome = new Planner().plan(findings);
        Explainer explainer = new Explainer(job.catalog(), search, deadline);
        Optional<MoreWork> more = points.isPresent() ? Optional.empty() : moreWork(findings, job, explainer);
        Explanation explanation = explainer.explain(findings, asked.whyNot());
        QuoteView answer = QuoteView.of(outcome, job.catalog(), explanation, job.discount(),
                points.map(Pointing::marks).orElse(List.of())).with(more).lacking(Mixing.of(job, search, explanation, terms, deadline));
        QuoteView view = switch (asked.steps()) {
            case NOTHING -> answer;
            case REQUIREMENTS -> answer.with(explainer.steps(findings, false));
            case REQUIREMENTS_AND_PRICES -> answer.with(explainer.steps(findings, true));
        };
        return new Reply.Answered<>(new QuoteAnswer(view, job, outcome, Optional.empty()));
    }

    /** What one step of work costs, where machines are to do something, one was found and there is time for it. */
    private static Optional<MoreWork> moreWork(Findings findings, Job.Quote job, Explainer explainer) {
        if (findings.ranked().isEmpty() || !job.request().require().work().isOfWorkload()) {
            return Optional.empty();
        }
        try {
            return Optional.of(MoreWork.of(explainer.workStep(findings), findings.ranked().get(0), job.discount(), job.catalog()));
        } catch (UnsettledException open) {
            return Optional.empty();
        }
    }

    private static Optional<Misasking> unknown(String sku, Catalog catalog) {
        return catalog.part(sku).isPresent() ? Optional.empty() : Optional.of(Misasking.of("why-not", sku, "is no part of the catalogue"
                + new Nearest(catalog.parts().stream().map(Part::sku).toList()).hint(sku)));
    }
}
