package sledwright.planner;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.optaplanner.core.api.score.buildin.bendablelong.BendableLongScore;
import org.optaplanner.core.api.solver.Solver;
import org.optaplanner.core.api.solver.SolverFactory;
import sledwright.generator.Findings;
import sledwright.generator.Status;
import sledwright.metrics.Quantity;
import sledwright.planner.Judge.Verdict;
import sledwright.rules.Violation;

/** Decides between the builds that the generator found, starting from its best, and lets none pass that breaks a rule. */
public final class Planner {

    private final Judge judge;
    private final Solver<OrderPlan> solver;

    /** A planner that decides the same way whenever the seed is the same. It plans one request at a time. */
    public Planner(long seed) {
        SolverFactory<OrderPlan> factory = Solving.factory(seed);
        judge = new Judge(factory);
        solver = factory.buildSolver();
    }

    /**
     * The generator's builds, each judged. Where the generator was stopped, what it had may be out of order, and is sorted.
     *
     * @throws DefectException when one of them breaks a rule; when the generator proved an order, best or figure that the
     *                         judgement contradicts; when the planner finds a better plan than the first
     */
    public Outcome plan(Findings findings) {
        List<Candidate> candidates = findings.ranked().stream().map(Candidate::new).toList();
        List<Verdict> found = candidates.stream().map(judge::judge).toList();
        found.forEach(Planner::requireValid);
        List<Verdict> ranked = found.stream().sorted(Comparator.comparing(Verdict::score).reversed()).toList();
        if (ranked.isEmpty()) {
            return new Outcome(findings.request(), findings.status(), findings.best(), findings.bound(), List.of(), findings.doubts());
        }
        if (findings.complete()) {
            requireRanked(found);
        }
        if (findings.status() == Status.PROVED) {
            requireFigure(ranked.get(0), findings.best());
        }
        requireBest(ranked.get(0), solve(findings.request().name(), candidates));
        return new Outcome(findings.request(), findings.status(), objective(ranked.get(0)), findings.bound(),
                ranked.stream().map(Verdict::judged).toList(), findings.doubts());
    }

    private BendableLongScore solve(String line, List<Candidate> candidates) {
        OrderPlan start = new OrderPlan(List.of(new LinePlan(line, candidates, candidates.get(0))));
        return solver.solve(start).score();
    }

    /** The figure that the objective looks at. */
    private static double objective(Verdict verdict) {
        return verdict.judged().trades().get(Criterion.OBJECTIVE.ordinal()).amount();
    }

    private static void requireValid(Verdict verdict) {
        List<Violation> broken = verdict.judged().broken();
        if (!broken.isEmpty()) {
            throw new DefectException("A build that was found breaks the rules:\n%s\n%s".formatted(
                    broken.stream().map(Planner::words).collect(Collectors.joining("\n")), details(verdict)));
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

    private static void requireBest(Verdict first, BendableLongScore other) {
        if (other.compareTo(first.score()) > 0) {
            throw new DefectException("The planner's choice of score %s is better than the best:\n%s".formatted(other, details(first)));
        }
    }

    private static void requireFigure(Verdict first, double stated) {
        if (Quantity.rounded(objective(first) - stated) != 0) {
            throw new DefectException("The best is stated as %s and judged as %s:\n%s".formatted(stated, objective(first), details(first)));
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
