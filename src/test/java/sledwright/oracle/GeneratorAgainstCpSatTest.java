package sledwright.oracle;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sledwright.domain.Objective;
import sledwright.domain.Request;
import sledwright.generator.Findings;

/**
 * The search against an outside solver, CP-SAT of OR-Tools, on cases too large to list: whether there is a build, and the
 * objective's figure and price of the best. More seeds by {@code -Dsledwright.seeds=1000}, other ones by
 * {@code -Dsledwright.seed=100001}.
 */
class GeneratorAgainstCpSatTest {

    @Test
    void searchFindsWhatTheSolverProves() {
        Disagreement.none(80, RandomCase.Size.SOLVABLE, GeneratorAgainstCpSatTest::withTheSolver);
    }

    /** Where both can answer, the solver's model is itself held to the list of every build. */
    @Test
    void solverProvesWhatTheListOfEveryBuildHolds() {
        Disagreement.none(80, RandomCase.Size.LISTABLE, that -> {
            RandomCase known = that.with(modelled(that.request()));
            List<Candidate> all = BruteForce.all(known);
            Optional<CpSatOracle.Best> best = all.stream().min(Candidate.order(known.request())).map(one -> best(one, known.request()));
            Optional<CpSatOracle.Best> proved = CpSatOracle.solve(known);
            return best.equals(proved) ? "" : "every build gives %s, the solver %s".formatted(best, proved);
        });
    }

    private static Request modelled(Request request) {
        List<Objective> known = List.of(Objective.CHEAPEST, Objective.MOST_MEMORY, Objective.MOST_THROUGHPUT);
        return request.withMachines(1).withObjective(known.contains(request.objective()) ? request.objective() : Objective.CHEAPEST);
    }

    private static String withTheSolver(RandomCase that) {
        Findings findings = Agreement.search(that);
        String wrong = Agreement.soundness(findings, that);
        Optional<CpSatOracle.Best> found = findings.ranked().stream().findFirst().map(order -> best(Agreement.candidate(order), that.request()));
        Optional<CpSatOracle.Best> proved = CpSatOracle.solve(that);
        return found.equals(proved) ? wrong : wrong + "the search gives %s, the solver %s".formatted(found, proved);
    }

    private static CpSatOracle.Best best(Candidate one, Request request) {
        long aim = switch (request.objective()) {
            case MOST_MEMORY -> Math.round(one.usable() / 1e6 * CpSatModel.MEMORY_UNITS);
            case MOST_THROUGHPUT -> one.throughput();
            case CHEAPEST, MOST_BANDWIDTH, BEST_VALUE -> 0;
        };
        return new CpSatOracle.Best(aim, one.price());
    }
}
