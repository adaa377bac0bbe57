package sledwright.planner;

import java.util.List;
import java.util.stream.Collectors;
import org.optaplanner.core.api.score.buildin.bendablelong.BendableLongScore;
import org.optaplanner.core.api.solver.SolverFactory;
import sledwright.generator.Findings;
import sledwright.planner.Judge.Verdict;
import sledwright.rules.Violation;

/** Decides between what the generator found, from its best on, and lets nothing pass that breaks a rule. */
public final class Planner {

    private final SolverFactory<OrderPlan> factory;
    private final Judge judge;

    /** A planner that decides the same way whenever the seed is the same. */
    public Planner(long seed) {
        factory = Solving.factory(seed);
        judge = new Judge(factory);
    }

    /**
     * The generator's builds, each judged.
     *
     * @throws DefectException when one of them breaks a rule, when they are out of order, or when the planner finds a better
     *                         plan than the generator's best
     */
    public Outcome plan(Findings findings) {
        List<Candidate> candidates = findings.ranked().stream().map(Candidate::new).toList();
        List<Verdict> verdicts = candidates.stream().map(judge::judge).toList();
        verdicts.forEach(Planner::requireValid);
        requireRanked(verdicts);
        if (!candidates.isEmpty()) {
            requireBest(verdicts.get(0), solve(findings.request().name(), candidates));
        }
        return new Outcome(findings.request(), findings.status(), findings.best(), findings.bound(),
                verdicts.stream().map(Verdict::judged).toList());
    }

    private BendableLongScore solve(String line, List<Candidate> candidates) {
        OrderPlan start = new OrderPlan(List.of(new LinePlan(line, candidates, candidates.get(0))));
        return factory.buildSolver().solve(start).score();
    }

    private static void requireValid(Verdict verdict) {
        if (!verdict.judged().valid()) {
            throw new DefectException("A build that was found breaks %d rules:\n%s\nIt is:\n%s".formatted(
                    verdict.judged().broken().size(), verdict.judged().broken().stream().map(Planner::words)
                            .collect(Collectors.joining("\n")), details(verdict)));
        }
    }

    private static void requireRanked(List<Verdict> verdicts) {
        for (int i = 1; i < verdicts.size(); i++) {
            if (verdicts.get(i).score().compareTo(verdicts.get(i - 1).score()) > 0) {
                throw new DefectException("Rank %d is better than rank %d:\n%s\n%s".formatted(i + 1, i,
                        details(verdicts.get(i)), details(verdicts.get(i - 1))));
            }
        }
    }

    private static void requireBest(Verdict first, BendableLongScore chosen) {
        if (chosen.compareTo(first.score()) > 0) {
            throw new DefectException("The planner found a plan of score %s, better than the best:\n%s".formatted(chosen, details(first)));
        }
    }

    private static String words(Violation violation) {
        return "  %s %s: %s".formatted(violation.rule(), violation.where(), violation.message());
    }

    private static String details(Verdict verdict) {
        return "  score %s\n  request %s\n  machines %s\n  picks %s".formatted(verdict.score(), verdict.judged().order().request(),
                verdict.judged().order().needed(), verdict.judged().order().picks());
    }
}
