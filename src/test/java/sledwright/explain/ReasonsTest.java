package sledwright.explain;

import static org.assertj.core.api.Assertions.assertThat;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.Set;
import java.util.OptionalInt;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.samples.FitoutSketch;
import sledwright.samples.Equipped;
import sledwright.domain.VolumeWish;
import sledwright.domain.RaidLevel;
import sledwright.domain.Expansion;
import sledwright.domain.Equipment;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.DriveSupport;
import sledwright.domain.DriveInterface;
import sledwright.domain.CardSlot;
import sledwright.domain.CardShape;
import sledwright.domain.CardKind;
import sledwright.domain.CardHeight;
import sledwright.domain.Card;
import sledwright.domain.MemoryModule;
import sledwright.domain.Request;
import sledwright.planner.Judge;
import sledwright.rules.Order;
import sledwright.samples.Answers;
import sledwright.samples.Samples;
import sledwright.words.Sentence;

class ReasonsTest {

    private static final Judge JUDGE = new Judge();

    private static List<String> reasons(Request request, Build... machines) {
        return told(Order.of(List.of(machines), List.of(), request, Answers.SHOP));
    }

    private static List<String> told(Order order) {
        return Reasons.of(JUDGE.judge(order)).stream().map(Sentence::toString).toList();
    }

    @Test
    void theSpeedIsTheProcessors() {
        Build build = Samples.machine().processors(2, Samples.processor("SLOW").memoryMts(2133).make()).channels(4, Samples.R16).build();
        assertThat(reasons(Request.named("any"), build))
                .contains("The memory runs at 2133 MT/s: SLOW drives no faster memory; the modules are rated for 2400.");
    }

    @Test
    void theSpeedIsTheModules() {
        MemoryModule slow = Samples.module("R16S", 16).mts(2133).make();
        assertThat(reasons(Request.named("any"), Samples.machine().channels(3, Samples.R16).channel(0, 3, slow).build()))
                .contains("The memory runs at 2133 MT/s: R16S is rated for no more; P10 would drive 2400.");
    }

    @Test
    void theSpeedIsThePlatforms() {
        assertThat(reasons(Request.named("any"), Samples.machine().channels(4, Samples.R16, Samples.R16, Samples.R16).build()))
                .contains("The memory runs at 1866 MT/s: BOX gives no more with 3 RDIMMs of 2 ranks on a channel; "
                        + "P10 would drive 2400.");
    }

    /** The heavier machine holds the faster modules, so it is not the one to speak for the speed. */
    @Test
    void theSpeedIsTheSlowestMachines() {
        Build heavy = Samples.machine().channels(4, Samples.module("R16H", 16).powerW(6).make()).build();
        Build slow = Samples.machine().channels(4, Samples.module("R16S", 16).mts(2133).make()).build();
        assertThat(reasons(Request.named("any").withMachines(2), heavy, slow))
                .contains("The memory runs at 2133 MT/s: R16S is rated for no more; P10 would drive 2400.");
    }

    @Test
    void aHeatSinkThatTakesSlotsIsTold() {
        assertThat(reasons(Request.named("any"), Answers.hot())).contains("Heat sink DEEP covers slots 1D3 and 2D3, which stay empty; "
                + "LOW covers fewer, but carries 105 W and P12 gives 120 W.");
        assertThat(reasons(Request.named("any"), Answers.cool())).noneMatch(reason -> reason.contains("covers"));
    }

    @Test
    void whatTheHeatSinksCostIsTold() {
        assertThat(told(Answers.order(Request.named("any"), Answers.hot()))).anyMatch(reason ->
                reason.startsWith("Heat sink DEEP (2 for 30.00 EUR) covers slots 1D3 and 2D3, which stay empty;"));
    }

    @Test
    void anExtraPriceIsSharedOverAllMachines() {
        Request two = Request.named("any").withMachines(2);
        Build one = Samples.machine(Answers.BOX).processors(1, Answers.COOL).cooling(Samples.LOW).channels(4, Answers.R16B).build();
        Order more = Answers.order(two, Answers.cool(), Answers.coolHeavier());
        Order less = Answers.order(two, one, one);
        // 10 cores more in each of two machines.
        long each = Math.round((more.price().total() - less.price().total()) / 20.0);
        assertThat(each).isPositive();
        assertThat(difference(more, less).toString()).contains("10 more cores (20; %s a core)".formatted(more.words(each)));
    }

    @Test
    void onlyFittedSocketsLoseSlots() {
        Build one = Samples.machine(Answers.BOX).processors(1, Answers.HOT).cooling(Answers.DEEP).channels(4, Samples.R16).build();
        assertThat(reasons(Request.named("any"), one)).anyMatch(reason -> reason.startsWith("Heat sink DEEP covers slot 1D3, which stays empty;"));
    }

    @Test
    void tightRequirementsAreNamedWithTheirDistance() {
        Request exact = Request.named("any").withRequire(Samples.require().cores(20).memoryGb(100).bandwidthGbs(150).make());
        assertThat(reasons(exact, Answers.cool())).contains("Met exactly, with nothing to spare: number of cores (20).",
                "The next tightest requirement is memory bandwidth: 153.6 GB/s against 150 GB/s asked, 3.6 GB/s to spare (2.4 %).");
        Request loose = Request.named("any").withRequire(Samples.require().spareSlots(8).gbPerCore(4).make());
        assertThat(reasons(loose, Answers.cool())).contains(
                "The tightest requirement is usable memory per core: 6.4 GB against 4 GB asked, 2.4 GB to spare (60 %).");
    }

    @Test
    void theTightestLimitIsNamedWithItsDistance() {
        Request loads = Request.named("any").withLimit(Samples.limit().powerW(300).price(10_000_000).make());
        assertThat(reasons(loads, Answers.cool())).contains("The tightest limit is the load: 287 W of 300 W, 13 W to spare.");
        Request hot = Request.named("any").withLimit(Samples.limit().site(33, 1250).make());
        assertThat(reasons(hot, Answers.cool()))
                .contains("The tightest limit is the inlet air (corrected for altitude): 34 C of 35 C, 1 C to spare.");
        Build single = Samples.machine(Answers.BOX).cooling(Samples.LOW).channels(4, Samples.R16)
                .supply(Samples.supply("ONE", 1, 0, 300, 300, Map.of())).build();
        assertThat(reasons(Request.named("any"), single)).contains("The tightest limit is the load on the supplies: 287 W of 300 W, 13 W to spare.");
        Build pair = Samples.machine(Answers.BOX).cooling(Samples.LOW).channels(4, Samples.R16)
                .supply(Samples.supply("TWO", 2, 1, 300, 300, Map.of())).build();
        assertThat(reasons(Request.named("any"), pair))
                .contains("The tightest limit is the load on the supplies with 1 failed: 287 W of 300 W, 13 W to spare.");
        Build ranks = Samples.machine().channels(4, Samples.Q32, Samples.Q32).build();
        assertThat(reasons(Request.named("any"), ranks)).contains("The tightest limit is used up: number of ranks on a channel 8 of 8.");
    }

    @Test
    void theBudgetAndTheLeadTimeAreLimits() {
        Request dear = Request.named("any").withLimit(Samples.limit().price(60000).make());
        assertThat(told(Answers.order(dear, Answers.cool())))
                .contains("The tightest limit is the price: 594.00 EUR of 600.00 EUR, 6.00 EUR to spare.", "The last to arrive is R16, in 2 days.");
        Request soon = Request.named("any").withLimit(Samples.limit().leadDays(2).make());
        assertThat(told(Answers.order(soon, Answers.cool()))).contains("The tightest limit is used up: lead time 2 days of 2 days.");
    }

    @Test
    void thereAreAFewSentences() {
        for (Build build : List.of(Answers.cool(), Answers.hot(), Answers.sled())) {
            assertThat(Reasons.of(JUDGE.judge(Answers.order(Answers.ASKED, build)))).hasSizeBetween(5, 10);
        }
    }

    @Test
    void anAlternativeTellsWhatItBuys() {
        Request any = Request.named("any");
        assertThat(difference(Answers.order(any, Answers.hot()), Answers.order(any, Answers.cool())))
                .hasToString("For 258.00 EUR more than the best: 4 more cores (24; 64.50 EUR a core), 128 GB more usable memory "
                        + "(256; 2.02 EUR a GB) and 99.2 more throughput (499.2), but 104 W more load (391).");
        assertThat(difference(Answers.order(any, Answers.sled()), Answers.order(any, Answers.cool())))
                .hasToString("For 152.00 EUR less than the best: 101 W less load (186), but 10 fewer cores (10), 76.8 GB/s less memory "
                        + "bandwidth (76.8) and 200 less throughput (200).");
        assertThat(difference(Answers.order(any, Answers.cool()), Answers.order(any, Answers.cool())))
                .hasToString("At the price of the best: the same figures.");
        assertThat(difference(Answers.order(any, Answers.coolHeavier()), Answers.order(any, Answers.cool())))
                .hasToString("For 8.00 EUR more than the best: nothing more, but 4 W more load (291).");
    }

    @Test
    void severalMachinesAreComparedByTheHeaviest() {
        Request three = Request.named("any").withMachines(2);
        assertThat(difference(Answers.order(three, Answers.cool(), Answers.coolHeavier()),
                Answers.order(three, Answers.coolHeavier(), Answers.coolHeavier())))
                .hasToString("For 8.00 EUR less than the best: the same figures in each machine.");
    }

    private static List<String> equipped(Expansion from, Consumer<FitoutSketch> fitout) {
        return reasons(Request.named("any"), Samples.machine(Samples.platform().expansion(from).make()).channels(4, Samples.R16).with(fitout).build());
    }

    private static Expansion board(Optional<DriveSupport> onboard, CardSlot... slots) {
        return new Expansion(Equipped.EXPANSION.bays(), onboard, List.of(slots), Equipped.EXPANSION.needs());
    }

    private static CardSlot slot(String name, Optional<String> riser) {
        return new CardSlot(name, new CardShape(3, 16, CardHeight.FULL, 312, 75), OptionalInt.empty(), riser);
    }

    @Test
    void aControllerIsThereForWhatTheBoardDoesNotDo() {
        assertThat(equipped(Equipped.EXPANSION, fitout -> fitout.volume("data", RaidLevel.LEVEL_6, "front", 5, Equipped.SSD, 1)
                .card("X1", Equipped.CONTROLLER).driver("X1")))
                .contains("The SATA drives need controller CTL-8 in slot X1. The board knows no level 6. The board has 4 ports for 6 drives.");
        assertThat(equipped(board(Optional.empty(), slot("X1", Optional.empty())), fitout -> fitout.volume("data", RaidLevel.LEVEL_1, "front", 2, Equipped.SAS, 0)
                .volume("system", RaidLevel.LEVEL_1, "front", 2, Equipped.SSD, 0).card("X1", Equipped.CONTROLLER).driver("X1")))
                .contains("The SATA and SAS drives need controller CTL-8 in slot X1. BOX drives no SATA and no SAS drives by itself.");
    }

    /** What the board or another controller could do is no reason. */
    @Test
    void aControllerThatSomethingElseCouldReplaceIsNotCalledNeeded() {
        assertThat(equipped(Equipped.EXPANSION, fitout -> fitout.volume("data", RaidLevel.LEVEL_1, "front", 2, Equipped.SSD, 0)
                .card("X1", Equipped.CONTROLLER).driver("X1"))).noneMatch(reason -> reason.contains("need controller"));
        Card small = new Card("CTL-4", "CTL-4", CardKind.CONTROLLER, Equipped.CONTROLLER.shape(), 0, 0, Optional.of(new DriveSupport(Set.of(DriveInterface.SATA), 4,
                Set.of(RaidLevel.LEVEL_5))));
        Expansion two = board(Optional.empty(), slot("X1", Optional.empty()), slot("X2", Optional.empty()));
        assertThat(equipped(two, fitout -> fitout.volume("data", RaidLevel.LEVEL_5, "front", 4, Equipped.SSD, 0).card("X1", Equipped.CONTROLLER)
                .card("X2", small).driver("X1"))).noneMatch(reason -> reason.contains("need controller"));
        assertThat(equipped(two, fitout -> fitout.volume("data", RaidLevel.LEVEL_5, "front", 5, Equipped.SSD, 0).card("X1", Equipped.CONTROLLER)
                .card("X2", small).driver("X1"))).contains("The SATA drives need controller CTL-8 in slot X1. BOX drives no SATA and no SAS drives by itself. "
                + "CTL-4 has 4 ports for 5 drives.");
    }

    @Test
    void aRiserIsThereForTheCardThatFindsNoOtherSlot() {
        Expansion two = board(Optional.empty(), slot("X1", Optional.empty()), slot("X2", Optional.of("RISER-2")));
        assertThat(equipped(two, fitout -> fitout.card("X1", Equipped.NET).card("X2", Equipped.FAST_NET).extra(Equipped.RISER, 1)))
                .contains("Riser RISER-2 is needed for NET-2X25 in slot X2: the slots without it do not take all cards.");
        assertThat(equipped(two, fitout -> fitout.card("X2", Equipped.FAST_NET).extra(Equipped.RISER, 1)))
                .contains("Riser RISER-2 is bought for NET-2X25 in slot X2.");
    }

    @Test
    void whatSocketsCallForIsTold() {
        assertThat(equipped(Equipped.EXPANSION, fitout -> fitout.extra(Equipped.FANS, 1))).contains("With 2 processors, BOX calls for 1 x FANS-2.");
        assertThat(reasons(Request.named("any"), Equipped.machineOfOne().build())).contains("With 1 processor, BOX calls for 1 x BLANK.");
    }

    @Test
    void volumesAreAmongTheTightRequirements() {
        Request request = Request.named("any").withEquipment(new Equipment(List.of(new VolumeWish("data", 960, RaidLevel.LEVEL_5, Optional.empty(), Optional.empty(), 0),
                new VolumeWish("system", 300, RaidLevel.LEVEL_1, Optional.empty(), Optional.empty(), 0)), List.of(), Map.of(), EnclosureFrom.OWN));
        Build build = Equipped.machine().with(fitout -> fitout.volume("data", RaidLevel.LEVEL_5, "front", 3, Equipped.SSD, 0)
                .volume("system", RaidLevel.LEVEL_1, "front", 2, Equipped.SSD, 0)).build();
        assertThat(reasons(request, build)).contains("Met exactly, with nothing to spare: volume data (960 GB).",
                "The next tightest requirement is volume system: 480 GB against 300 GB asked, 180 GB to spare (60 %).");
    }

    private static Sentence difference(Order alternative, Order best) {
        return Difference.sentence(alternative, best, alternative.price().total() - best.price().total(), "the best");
    }
}
