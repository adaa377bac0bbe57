package sledwright.planner;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import sledwright.generator.Findings;
import sledwright.generator.Status;
import sledwright.metrics.Quantity;
import sledwright.planner.Judge.Verdict;
import sledwright.rules.Violation;

/** The second opinion on what the generator found: every build is scored and explained, and none passes that breaks a rule. */
public final class Planner {

    private final Judge judge = new Judge();

    /**
     * The generator's builds, each judged. Where the generator was stopped, what it had may be out of order, and is sorted.
     *
     * @throws DefectException when one of them breaks a rule; when the generator proved an order, best or figure that the
     *                         judgement contradicts
     */
    public Outcome plan(Findings findings) {
        List<Verdict> found = judge.judgeEach(findings.ranked());
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
        return new Outcome(findings.request(), findings.status(), objective(ranked.get(0)), findings.bound(),
                ranked.stream().map(Verdict::judged).toList(), findings.doubts());
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
                throw new DefectException("Rank %s is better than rank %s:\n%s\n%s".formatted(i + 1, i,
                        details(verdicts.get(i)), details(verdicts.get(i - 1))));
            }
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
