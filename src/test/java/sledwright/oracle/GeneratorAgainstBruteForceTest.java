package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import sledwright.rules.Rule;
import sledwright.rules.Rulebook;

/**
 * The search against the list of every build: the best, its figures, and every alternative in order. More seeds by
 * {@code -Dsledwright.seeds=5000}, other ones by {@code -Dsledwright.seed=100001}.
 */
class GeneratorAgainstBruteForceTest {

    private static final int SEEDS = 1500;

    /** Also where it is cut off. */
    @Test
    void searchFindsWhatTheListOfEveryBuildHolds() {
        Disagreement.none(SEEDS, RandomCase.Size.LISTABLE, Agreement::withEveryBuildInTimeAndCutOff);
    }

    /** Lots that sell from some number up, of which more units may cost less than fewer. */
    @Test
    void searchFindsWhatTheListHoldsWhereLotsSellInPacks() {
        Disagreement.none(SEEDS / 10, seed -> Packs.in(RandomCase.of(seed, RandomCase.Size.LISTABLE)), Agreement::withEveryBuildInTimeAndCutOff);
        Disagreement.none(SEEDS / 30, seed -> Packs.in(RandomEquipment.of(seed)), Agreement::withEveryBuildInTimeAndCutOff);
    }

    @Test
    void someTwoThirdsOfTheCasesHaveABuild() {
        int cases = 400;
        long feasible = Seeds.fixed(cases).filter(seed -> !BruteForce.all(RandomCase.of(seed, RandomCase.Size.LISTABLE)).isEmpty()).count();
        assertThat((double) feasible / cases).isBetween(0.5, 0.8);
    }

    /**
     * Every rule that the listing can leave out decides the best of some case: otherwise the comparison would not notice a
     * search that forgot it. The listing keeps the rest by its very form, or has no answer without them.
     */
    @Test
    void everyRuleDecidesTheBestOfSomeCase() {
        Set<String> undecided = Stream.concat(Rulebook.ofMachine().stream(), Rulebook.ofOrder().stream()).map(Rule::id)
                .collect(Collectors.toCollection(TreeSet::new));
        undecided.removeAll(Set.of("matched-processors", "slot-needs-processor", "memory-present", "matched-sockets", "asked-platform", "in-stock"));
        // Two never decide alone: a type that the table lacks has no entry at any number of modules either, and the modules
        // of a channel can always be put in order.
        undecided.removeAll(Set.of("module-type", "rank-order"));
        Stream<RandomCase> cases = Seeds.fixed(SEEDS).boxed().flatMap(seed -> seed % 4 == 0
                ? Stream.of(RandomCase.of(seed, RandomCase.Size.LISTABLE), RandomEquipment.of(seed)) : Stream.of(RandomCase.of(seed, RandomCase.Size.LISTABLE)));
        cases.takeWhile(that -> !undecided.isEmpty()).forEach(that -> {
            Optional<Candidate> best = BruteForce.all(that).stream().min(Candidate.order(that.request()));
            undecided.removeIf(rule -> {
                Optional<Candidate> without = BruteForce.allWithout(that, Set.of(rule)).stream().min(Candidate.order(that.request()));
                return !without.map(Candidate::figures).equals(best.map(Candidate::figures));
            });
        });
        assertThat(undecided).isEmpty();
    }
}
