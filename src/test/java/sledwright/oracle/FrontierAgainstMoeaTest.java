package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.moeaframework.core.Solution;
import org.moeaframework.core.indicator.Hypervolume;
import org.moeaframework.core.population.NondominatedPopulation;
import org.moeaframework.core.population.NondominatedPopulation.DuplicateMode;
import org.moeaframework.problem.AbstractProblem;
import sledwright.compare.Comparer;
import sledwright.compare.Comparison;
import sledwright.compare.Cost;
import sledwright.compare.Curve;
import sledwright.compare.Together;
import sledwright.domain.Objective;
import sledwright.generator.Axis;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.input.Source;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;
import sledwright.rules.Order;

/**
 * Frontiers against the MOEA Framework (moeaframework.org, version 5.0), which says of the list of every build which are beaten, and how
 * much of the space of costs and figures the rest dominate.
 */
class FrontierAgainstMoeaTest {

    private static final int SEEDS = 120;

    @Test
    void pointsAreThoseThatNoBuildBeatsAndDominateAsMuch() {
        AtomicInteger points = new AtomicInteger();
        Seeds.chosen(SEEDS).forEach(seed -> {
            RandomCase that = RandomCase.of(seed, RandomCase.Size.LISTABLE);
            List<Candidate> all = BruteForce.all(that);
            for (Curve curve : compare(that).curves()) {
                List<double[]> listed = all.stream().map(build -> objectives(build, curve.axes().figure())).toList();
                List<double[]> found = curve.points().stream().map(point -> objectives(Agreement.candidate(point.order()), curve.axes().figure())).toList();
                String where = curve.axes().figure() + " of " + that.text();
                if (curve.bound().isEmpty() && !Agreement.isTangled(that)) {
                    assertThat(words(found)).as(where).isEqualTo(words(population(listed)));
                    assertSameVolume(listed, found, where);
                    points.addAndGet(found.size());
                }
            }
        });
        assertThat(points.get()).isGreaterThan(320);
    }

    @Test
    void allFiguresTogetherAreWhatNoBuildBeats() {
        AtomicInteger builds = new AtomicInteger();
        Seeds.chosen(SEEDS).forEach(seed -> {
            RandomCase that = RandomCase.of(seed, RandomCase.Size.LISTABLE);
            Together together = new Comparer(that.catalog(), new Search(that.catalog())).together(that.request(), 0, Deadline.never());
            if (together.complete()) {
                List<double[]> listed = BruteForce.all(that).stream().map(FrontierAgainstMoeaTest::objectives).toList();
                List<double[]> found = together.builds().stream().map(order -> objectives(Agreement.candidate(order))).toList();
                assertThat(words(found)).as(that.text()).isEqualTo(words(population(listed)));
                builds.addAndGet(found.size());
            }
        });
        assertThat(builds.get()).isGreaterThan(800);
    }

    /** The demo is too large to list: here no build that quotes of other aims find may lie beyond a curve. */
    @Test
    void noQuoteOfTheDemoLiesBeyondItsCurves() {
        Job.Quote job = (Job.Quote) RequestReader.read(Source.of(Path.of("scenarios/cache-node.yaml")), List.of(), Optional.empty(), Set.of(Kind.QUOTE));
        Search search = new Search(job.catalog());
        List<Order> quoted = new ArrayList<>();
        for (Objective objective : List.of(Objective.CHEAPEST, Objective.MOST_THROUGHPUT, Objective.MOST_BANDWIDTH, Objective.MOST_MEMORY)) {
            quoted.addAll(search.run(job.request().withObjective(objective).withAlternatives(30, 0.03), Deadline.never()).ranked());
        }
        Comparison comparison = new Comparer(job.catalog(), new Search(job.catalog())).compare(job.request(), Optional.empty(), List.of(Cost.PRICE), Axis.of(job.request().require()), false,
                Deadline.never());
        for (Curve curve : comparison.curves()) {
            List<double[]> points = curve.points().stream().map(point -> objectives(Agreement.candidate(point.order()), curve.axes().figure())).toList();
            List<double[]> both = new ArrayList<>(points);
            quoted.forEach(order -> both.add(objectives(Agreement.candidate(order), curve.axes().figure())));
            assertThat(words(population(both))).as(curve.axes().figure().label()).isEqualTo(words(points));
            assertSameVolume(both, points, curve.axes().figure().label());
        }
        assertThat(quoted).hasSizeGreaterThan(80);
    }

    private static Comparison compare(RandomCase that) {
        return new Comparer(that.catalog(), new Search(that.catalog())).compare(that.request(), Optional.empty(), List.of(Cost.PRICE), Axis.of(that.request().require()), false, Deadline.never());
    }

    /** What is made least: the price, and the figure with its sign turned where more is better. */
    private static double[] objectives(Candidate build, Axis axis) {
        return new double[] {build.price(), switch (axis) {
            case THROUGHPUT -> -build.throughput();
            case WORK -> -build.work();
            case CORES -> -build.cores();
            case BANDWIDTH -> -build.bandwidth();
            case MEMORY -> -build.usable();
            case LOAD -> build.load();
        }};
    }

    /** All that is compared: of a machine without a workload its work is its throughput. */
    private static double[] objectives(Candidate build) {
        return new double[] {build.price(), -build.work(), -build.cores(), -build.bandwidth(), -build.usable(), build.load()};
    }

    private static List<double[]> population(Collection<double[]> all) {
        List<double[]> kept = new ArrayList<>();
        moea(all).forEach(solution -> kept.add(solution.getObjectiveValues()));
        return kept;
    }

    private static NondominatedPopulation moea(Collection<double[]> all) {
        NondominatedPopulation population = new NondominatedPopulation(DuplicateMode.NO_DUPLICATE_OBJECTIVES);
        for (double[] objectives : all) {
            Solution solution = new Solution(0, objectives.length);
            solution.setObjectiveValues(objectives);
            population.add(solution);
        }
        return population;
    }

    private static void assertSameVolume(List<double[]> listed, List<double[]> found, String where) {
        if (listed.isEmpty()) {
            return;
        }
        double[] least = extreme(listed, values -> values.stream().mapToDouble(Double::doubleValue).min().orElse(0) - 1);
        double[] most = extreme(listed, values -> values.stream().mapToDouble(Double::doubleValue).max().orElse(0) + 1);
        Hypervolume volume = new Hypervolume(new Plane(), least, most);
        double whole = volume.evaluate(moea(listed));
        assertThat(whole).as(where).isPositive();
        assertThat(volume.evaluate(moea(found))).as(where).isCloseTo(whole, Offset.offset(1e-12));
    }

    private static double[] extreme(List<double[]> points, Function<List<Double>, Double> of) {
        return new double[] {of.apply(points.stream().map(point -> point[0]).toList()), of.apply(points.stream().map(point -> point[1]).toList())};
    }

    private static Set<String> words(Collection<double[]> points) {
        Set<String> words = new TreeSet<>();
        points.forEach(point -> words.add(Arrays.toString(point)));
        return words;
    }

    /** Two objectives, no variables: the framework only judges. */
    private static final class Plane extends AbstractProblem {

        Plane() {
            super(0, 2);
        }

        @Override
        public void evaluate(Solution solution) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Solution newSolution() {
            return new Solution(0, 2);
        }
    }
}
