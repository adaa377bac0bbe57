package sledwright.generator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import sledwright.domain.Energy;
import sledwright.domain.Limits;
import sledwright.domain.MemoryModule;
import sledwright.domain.ModuleType;
import sledwright.domain.Objective;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Supply;
import sledwright.generator.Doubts.Cause;
import sledwright.generator.memory.Level;
import sledwright.generator.memory.MemoryOption;
import sledwright.generator.memory.MemoryPoint;
import sledwright.generator.memory.MemoryPoints;
import sledwright.generator.memory.MemoryNeed;
import sledwright.generator.memory.PriceFloor;
import sledwright.generator.time.Deadline;
import sledwright.generator.time.OutOfTimeException;
import sledwright.generator.time.TooLargeException;
import sledwright.metrics.Bandwidth;
import sledwright.metrics.Figures;
import sledwright.metrics.Quantity;
import sledwright.rules.Parts;
import sledwright.samples.Samples;

/** The best build of a zone from frames and memory that are put together by hand. */
class QueryTest {

    private static final MemoryModule M16 = Samples.module("M16", 16).powerW(4).make();
    private static final Platform BOX = Samples.platform().make();
    private static final double CHANNEL_GBS = Bandwidth.ofChannelGbs(2400);
    /** One, two and four channels of 16 GB at 20 each: 32 GB are left out on one channel, which nobody wants. */
    private static final MemoryPoint ONE = Pieces.point(20, 16, 16, 16, 1, 4, 0);
    private static final MemoryPoint TWO = Pieces.point(40, 32, 16, 32, 2, 8, 0);
    private static final MemoryPoint FOUR = Pieces.point(80, 64, 16, 64, 4, 16, 0);
    private static final Request PLAIN = Request.named("query");

    private final List<MemoryOption> asked = new ArrayList<>();

    private static Frame frame(Platform platform, Optional<Supply> supply, int cores, long price, double throughput, double loadW) {
        Processor processor = Samples.processor("C" + cores).cores(cores).throughput(throughput).make();
        Parts parts = Parts.of(platform).with(processor, 1).with(Samples.LOW).with(supply);
        return Pieces.frame(parts, Set.of(ModuleType.RDIMM), new Computing(cores, throughput, throughput, 0), price, 0, loadW);
    }

    private static Frame frame() {
        return frame(BOX, Optional.empty(), 10, 1000, 200, 100);
    }

    private MemoryOption option(ModuleType type, int nextSlowerMts, boolean keptApart, long unitPrice, IntFunction<MemoryPoints> builder) {
        return option(new MemoryOption.Extent(1, 1, 12, 4, 16, 1, 0), type, nextSlowerMts, keptApart, unitPrice, builder);
    }

    private MemoryOption option(MemoryOption.Extent extent, ModuleType type, int nextSlowerMts, boolean keptApart, long unitPrice,
                                IntFunction<MemoryPoints> builder) {
        Level level = new Level(type, 0, 2400, Map.of(Pieces.group(16), List.of(M16)), List.of());
        PriceFloor prices = new PriceFloor(Pieces.shelf(PLAIN, List.of(M16), Pieces.lot(M16, 12, unitPrice)), List.of(M16), 0);
        MemoryOption[] made = new MemoryOption[1];
        made[0] = new MemoryOption(level, nextSlowerMts, keptApart, extent, prices, () -> prices, (need, deadline) -> {
            asked.add(made[0]);
            return (most, window) -> builder.apply(most);
        });
        return made[0];
    }

    private MemoryOption option(MemoryPoint... points) {
        return option(ModuleType.RDIMM, 0, false, 20, most -> new MemoryPoints(List.of(points), 1));
    }

    private static Query.Answer best(Request request, Zone zone, Deadline deadline, List<Frame> frames, MemoryOption... options) {
        Ranking ranking = new Ranking(request);
        List<Frame> sorted = frames.stream().sorted(ranking.promisingFirst()).toList();
        return new Query(request, FamilyChoice.of(List.of(new Family(sorted, List.of(options), MemoryNeed.of(request, false)))), ranking, deadline).best(zone);
    }

    private static Query.Answer best(Request request, Zone zone, Frame frame, MemoryOption... options) {
        return best(request, zone, Deadline.never(), List.of(frame), options);
    }

    private static Request asking(Requirements require) {
        return PLAIN.withRequire(require);
    }

    private static Request limited(Limits limit) {
        return PLAIN.withLimit(limit);
    }

    private MemoryPoint point(Request request, Zone zone) {
        Query.Answer answer = best(request, zone, frame(), option(ONE, TWO, FOUR));
        assertThat(answer.isFirst()).isTrue();
        return answer.best() == null ? null : answer.best().point();
    }

    @Test
    void theCheapestThatReachesEachTarget() {
        assertThat(point(PLAIN, Zone.EVERYTHING)).isSameAs(ONE);
        assertThat(point(asking(Samples.require().bandwidthGbs(2 * CHANNEL_GBS).make()), Zone.EVERYTHING)).isSameAs(TWO);
        assertThat(point(asking(Samples.require().bandwidthGbs(2 * CHANNEL_GBS + 0.001).make()), Zone.EVERYTHING)).isSameAs(FOUR);
        assertThat(point(asking(Samples.require().memoryGb(32).make()), Zone.EVERYTHING)).isSameAs(TWO);
        assertThat(point(asking(Samples.require().gbPerCore(3.2).make()), Zone.EVERYTHING)).isSameAs(TWO);
        assertThat(point(asking(Samples.require().gbPerCore(3.20001).make()), Zone.EVERYTHING)).isSameAs(FOUR);
        assertThat(point(asking(Samples.require().gbsPerCore(2 * CHANNEL_GBS / 10).make()), Zone.EVERYTHING)).isSameAs(TWO);
        assertThat(point(asking(Samples.require().gbsPerCore(2 * CHANNEL_GBS / 10 + 0.00001).make()), Zone.EVERYTHING)).isSameAs(FOUR);
        assertThat(point(asking(Samples.require().gbPerCore(6.5).make()), Zone.EVERYTHING)).isNull();
    }

    /** Targets that the bounds let through by a hair are still kept: they compare to a millionth. */
    @Test
    void targetsAreKeptToAMillionth() {
        assertThat(point(asking(Samples.require().gbPerCore(3.2 + 0.9e-6).make()), Zone.EVERYTHING)).isSameAs(FOUR);
        assertThat(point(asking(Samples.require().gbsPerCore(2 * CHANNEL_GBS / 10 + 0.9e-6).make()), Zone.EVERYTHING)).isSameAs(FOUR);
        assertThat(point(asking(Samples.require().bandwidthGbs(2 * CHANNEL_GBS + 0.9e-6).make()), Zone.EVERYTHING)).isSameAs(FOUR);
    }

    /** 16 GB for 1200 cores are 0.0133... GB each, 0.013333 to a millionth; 0.0133 and a half millionth more is still reached, by rounding. */
    @Test
    void whatIsAskedForEachOfManyCoresIsKeptToAMillionthOfEach() {
        Frame many = frame(BOX, Optional.empty(), 1200, 1000, 200, 100);
        for (int gb : new int[] {16, 32, 64}) {
            double perCore = Figures.perCore(gb, 1200);
            Query.Answer memory = best(asking(Samples.require().gbPerCore(perCore).make()), Zone.EVERYTHING, many, option(ONE, TWO, FOUR));
            assertThat(memory.best().usableGb()).isEqualTo(gb);
            Query.Answer bandwidth = best(asking(Samples.require().gbsPerCore(Figures.perCore(gb / 16 * CHANNEL_GBS, 1200)).make()), Zone.EVERYTHING, many,
                    option(ONE, TWO, FOUR));
            assertThat(bandwidth.best().bandwidthGbs()).isEqualTo(gb / 16 * CHANNEL_GBS, within(1e-9));
        }
    }

    /** A third of 32 GB is rounded up to a millionth, and 32 GB still cost what they cost: the limit is exactly that. */
    @Test
    void aShareThatIsRoundedUpCostsNoMore() {
        long unitPrice = 1_000_000_000;
        MemoryPoint third = Pieces.point(2 * unitPrice, 32, 16, Quantity.rounded(32 / 3.0), 2, 8, 0);
        MemoryOption option = option(new MemoryOption.Extent(1, 1, 12, 4, 16, 1 / 3.0, 0), ModuleType.RDIMM, 0, false, unitPrice,
                most -> new MemoryPoints(List.of(third), 1));
        Request exactly = limited(Samples.limit().price(1000 + 2 * unitPrice).make());
        assertThat(best(exactly, new Zone(0, 0, 0, third.usableGb(), 999), frame(), option).best().point()).isSameAs(third);
    }

    @Test
    void theEdgeOfAZoneIsInside() {
        assertThat(point(PLAIN, new Zone(200, 10, 2 * CHANNEL_GBS, 0, 108))).isSameAs(TWO);
        assertThat(point(PLAIN, new Zone(200, 10, 0, 32, 108))).isSameAs(TWO);
        assertThat(point(PLAIN, new Zone(0, 0, 0, 32.001, 116))).isSameAs(FOUR);
        assertThat(point(PLAIN, new Zone(0, 0, 0, 32.001, 115.9))).isNull();
        assertThat(point(PLAIN, new Zone(200.1, 0, 0, 0, 999))).isNull();
        assertThat(point(PLAIN, new Zone(0, 10.1, 0, 0, 999))).isNull();
        assertThat(point(PLAIN, new Zone(0, 0, 0, 0, 103.9))).isNull();
        assertThat(point(PLAIN, new Zone(0, 0, 0, 0, 99))).isNull();
    }

    @Test
    void aFrameAtTheEdgeOfAZoneNeedsMemoryThatWeighsNothing() {
        MemoryPoint weightless = Pieces.point(20, 16, 16, 16, 1, 0, 0);
        Query.Answer answer = best(PLAIN, new Zone(0, 0, 0, 0, 100), frame(), option(weightless));
        assertThat(answer.best().point()).isSameAs(weightless);
        assertThat(answer.best().loadW()).isEqualTo(100);
    }

    @Test
    void moneyAndWatts() {
        Request much = asking(Samples.require().memoryGb(33).make());
        assertThat(best(much.withLimit(Samples.limit().price(1080).make()), Zone.EVERYTHING, frame(), option(ONE, TWO, FOUR)).best().price()).isEqualTo(1080);
        assertThat(best(much.withLimit(Samples.limit().price(1079).make()), Zone.EVERYTHING, frame(), option(ONE, TWO, FOUR)).best()).isNull();
        assertThat(best(much.withLimit(Samples.limit().powerW(116).make()), Zone.EVERYTHING, frame(), option(ONE, TWO, FOUR)).best().loadW()).isEqualTo(116);
        assertThat(best(much.withLimit(Samples.limit().powerW(115).make()), Zone.EVERYTHING, frame(), option(ONE, TWO, FOUR)).best()).isNull();
        Frame tight = frame(Samples.platform().budgetW(110).make(), Optional.empty(), 10, 1000, 200, 100);
        assertThat(best(PLAIN, Zone.EVERYTHING, tight, option(FOUR, TWO)).best().point()).isSameAs(TWO);
        assertThat(best(much, Zone.EVERYTHING, tight, option(ONE, TWO, FOUR)).best()).isNull();
        Frame fed = frame(BOX, Optional.of(Samples.supply("S", 1, 0, 115, 115, Map.of())), 10, 1000, 200, 100);
        assertThat(best(much, Zone.EVERYTHING, fed, option(ONE, TWO, FOUR)).best()).isNull();
        assertThat(best(PLAIN, Zone.EVERYTHING, fed, option(ONE, TWO, FOUR)).best().point()).isSameAs(ONE);
    }

    /** Dealt better, the four would draw 110 W: that they are too heavy proves nothing. */
    @Test
    void whatABetterDealCouldDoStaysOpen() {
        MemoryPoint slack = Pieces.point(80, 64, 16, 64, 4, 16, 6);
        Request much = asking(Samples.require().memoryGb(33).make());
        Query.Answer open = best(much.withLimit(Samples.limit().powerW(110).make()), Zone.EVERYTHING, frame(), option(slack));
        assertThat(open.best()).isNull();
        assertThat(open.openAim()).isEqualTo(1080);
        assertThat(open.isProved()).isFalse();
        Query.Answer zoned = best(much, new Zone(0, 0, 0, 0, 110), frame(), option(slack));
        assertThat(zoned.openAim()).isEqualTo(1080);
        assertThat(best(much, new Zone(0, 0, 0, 0, 116), frame(), option(slack)).openAim()).isInfinite();
    }

    @Test
    void whatNoDealCouldDoIsProved() {
        // The bound takes the modules of this option for weightless, so that the point is looked at.
        MemoryModule light = Samples.module("LIGHT", 16).powerW(0.001).make();
        Level level = new Level(ModuleType.RDIMM, 0, 2400, Map.of(Pieces.group(16), List.of(light)), List.of());
        PriceFloor prices = new PriceFloor(Pieces.shelf(PLAIN, List.of(light), Pieces.lot(light, 12, 20)), List.of(light), 0);
        MemoryPoint slack = Pieces.point(80, 64, 16, 64, 4, 16, 6);
        MemoryOption option = new MemoryOption(level, 0, false, new MemoryOption.Extent(1, 1, 12, 4, 16, 1, 0), prices, () -> prices,
                (need, deadline) -> (most, window) -> new MemoryPoints(List.of(slack), 1));
        for (double watts : new double[] {109.9, 105}) {
            assertThat(best(limited(Samples.limit().powerW(watts).make()), Zone.EVERYTHING, frame(), option).isProved()).isTrue();
            assertThat(best(PLAIN, new Zone(0, 0, 0, 0, watts), frame(), option).isProved()).isTrue();
        }
        assertThat(best(PLAIN, new Zone(0, 0, 0, 0, 110), frame(), option).openAim()).isEqualTo(1080);
    }

    /** Energy counts what a better deal would save: 6 W are 525.6 minor units a year. */
    @Test
    void aBetterDealCouldBeCheaperToRun() {
        Ranking ranking = new Ranking(PLAIN, Optional.of(new Energy(1, 10, 1)), (one, other) -> 0);
        MemoryPoint slack = Pieces.point(20, 16, 16, 16, 1, 10, 6);
        Query query = new Query(PLAIN, FamilyChoice.of(List.of(new Family(List.of(frame()), List.of(option(slack)), MemoryNeed.of(PLAIN, false)))), ranking, Deadline.never());
        Query.Answer answer = query.best(Zone.EVERYTHING);
        assertThat(answer.best().aim()).isEqualTo(1020 + 9636);
        assertThat(answer.openAim()).isEqualTo(1020 + 9110);
        assertThat(answer.isProved()).isFalse();
    }

    @Test
    void whatTimeLeavesIsBounded() {
        Query.Answer late = best(PLAIN, Zone.EVERYTHING, Deadline.in(Duration.ZERO), List.of(frame()), option(ONE));
        assertThat(late.best()).isNull();
        assertThat(late.openAim()).isEqualTo(1020);
        MemoryOption unfinished = option(ModuleType.RDIMM, 0, false, 20, most -> {
            throw new OutOfTimeException();
        });
        Query.Answer open = best(PLAIN, Zone.EVERYTHING, frame(), unfinished, option(FOUR));
        assertThat(open.best().point()).isSameAs(FOUR);
        assertThat(open.openAim()).isEqualTo(1020);
        assertThat(open.isProved()).isFalse();
        Query.Answer apart = best(PLAIN, Zone.EVERYTHING, frame(), option(ModuleType.RDIMM, 0, true, 20, most -> new MemoryPoints(List.of(ONE), 1)));
        assertThat(apart.openAim()).isEqualTo(1020);
        assertThat(apart.isProved()).isTrue();
        assertThat(apart.isFirst()).isFalse();
    }

    @Test
    void memoryThatDoesNotSuitIsPassedOver() {
        assertThat(best(PLAIN, Zone.EVERYTHING, frame(), option(ModuleType.LRDIMM, 0, false, 20, most -> new MemoryPoints(List.of(ONE), 1))).best()).isNull();
        assertThat(best(PLAIN, Zone.EVERYTHING, frame(), option(ModuleType.RDIMM, 2400, false, 20, most -> new MemoryPoints(List.of(ONE), 1))).best()).isNull();
        assertThat(best(asking(Samples.require().memoryGb(193).make()), Zone.EVERYTHING, frame(), option(ONE)).openAim()).isInfinite();
        assertThat(asked).isEmpty();
    }

    /** Memory that cannot win is not worked out; what could still come out equal is. */
    @Test
    void onlyWhatCanStillWinIsWorkedOut() {
        MemoryOption good = option(ONE);
        MemoryOption dear = option(ModuleType.RDIMM, 0, false, 21, most -> new MemoryPoints(List.of(ONE), 1));
        assertThat(best(PLAIN, Zone.EVERYTHING, frame(), dear, good).best().option()).isSameAs(good);
        assertThat(asked).containsExactly(good);
        asked.clear();
        MemoryPoint wider = Pieces.point(20, 32, 16, 32, 1, 4, 0);
        MemoryOption equal = option(wider);
        assertThat(best(PLAIN, Zone.EVERYTHING, frame(), good, equal).best().point()).isSameAs(wider);
        assertThat(asked).containsExactly(good, equal);
    }

    @Test
    void framesInTheOrderOfTheirPromise() {
        Frame cheap = frame(BOX, Optional.empty(), 10, 900, 150, 100);
        Frame fast = frame(BOX, Optional.empty(), 12, 1000, 250, 100);
        MemoryOption option = option(ONE, TWO, FOUR);
        assertThat(best(PLAIN, Zone.EVERYTHING, Deadline.never(), List.of(fast, cheap), option).best().frame()).isSameAs(cheap);
        assertThat(best(PLAIN.withObjective(Objective.MOST_THROUGHPUT), Zone.EVERYTHING, Deadline.never(), List.of(cheap, fast), option).best().frame()).isSameAs(fast);
        Combination widest = best(PLAIN.withObjective(Objective.MOST_BANDWIDTH), Zone.EVERYTHING, Deadline.never(), List.of(fast, cheap), option).best();
        assertThat(widest.point()).isSameAs(FOUR);
        assertThat(widest.frame()).isSameAs(cheap);
        assertThat(widest.bandwidthGbs()).isCloseTo(4 * CHANNEL_GBS, within(1e-6));
        assertThat(widest.aim()).isEqualTo(-widest.bandwidthGbs());
    }

    /** What is sought before one build, and found to be the other, can be sought again before one behind it. */
    @Test
    void aSearchIsTakenUpAgain() {
        Query.ZoneSearch search = query(PLAIN, ONE, TWO, FOUR).in(new Zone(0, 0, 2 * CHANNEL_GBS - 1, 0, Double.POSITIVE_INFINITY));
        Combination cheaper = Pieces.candidate(1020, 1020, 1, 1, 1, 1, 1);
        assertThat(search.before(cheaper).best()).isSameAs(cheaper);
        Combination between = Pieces.candidate(1041, 1041, 1, 1, 1, 1, 1);
        assertThat(search.before(between).best().point()).isSameAs(TWO);
        assertThat(search.before(null)).matches(Query.Answer::isFirst).extracting(answer -> answer.best().point()).isEqualTo(TWO);
    }

    /** A walk of three builds, each a tenth better in some figure than those before; a slack deal may hide a lighter one. */
    @Test
    void alternativesOfAWalk() {
        Request request = PLAIN.withAlternatives(3, 0.1);
        assertThat(walk(request, ONE, TWO, FOUR).builds()).extracting(Combination::point).containsExactly(ONE, TWO, FOUR);
        assertThat(walk(request, ONE, TWO, FOUR).doubts()).isEqualTo(Doubts.NONE);
        assertThat(walk(request.withAlternatives(2, 0.1), ONE, TWO, FOUR).builds()).extracting(Combination::point).containsExactly(ONE, TWO);
        assertThat(walk(request, ONE, Pieces.point(40, 17, 16, 17, 2, 8, 0), FOUR).builds()).extracting(Combination::point).containsExactly(ONE, FOUR);
        assertThat(walk(request, ONE, Pieces.point(40, 32, 16, 32, 2, 8, 1), FOUR).doubts()).isEqualTo(Doubts.of(Cause.SHARING));
        assertThat(walk(request).builds()).isEmpty();
        assertThat(walk(request).doubts()).isEqualTo(Doubts.NONE);
    }

    private Walk.Path walk(Request request, MemoryPoint... points) {
        return new Walk(request, query(request, points), new Ranking(request)).walk();
    }

    private Query query(Request request, MemoryPoint... points) {
        Family family = new Family(List.of(frame()), List.of(option(points)), MemoryNeed.of(request, false));
        return new Query(request, FamilyChoice.of(List.of(family)), new Ranking(request), Deadline.never());
    }

    @Test
    void whatAnAnswerSays() {
        Combination build = Pieces.candidate(100, 100, 1, 1, 1, 1, 1);
        assertThat(answer(build, 100)).matches(Query.Answer::isProved).matches(answer -> !answer.isFirst());
        assertThat(answer(build, 101)).matches(Query.Answer::isProved).matches(Query.Answer::isFirst);
        assertThat(answer(build, 99)).matches(answer -> !answer.isProved()).matches(answer -> !answer.isFirst());
        assertThat(answer(null, Double.POSITIVE_INFINITY)).matches(Query.Answer::isProved).matches(Query.Answer::isFirst);
        assertThat(answer(null, 99)).matches(answer -> !answer.isProved()).matches(answer -> !answer.isFirst());
    }

    private static Query.Answer answer(Combination best, double openAim) {
        Unseen unseen = new Unseen();
        unseen.note(Cause.TIME, openAim);
        return new Query.Answer(best, unseen);
    }

    /** Only what could come first is in doubt, and only for what kept it from being looked at. */
    @Test
    void whatKeepsAnAnswerFromBeingProved() {
        Combination build = Pieces.candidate(100, 100, 1, 1, 1, 1, 1);
        Unseen unseen = new Unseen();
        unseen.note(Cause.TIME, 101);
        unseen.noteTooLarge("WIDE", 90);
        unseen.noteTooLarge("WIDER", 101);
        unseen.noteTooLarge("WIDE", 120);
        unseen.note(Cause.SHARING, Double.POSITIVE_INFINITY);
        assertThat(new Query.Answer(build, unseen).doubts()).isEqualTo(new Doubts(Set.of(Cause.SIZE), new TreeSet<>(Set.of("WIDE"))));
        assertThat(new Query.Answer(null, unseen).doubts()).isEqualTo(new Doubts(Set.of(Cause.SIZE, Cause.TIME), new TreeSet<>(Set.of("WIDE", "WIDER"))));
        assertThat(unseen.openAim()).isEqualTo(90);
        MemoryOption listed = option(ModuleType.RDIMM, 0, false, 20, most -> new MemoryPoints(List.of(FOUR), 1));
        MemoryOption tooLarge = option(ModuleType.RDIMM, 0, false, 20, most -> {
            throw new TooLargeException();
        });
        Query.Answer answer = best(PLAIN, Zone.EVERYTHING, frame(), listed, tooLarge);
        assertThat(answer.best().point()).isSameAs(FOUR);
        assertThat(answer.isProved()).isFalse();
        assertThat(answer.doubts().tooLarge()).containsExactly(BOX.sku());
        assertThat(answer.doubts().late()).isFalse();
    }
}
