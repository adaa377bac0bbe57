package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import sledwright.domain.Objective;
import sledwright.domain.Request;
import sledwright.domain.WorkWish;
import sledwright.domain.Workload;
import sledwright.generator.Findings;
import sledwright.generator.Status;

/**
 * The search against an outside solver, CP-SAT of OR-Tools, on cases too large to list: whether there is a build, and the
 * objective's figure and price of the best. More seeds by {@code -Dsledwright.seeds=1000}, other ones by
 * {@code -Dsledwright.seed=100001}.
 */
class GeneratorAgainstCpSatTest {

    private static final int SEEDS = 80;

    /** The solver gets the search's answer and looks for a better one; a few cases are too hard for it. */
    @Test
    void searchFindsWhatTheSolverProves() {
        Set<Long> undecided = new HashSet<>();
        Disagreement.none(SEEDS, GeneratorAgainstCpSatTest::working, that -> {
            try {
                return withTheSolver(that);
            } catch (CpSatOracle.UndecidedException tooHard) {
                undecided.add(that.seed());
                return "";
            }
        });
        assertThat(undecided.size()).as("undecided: seeds %s", undecided).isLessThanOrEqualTo((int) (Seeds.chosen(SEEDS).count() / 5));
    }

    /** A case whose machine is to do something in one of three. */
    private static RandomCase working(long seed) {
        RandomCase that = RandomCase.of(seed, RandomCase.Size.SOLVABLE);
        SplittableRandom random = new SplittableRandom(11 * seed + 3);
        if (random.nextInt(3) > 0) {
            return that;
        }
        Workload workload = new Workload("run", random.nextBoolean() ? 1 : 1 - 1.0 / (8 << random.nextInt(5)), random.nextInt(3) == 0 ? 0 : (1 + random.nextInt(40)) / 8.0, 0);
        return that.with(that.request().withRequire(that.request().require().withWork(new WorkWish((1 + random.nextInt(40)) * 1.5, workload))));
    }

    /** Where both can answer, the solver's model is itself held to the list of every build. */
    @Test
    void solverProvesWhatTheListOfEveryBuildHolds() {
        Disagreement.none(SEEDS, RandomCase.Size.LISTABLE, that -> {
            RandomCase known = that.with(modelled(that.request()));
            List<Candidate> all = BruteForce.all(known);
            Optional<CpSatOracle.Best> best = all.stream().min(Candidate.order(known.request())).map(one -> best(one, known.request()));
            Optional<CpSatOracle.Best> proved = CpSatOracle.better(known, null);
            return best.equals(proved) ? "" : "every build gives %s, the solver %s".formatted(best, proved);
        });
    }

    /** The solver's model has one machine and some aims. */
    private static Request modelled(Request request) {
        List<Objective> known = List.of(Objective.CHEAPEST, Objective.MOST_MEMORY, Objective.MOST_THROUGHPUT);
        return request.withMachines(1).withObjective(known.contains(request.objective()) ? request.objective() : Objective.CHEAPEST);
    }

    private static String withTheSolver(RandomCase that) {
        Findings findings = Agreement.search(that);
        String wrong = Agreement.soundness(findings, that);
        CpSatOracle.Best found = findings.ranked().isEmpty() ? null : best(Agreement.candidate(findings.ranked().get(0)), that.request());
        Optional<CpSatOracle.Best> better = CpSatOracle.better(that, found);
        if (better.isPresent() && findings.status() == Status.BEST_FOUND) {
            return wrong + Agreement.bound(findings, aim(better.get(), that.request()), that.request());
        }
        return better.isEmpty() ? wrong : wrong + "the search gives %s, the solver %s".formatted(found, better.get());
    }

    private static double aim(CpSatOracle.Best best, Request request) {
        return switch (request.objective()) {
            case MOST_MEMORY -> (double) best.aim() / CpSatModel.MEMORY_UNITS;
            case MOST_THROUGHPUT -> best.aim() / 1e6;
            case CHEAPEST, MOST_BANDWIDTH, BEST_VALUE, MOST_WORK, MOST_CORES, LEAST_TOTAL -> best.price();
        };
    }

    private static CpSatOracle.Best best(Candidate one, Request request) {
        long aim = switch (request.objective()) {
            case MOST_MEMORY -> Math.round(one.usable() / 1e6 * CpSatModel.MEMORY_UNITS);
            case MOST_THROUGHPUT -> one.throughput();
            case CHEAPEST, MOST_BANDWIDTH, BEST_VALUE, MOST_WORK, MOST_CORES, LEAST_TOTAL -> 0;
        };
        return new CpSatOracle.Best(aim, one.price());
    }
}
