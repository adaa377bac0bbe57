package sledwright.planner;

import static java.util.Comparator.comparing;
import static java.util.Comparator.comparingDouble;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static sledwright.samples.Samples.lot;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.module;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.api.Test;
import sledwright.domain.MemoryModule;
import sledwright.domain.Objective;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Worth;
import sledwright.metrics.Figures;
import sledwright.rules.Order;

/** The levels of a score, against the order of the objectives written out by hand. */
class CriterionTest {

    private static final int ROUNDS = 40;

    private final Judge judge = new Judge();

    @Test
    void everyCriterionHasALevel() {
        assertThat(Criterion.values()).hasSize(Score.SOFT_LEVELS);
    }

    @ParameterizedTest
    @EnumSource
    void scoresRankAsTheObjectiveDoes(Objective objective) {
        Set<Integer> deepest = new HashSet<>();
        for (long seed = 0; seed < ROUNDS; seed++) {
            RandomOrders random = new RandomOrders(seed);
            Request request = random.request().withObjective(objective);
            List<Candidate> candidates = random.answers(request, 20).stream().map(Candidate::new).toList();
            List<Comparator<Candidate>> order = order(request);
            for (Candidate one : candidates) {
                for (Candidate other : candidates) {
                    int decided = 0;
                    int expected = 0;
                    while (expected == 0 && decided < order.size()) {
                        expected = order.get(decided++).compare(one, other);
                    }
                    deepest.add(expected == 0 ? 0 : decided);
                    assertThat(Integer.signum(points(one, other))).as("seed %d", seed).isEqualTo(-Integer.signum(expected));
                }
            }
        }
        assertThat(deepest).as("levels that decided").contains(1).hasSizeGreaterThan(3);
    }

    @Test
    void theScoreHoldsThePointsOfEachCriterion() {
        for (long seed = 0; seed < ROUNDS; seed++) {
            Candidate candidate = new Candidate(new RandomOrders(seed).any());
            long[] levels = judge.judgeEach(List.of(candidate.order())).get(0).score().getSoftScores();
            for (Criterion criterion : Criterion.values()) {
                assertThat(levels[criterion.ordinal()]).as("%s, seed %d", criterion, seed).isEqualTo(criterion.points(candidate));
            }
        }
    }

    /** The heavier machine may hold the faster modules; what the order reaches is the least of each. */
    @Test
    void figuresAreThoseThatEachMachineReaches() {
        MemoryModule fast = module("FAST", 16).powerW(6).make();
        MemoryModule slow = module("SLOW", 16).mts(2133).make();
        Request request = Request.named("two").withMachines(2).withObjective(Objective.MOST_BANDWIDTH);
        Order order = Order.of(List.of(machine(Shop.BOX).channels(4, fast).build(), machine(Shop.BOX).channels(4, slow).build()),
                List.of(), request, Shop.CATALOG);
        Candidate candidate = new Candidate(order);

        assertThat(candidate.heaviest().build().modules()).containsValue(fast);
        assertThat(candidate.figures().bandwidthGbs()).isEqualTo(8 * 2133 * 8 / 1000.0);
        assertThat(candidate.figures().loadW()).isEqualTo(85 + 2 * 85 + 8 * 6);
        assertThat(order.figures()).isEqualTo(candidate.figures());
        assertThat(Criterion.OBJECTIVE.points(candidate)).isEqualTo(2 * 136_512_000L);
    }

    @Test
    void pointsBeyondAllCountAreAnErrorNotAnOverflow() {
        Request request = Request.named("one").withObjective(Objective.BEST_VALUE);
        Candidate dear = new Candidate(Shop.order(request, new Pick(lot("R16", "GOLD", 8, 2_000_000_000_000L), 8)));

        assertThatThrownBy(() -> Criterion.OBJECTIVE.points(dear)).isInstanceOf(ArithmeticException.class);
        assertThat(Criterion.LOAD.points(dear)).isEqualTo(-287_000_000);
    }

    private static int points(Candidate one, Candidate other) {
        for (Criterion criterion : Criterion.values()) {
            int compared = Long.compare(criterion.points(one), criterion.points(other));
            if (compared != 0) {
                return compared;
            }
        }
        return 0;
    }

    /** The better first. */
    private static List<Comparator<Candidate>> order(Request request) {
        Comparator<Candidate> price = comparing(candidate -> candidate.order().price().total());
        Comparator<Candidate> throughput = most(Figures::throughput);
        Comparator<Candidate> work = most(Figures::work);
        Comparator<Candidate> bandwidth = most(Figures::bandwidthGbs);
        Comparator<Candidate> usable = most(Figures::usableGb);
        List<Comparator<Candidate>> ties = List.of(work, bandwidth, usable, most(Figures::loadW).reversed(), most(Figures::cores));
        List<Comparator<Candidate>> first = switch (request.objective()) {
            case CHEAPEST -> List.of(price);
            // Of random orders nobody says what electricity costs.
            case LEAST_TOTAL -> List.of(price);
            case MOST_THROUGHPUT -> List.of(throughput, price);
            case MOST_BANDWIDTH -> List.of(bandwidth, price);
            case MOST_MEMORY -> List.of(usable, price);
            case MOST_WORK -> List.of(work, price);
            case MOST_CORES -> List.of(most(Figures::cores), price);
            case BEST_VALUE -> List.of(comparing(candidate -> priceLessWorth(candidate, request)));
        };
        return Stream.concat(first.stream(), ties.stream()).toList();
    }

    private static Comparator<Candidate> most(ToDoubleFunction<Figures> figure) {
        return comparingDouble((Candidate candidate) -> figure.applyAsDouble(candidate.figures())).reversed();
    }

    private static BigDecimal priceLessWorth(Candidate candidate, Request request) {
        Requirements least = request.require();
        Worth worth = request.worth();
        Figures figures = candidate.figures();
        BigDecimal ofOne = worth(figures.cores(), least.cores(), worth.core())
                .add(worth(figures.usableGb(), least.memoryGb(), worth.gb()))
                .add(worth(figures.bandwidthGbs(), least.bandwidthGbs(), worth.gbs()))
                .add(worth(figures.throughput(), least.throughput(), worth.throughput()))
                .add(worth(figures.work(), least.work().least(), worth.work()));
        return BigDecimal.valueOf(candidate.order().price().total()).subtract(ofOne.multiply(BigDecimal.valueOf(request.machines())));
    }

    private static BigDecimal worth(double reached, double least, double ofOne) {
        return BigDecimal.valueOf(reached).subtract(BigDecimal.valueOf(least)).multiply(BigDecimal.valueOf(ofOne));
    }
}
