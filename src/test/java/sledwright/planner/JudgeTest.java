package sledwright.planner;

import static org.assertj.core.api.Assertions.assertThat;
import static sledwright.planner.Shop.MACHINE;
import static sledwright.samples.Samples.R16;
import static sledwright.samples.Samples.lot;
import static sledwright.samples.Samples.machine;
import static sledwright.samples.Samples.require;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.Energy;
import sledwright.domain.Goal;
import sledwright.domain.Licence;
import sledwright.domain.Objective;
import sledwright.domain.PartChoice;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.domain.Shortlist;
import sledwright.domain.Worth;
import sledwright.rules.Machine;
import sledwright.rules.Order;
import sledwright.rules.Rule;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;
import sledwright.words.Sentence;

class JudgeTest {

    private static final int RANDOM_ORDERS = 400;

    private final Judge judge = new Judge();

    @Test
    void findsUnderEachIdentifierWhatTheRulebookFinds() {
        Set<String> found = new TreeSet<>();
        for (long seed = 0; seed < RANDOM_ORDERS; seed++) {
            Order order = new RandomOrders(seed).any();

            Judged judged = judge.judge(order);

            assertThat(judged.broken()).as("seed %d", seed).containsExactlyInAnyOrderElementsOf(brokenByTheRulebook(order));
            assertThat(judged.score()).as("seed %d", seed).startsWith("[" + -judged.broken().size() + "]hard");
            judged.broken().forEach(violation -> found.add(violation.rule()));
        }
        assertThat(found).as("rules that the random orders broke").isEqualTo(identifiers());
    }

    @Test
    void breachesStandInTheOrderOfTheRulebook() {
        List<String> order = Rulebook.all().stream().<String>map(Rule::id).toList();
        for (long seed = 0; seed < 20; seed++) {
            List<Integer> places = judge.judge(new RandomOrders(seed).any()).broken().stream()
                    .map(violation -> order.indexOf(violation.rule())).toList();
            assertThat(places).as("seed %d", seed).isSorted();
        }
    }

    @Test
    void machinesAlikeInEveryPartAreJudgedAsOne() {
        Request request = Request.named("many").withMachines(3).withRequire(require().cores(30).make());
        Build same = new Build(MACHINE.platform(), MACHINE.processors(), MACHINE.cooling(), MACHINE.supply(), MACHINE.modules());
        Order shop = Shop.order(request, new Pick(lot("R16", "A", 24, 2_000), 24));
        Order order = Order.of(List.of(MACHINE, MACHINE, same), shop.picks(), request, shop.catalog());

        assertThat(judge.judge(order).broken()).extracting(Violation::rule).containsExactly("cores");
    }

    @Test
    void everyUnlikeMachineIsJudged() {
        Request request = Request.named("two").withMachines(2);
        Build without = machine(Shop.BOX).channels(4, R16).without("1B1").build();
        Order shop = Shop.order(request, new Pick(lot("R16", "A", 16, 2_000), 15));
        Order order = Order.of(List.of(MACHINE, without), shop.picks(), request, shop.catalog());

        assertThat(judge.judge(order).broken()).extracting(Violation::rule).contains("channel-order");
    }

    /** 100 + 2 x 50 + 2 x 10 + 2 x 20 + 8 x 20 = 420.00; 2 x 4 channels at 19.2 GB/s; 85 + 2 x 85 + 8 x 4 W. */
    @Test
    void saysWhatABuildCostsAndGives() {
        Judged judged = judge.judge(Shop.order(Request.named("one"), new Pick(lot("R16", "A", 8, 2_000), 8)));

        assertThat(judged.valid()).isTrue();
        assertThat(judged.score()).isEqualTo("[0]hard/[-42000/-42000/400000000/153600000/128000000/-287000000/20000000]soft");
        assertThat(judged.trades()).containsExactly(
                new Trade(Criterion.OBJECTIVE, 42_000, Sentence.plain("What counts first is the price, the least.")),
                new Trade(Criterion.PRICE, 42_000, Sentence.plain("The machine costs 420.00 EUR, 1.05 EUR for each unit of throughput.")),
                new Trade(Criterion.THROUGHPUT, 400, Sentence.plain("The throughput is 400.")),
                new Trade(Criterion.BANDWIDTH, 153.6, Sentence.plain("The memory bandwidth is 153.6 GB/s; the price comes to 2.73 EUR for each GB/s.")),
                new Trade(Criterion.USABLE_MEMORY, 128, Sentence.plain("The usable memory is 128 GB; the price comes to 3.28 EUR for each GB.")),
                new Trade(Criterion.LOAD, 287, Sentence.plain("The load of the machine is 287 W.")),
                new Trade(Criterion.CORES, 20, Sentence.plain("The number of cores is 20; the price comes to 21.00 EUR for each core.")));
    }

    @Test
    void saysWhatCountsFirstWhereThePriceDoesNot() {
        Judged judged = judge.judge(Shop.order(Request.named("one").withObjective(Objective.MOST_MEMORY), new Pick(lot("R16", "A", 8, 2_000), 8)));

        assertThat(judged.trades().get(0)).isEqualTo(new Trade(Criterion.OBJECTIVE, 128, Sentence.plain("What counts first is the usable memory, the most.")));
    }

    /** 287 W all year round for two years at 20 a kWh, and what the supply itself takes. */
    @Test
    void saysWhatPriceAndEnergyComeTo() {
        Request request = Request.named("one").withObjective(Objective.LEAST_TOTAL).withEnergy(Optional.of(new Energy(2, 20, 1)));
        Order order = Shop.order(request, new Pick(lot("R16", "A", 8, 2_000), 8));

        Trade first = judge.judge(order).trades().get(0);
        assertThat(first.amount()).isEqualTo(42_000 + order.energy());
        assertThat(order.energy()).isGreaterThanOrEqualTo(Math.round(0.287 * 24 * 365.25 * 2 * 20));
        assertThat(first.sentence()).hasToString("What counts first is the price and the energy, the least: 420.00 EUR and %s come to %s."
                .formatted(order.words(order.energy()), order.words(42_000 + order.energy())));
    }

    /** Worth of one machine: 4 cores x 5.00, 28 GB x 0.10, 53.6 GB/s x 0.25, 100 units x 0.50 = 86.20; two cost 840.00. */
    @Test
    void saysWhatIsWorthMoreThanItsPrice() {
        Request plain = Request.named("two");
        Request request = new Request(plain.name(), 2, require().cores(16).memoryGb(100).bandwidthGbs(100).throughput(300).make(), plain.limit(),
                new Goal(Objective.BEST_VALUE, new Worth(500, 10, 25, 50), Licence.NONE), Shortlist.PLAIN, PartChoice.ANY);

        Judged judged = judge.judge(Shop.order(request, new Pick(lot("R16", "A", 16, 2_000), 16)));

        assertThat(judged.score()).startsWith("[0]hard/[-66760000000/0/800000000/307200000/");
        assertThat(judged.trades()).extracting(trade -> trade.sentence().toString()).containsExactly(
                "What counts first is the price less worth, the least: 840.00 EUR less 172.40 EUR is 667.60 EUR.",
                "The 2 machines cost 840.00 EUR, 1.05 EUR for each unit of throughput.",
                "The throughput of a machine is 400; 100 beyond the request are worth 100.00 EUR over all machines.",
                "The memory bandwidth of a machine is 153.6 GB/s; the price comes to 2.73 EUR for each GB/s;"
                        + " 53.6 GB/s beyond the request are worth 26.80 EUR over all machines.",
                "The usable memory of a machine is 128 GB; the price comes to 3.28 EUR for each GB;"
                        + " 28 GB beyond the request are worth 5.60 EUR over all machines.",
                "The load of the heaviest machine is 287 W.",
                "The number of cores of a machine is 20; the price comes to 21.00 EUR for each core;"
                        + " 4 beyond the request are worth 40.00 EUR over all machines.");
    }

    private static List<Violation> brokenByTheRulebook(Order order) {
        List<Violation> broken = new ArrayList<>(order.machines().stream().distinct()
                .map(build -> Machine.of(build, order.request(), order.catalog().throughputFactors()))
                .flatMap(machine -> Rulebook.judge(machine).stream()).distinct().toList());
        order.housings().stream().flatMap(housing -> Rulebook.judge(housing).stream()).distinct().forEach(broken::add);
        broken.addAll(Rulebook.judge(order));
        return broken;
    }

    private static Set<String> identifiers() {
        Set<String> identifiers = new TreeSet<>();
        Rulebook.ofMachine().forEach(rule -> identifiers.add(rule.id()));
        Rulebook.ofEnclosure().forEach(rule -> identifiers.add(rule.id()));
        Rulebook.ofOrder().forEach(rule -> identifiers.add(rule.id()));
        return identifiers;
    }
}
