package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.ToLongFunction;
import org.junit.jupiter.api.Test;
import sledwright.domain.Energy;
import sledwright.generator.Axis;
import sledwright.generator.Search;
import sledwright.generator.Staircase;
import sledwright.generator.Staircases;
import sledwright.generator.time.Deadline;

/** Every staircase of small random requests against the list of every build: each step, and that none is missing. */
class StaircasesAgainstBruteForceTest {

    private static final int SEEDS = 180;
    private static final int EQUIPPED_SEEDS = 25;

    /** A build in the list with what it costs. */
    private record Listed(Candidate build, long cost) {
    }

    @Test
    void stepsOverThePriceAreThoseOfTheListOfEveryBuild() {
        AtomicInteger steps = new AtomicInteger();
        Seeds.chosen(SEEDS).forEach(seed -> {
            RandomCase that = RandomCase.of(seed, RandomCase.Size.LISTABLE);
            List<Listed> all = BruteForce.all(that).stream().map(build -> new Listed(build, build.price())).toList();
            steps.addAndGet(check(that, all, Optional.empty(), Deadline.never()));
        });
        assertThat(steps.get()).isGreaterThan(5 * (int) Seeds.chosen(SEEDS).count());
    }

    @Test
    void stepsOverPriceAndEnergyAreThoseOfTheListOfEveryBuild() {
        AtomicInteger steps = new AtomicInteger();
        Seeds.chosen(SEEDS).forEach(seed -> steps.addAndGet(checkCounting(RandomCase.of(seed, RandomCase.Size.LISTABLE))));
        assertThat(steps.get()).isGreaterThan(5 * (int) Seeds.chosen(SEEDS).count());
    }

    /** Each build with the set of these that costs least, also where another would load it less. */
    @Test
    void stepsOfMachinesWithDrivesCardsAndEnclosuresAreThoseOfTheList() {
        AtomicInteger steps = new AtomicInteger();
        Seeds.chosen(EQUIPPED_SEEDS).mapToObj(RandomEquipment::of).forEach(that -> {
            List<Listed> all = BruteForce.all(that).stream().map(build -> new Listed(build, build.price())).toList();
            steps.addAndGet(check(that, all, Optional.empty(), Deadline.never()) + checkCounting(that));
        });
        assertThat(steps.get()).isGreaterThan(5 * (int) Seeds.chosen(EQUIPPED_SEEDS).count());
    }

    private static int checkCounting(RandomCase that) {
        RandomCase counting = LeastTotalAgainstBruteForceTest.counting(that);
        List<Listed> all = BruteForce.all(counting).stream().map(build -> new Listed(build, build.price() + build.energy())).toList();
        return check(that, all, counting.request().energy(), Deadline.never());
    }

    /** Cut off at once, a staircase may lack steps, but what it calls proved must be so. */
    @Test
    void staircasesThatAreCutOffClaimNothingFalse() {
        Seeds.chosen(SEEDS).forEach(seed -> {
            RandomCase that = RandomCase.of(seed, RandomCase.Size.LISTABLE);
            List<Listed> all = BruteForce.all(that).stream().map(build -> new Listed(build, build.price())).toList();
            check(that, all, Optional.empty(), Deadline.in(Duration.ofNanos(seed % 4 == 0 ? 0 : seed * 2000)));
        });
    }

    private static int check(RandomCase that, List<Listed> all, Optional<Energy> energy, Deadline deadline) {
        Staircases search = new Search(that.catalog()).staircases(that.request());
        int steps = 0;
        for (Axis axis : Axis.of(that.request().require())) {
            Staircase found = search.of(axis, energy, deadline);
            TreeMap<Long, Long> expected = frontier(all, figure(axis));
            List<Map.Entry<Long, Long>> given = found.steps().stream().map(step -> Map.entry(step.cost(),
                    NaiveFigures.millionths(axis.lessIsBetter() ? -step.figure() : step.figure()))).toList();
            List<Map.Entry<Long, Long>> wanted = new ArrayList<>(expected.entrySet());
            String where = "%s over %s%n%s".formatted(axis, energy, that.text());
            if (found.doubts().none()) {
                assertThat(given).as(where).isEqualTo(wanted);
                assertThat(found.proved()).as(where).isEqualTo(given.size());
            } else {
                assertThat(given.subList(0, found.proved())).as(where).isEqualTo(wanted.subList(0, found.proved()));
                found.bound().ifPresent(bound -> wanted.stream().skip(found.proved()).findFirst()
                        .ifPresent(next -> assertThat(next.getKey().doubleValue()).as(where).isGreaterThanOrEqualTo(bound)));
            }
            assertThat(found.doubts().none() || mayStayOpen(that, deadline)).as("whole " + where).isTrue();
            found.steps().forEach(step -> assertThat(Agreement.soundness(step.order(), that)).as(where).isEmpty());
            steps += given.size();
        }
        return steps;
    }

    private static boolean mayStayOpen(RandomCase that, Deadline deadline) {
        return deadline.isOver() || Agreement.isTangled(that);
    }

    private static ToLongFunction<Candidate> figure(Axis axis) {
        return switch (axis) {
            case THROUGHPUT -> Candidate::throughput;
            case WORK -> Candidate::work;
            case CORES -> build -> build.cores() * 1_000_000L;
            case BANDWIDTH -> Candidate::bandwidth;
            case MEMORY -> Candidate::usable;
            case LOAD -> build -> -build.load();
        };
    }

    /** Cost -> the most of a figure, for every cost that buys more than each lesser one. */
    private static TreeMap<Long, Long> frontier(List<Listed> all, ToLongFunction<Candidate> figure) {
        TreeMap<Long, Long> most = new TreeMap<>();
        all.forEach(one -> most.merge(one.cost, figure.applyAsLong(one.build), Math::max));
        TreeMap<Long, Long> rising = new TreeMap<>();
        most.forEach((cost, reached) -> {
            if (rising.isEmpty() || reached > rising.lastEntry().getValue()) {
                rising.put(cost, reached);
            }
        });
        return rising;
    }
}
