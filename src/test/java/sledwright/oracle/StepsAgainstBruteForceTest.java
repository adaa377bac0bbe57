package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import sledwright.domain.CardWish;
import sledwright.domain.Catalog;
import sledwright.domain.Equipment;
import sledwright.domain.Lot;
import sledwright.domain.MemoryNeeds;
import sledwright.domain.Objective;
import sledwright.domain.PartKind;
import sledwright.domain.ProcessorNeeds;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.WorkWish;
import sledwright.domain.VolumeWish;
import sledwright.explain.Explainer;
import sledwright.explain.ask.WhatIf;
import sledwright.explain.conflict.Demand;
import sledwright.explain.conflict.Demands;
import sledwright.explain.steps.Steps.Curve;
import sledwright.explain.steps.Steps.Dropped;
import sledwright.explain.steps.Steps.End;
import sledwright.explain.steps.Steps.PriceRange;
import sledwright.explain.steps.Steps.Step;
import sledwright.explain.steps.Steps;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;

/** The steps of an answer against the list of every build, at both ends of every step and just beyond. */
class StepsAgainstBruteForceTest {

    private static final int SEEDS = 250;
    private static final int EQUIPPED_SEEDS = 20;
    private static final Set<PartKind> EQUIPMENT = EnumSet.of(PartKind.DRIVES, PartKind.CARDS, PartKind.EXTRAS, PartKind.ENCLOSURES);
    private static final double SAME = 1e-3;
    /** Values are sums of fractions of a minor unit; closer than this they are equal. */
    private static final double LEAST_BETTER = 1e-4;

    private record Asked(RandomCase that, Findings findings, Steps steps) {

        /** What the objective measures, as it is written. */
        BigDecimal best() {
            return BigDecimal.valueOf(findings.best()).movePointLeft(isMoney(that.request()) ? 2 : 0);
        }
    }

    @Test
    void everyStepOfARequirementIsTheNext() {
        AtomicInteger steps = new AtomicInteger();
        Seeds.chosen(SEEDS).mapToObj(StepsAgainstBruteForceTest::ask).filter(asked -> asked.findings.status() == Status.PROVED).forEach(asked ->
                asked.steps.curves().forEach(curve -> {
                    steps.addAndGet(curve.steps().size());
                    check(asked, curve);
                }));
        assertThat(steps.get()).isGreaterThan(SEEDS);
    }

    @Test
    void theSameByPriceAndEnergy() {
        AtomicInteger steps = new AtomicInteger();
        Seeds.chosen(SEEDS / 4).mapToObj(seed -> LeastTotalAgainstBruteForceTest.counting(RandomCase.of(seed, RandomCase.Size.LISTABLE)))
                .map(StepsAgainstBruteForceTest::ask).filter(asked -> asked.findings.status() == Status.PROVED).forEach(asked -> {
                    asked.steps.curves().forEach(curve -> check(asked, curve));
                    asked.steps.parts().forEach(part -> check(asked, part));
                    steps.addAndGet(asked.steps.curves().size() + asked.steps.parts().size());
                });
        assertThat(steps.get()).isGreaterThan(SEEDS / 4);
    }

    @Test
    void everyStepOfAVolumeOrACardIsTheNext() {
        int[] steps = new int[2];
        // Once three cards that cost less than two stood below the price of the two.
        Stream.concat(Seeds.chosen(EQUIPPED_SEEDS).mapToObj(RandomEquipment::of), Stream.of(Packs.in(RandomEquipment.of(72_054))))
                .map(StepsAgainstBruteForceTest::ask).filter(asked -> asked.findings.status() == Status.PROVED)
                .forEach(asked -> asked.steps.curves().stream().filter(curve -> curve.name().isPresent()).forEach(curve -> {
                    steps[curve.key().equals("require.cards") ? 0 : 1] += curve.steps().size();
                    check(asked, curve);
                }));
        assertThat(Arrays.stream(steps).min().orElseThrow()).as(Arrays.toString(steps)).isGreaterThan(EQUIPPED_SEEDS / 6);
    }

    @Test
    void withinItsPricesTheBestStaysTheBestAndBeyondItDoesNot() {
        AtomicInteger ranges = new AtomicInteger();
        Seeds.chosen(SEEDS).mapToObj(StepsAgainstBruteForceTest::ask).filter(asked -> asked.findings.status() == Status.PROVED).forEach(asked ->
                asked.steps.parts().forEach(part -> {
                    ranges.incrementAndGet();
                    check(asked, part);
                }));
        assertThat(ranges.get()).isGreaterThan(SEEDS);
    }

    @Test
    void withinThePricesOfDrivesCardsAndEnclosuresTheBestStaysTheBest() {
        Set<PartKind> kinds = EnumSet.noneOf(PartKind.class);
        Seeds.chosen(EQUIPPED_SEEDS).mapToObj(RandomEquipment::of).map(StepsAgainstBruteForceTest::ask)
                .filter(asked -> asked.findings.status() == Status.PROVED).forEach(asked -> asked.steps.parts().forEach(part -> {
                    PartKind kind = PartKind.of(asked.that.catalog().part(part.sku()).orElseThrow());
                    if (EQUIPMENT.contains(kind)) {
                        kinds.add(kind);
                        check(asked, part);
                    }
                }));
        assertThat(kinds).isEqualTo(EQUIPMENT);
    }

    /** Each wish by itself; those that are not named save nothing. */
    @Test
    void whatIsSaidOfAWishIsWhatTheBestIsWithoutIt() {
        Set<String> keys = new TreeSet<>();
        Stream.concat(Seeds.chosen(SEEDS).mapToObj(seed -> RandomCase.of(seed, RandomCase.Size.LISTABLE)), Seeds.chosen(EQUIPPED_SEEDS).mapToObj(RandomEquipment::of))
                .map(StepsAgainstBruteForceTest::ask).filter(asked -> asked.findings.status() == Status.PROVED).forEach(asked -> {
                    Request request = asked.that.request();
                    WhatIf terms = WhatIf.of(request, Optional.empty());
                    Goal own = goal(asked.that.with(request), request).orElseThrow();
                    for (Demand wish : Demands.wishes(terms)) {
                        // A lot that sells two or more may serve both a need and the extra that is asked for, and not the need alone.
                        Optional<Goal> without = goal(asked.that.with(wish.without().apply(terms).request()), request);
                        Optional<Dropped> said = asked.steps.wishes().stream().filter(one -> one.wish().equals(wish.words())).findFirst();
                        assertThat(said.isPresent()).as("%s of%n%s", wish.words(), asked.that.text()).isEqualTo(without.isPresent() && without.get().precedes(own));
                        said.ifPresent(one -> {
                            keys.add(one.key());
                            Goal goal = new Goal(one.best().doubleValue() * (isMoney(request) ? 100 : -1), isMoney(request) ? 0 : one.price().movePointRight(2).doubleValue());
                            assertThat(goal.aim).as("%s of%n%s", one, asked.that.text()).isEqualTo(without.orElseThrow().aim, within(isMoney(request) ? 0.51 : SAME));
                            assertThat(goal.price).as("%s of%n%s", one, asked.that.text()).isEqualTo(without.orElseThrow().price);
                            assertThat(one.change().doubleValue()).as("%s of%n%s", one, asked.that.text())
                                    .isEqualTo(one.best().subtract(asked.best()).doubleValue(), within(isMoney(request) ? 0.0101 : SAME));
                        });
                    }
                });
        assertThat(keys).contains("limit.lead_days", "limit.conditions", "limit.power_w", "platforms", "forbid", "use", "extras", "require.balanced", "require.memory_mode");
    }

    private static Optional<Goal> goal(RandomCase that, Request request) {
        return BruteForce.all(that).stream().map(build -> Goal.of(build, request)).min(Comparator.comparingDouble(Goal::aim).thenComparingDouble(Goal::price));
    }

    private static Asked ask(long seed) {
        return ask(RandomCase.of(seed, RandomCase.Size.LISTABLE));
    }

    private static Asked ask(RandomCase that) {
        Search search = new Search(that.catalog());
        Findings findings = search.run(that.request(), Deadline.never());
        return new Asked(that, findings, new Explainer(that.catalog(), search, Deadline.never()).steps(findings, true));
    }

    private static void check(Asked asked, Curve curve) {
        Request request = asked.that.request();
        double grain = Set.of("require.cores", "require.spare_slots", "require.cards").contains(curve.key()) ? 1 : 1e-6;
        List<Step> steps = curve.steps();
        String about = curve + "\n" + asked.that.text();
        assertThat(steps).as(about).isNotEmpty().anyMatch(curve::isAsked);
        Step own = steps.stream().filter(curve::isAsked).findFirst().orElseThrow();
        assertThat(own.price().movePointRight(2).longValueExact()).as("the price of what was asked in " + about)
                .isEqualTo(asked.findings.ranked().get(0).price().total());
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            Goal goal = Goal.of(step, request);
            assertThat(best(asked, curve, step.upTo())).as("at " + step + " of " + about).hasValueSatisfying(goal::assertSame);
            Optional<Goal> beyond = best(asked, curve, step.upTo() + grain);
            if (i + 1 < steps.size()) {
                Goal next = Goal.of(steps.get(i + 1), request);
                assertThat(beyond).as("beyond " + step + " of " + about).hasValueSatisfying(next::assertSame);
                // Three cards of a lot may cost less than two; more of anything else is no better.
                assertThat(goal.precedes(next) || curve.key().equals("require.cards") && next.precedes(goal)).as(about).isTrue();
            } else {
                assertThat(beyond.isEmpty()).as("beyond the last of " + about).isEqualTo(curve.last());
            }
            assertThat(step.change()).as(about).isEqualByComparingTo(step.best().subtract(own.best()));
            assertThat(step.within()).as(about).isEqualTo(request.limit().price().isEmpty()
                    || step.price().movePointRight(2).longValueExact() <= request.limit().price().getAsLong());
        }
        assertThat(own.best().subtract(asked.best()).abs()).as(about).isLessThan(BigDecimal.valueOf(isMoney(request) ? 0.0051 : SAME));
        // Without the cards nothing may bring a riser that must be there.
        Goal first = Goal.of(steps.get(0), request);
        assertThat(best(asked, curve, 0).filter(none -> none.precedes(first)).isPresent()).as(about).isNotEqualTo(curve.first());
    }

    /** What is made least: an aim, and the price where the aim is a figure of the machine. */
    private record Goal(double aim, double price) {

        static Goal of(Step step, Request request) {
            return isMoney(request) ? new Goal(step.best().movePointRight(2).doubleValue(), 0)
                    : new Goal(-step.best().doubleValue(), step.price().movePointRight(2).doubleValue());
        }

        static Goal of(Candidate build, Request request) {
            return new Goal(StepsAgainstBruteForceTest.aim(build, request), isMoney(request) ? 0 : build.price());
        }

        boolean precedes(Goal other) {
            return aim < other.aim - SAME || aim < other.aim + SAME && price < other.price;
        }

        void assertSame(Goal other) {
            assertThat(other.aim).isEqualTo(aim, within(SAME));
            assertThat(other.price).isEqualTo(price);
        }

        Goal rounded(Request request) {
            return isMoney(request) ? new Goal(Math.rint(aim), price) : this;
        }
    }

    private static Offset<Double> within(double offset) {
        return Offset.offset(offset);
    }

    private static boolean isMoney(Request request) {
        return request.objective().isMoney();
    }

    /** The best of all builds that reach so much; for the cheapest without the limit of the price. */
    private static Optional<Goal> best(Asked asked, Curve curve, double least) {
        Request request = asked.that.request();
        Request changed = request.withRequire(least(request.require(), curve.key(), least)).withEquipment(least(asked, curve, least));
        if (request.objective() == Objective.CHEAPEST) {
            changed = changed.withLimit(request.limit().withPrice(OptionalLong.empty()));
        }
        return BruteForce.all(asked.that.with(changed)).stream().map(build -> Goal.of(build, request))
                .min(Comparator.comparingDouble(Goal::aim).thenComparingDouble(Goal::price)).map(goal -> goal.rounded(request));
    }

    /** Of less than was asked the worth counts as lost. */
    private static double aim(Candidate build, Request request) {
        if (request.objective() != Objective.BEST_VALUE) {
            return isMoney(request) ? build.price() + (request.objective() == Objective.LEAST_TOTAL ? build.energy() : 0) : -build.aim(request);
        }
        Requirements require = request.require();
        return build.price() - request.machines() * (request.worth().core() * (build.cores() - require.cores())
                + request.worth().gb() * (build.usable() / 1e6 - require.memoryGb())
                + request.worth().gbs() * (build.bandwidth() / 1e6 - require.bandwidthGbs())
                + request.worth().throughput() * (build.throughput() / 1e6 - require.throughput())
                + request.worth().work() * (build.work() / 1e6 - require.work().least()));
    }

    private static Equipment least(Asked asked, Curve curve, double least) {
        Equipment before = asked.that.request().equipment();
        List<VolumeWish> volumes = before.volumes().stream().map(wish -> !curve.name().equals(Optional.of(wish.name())) ? wish
                : new VolumeWish(wish.name(), least, wish.level(), wish.kind(), wish.link(), wish.hotSpares())).toList();
        List<CardWish> cards = new ArrayList<>(before.cards());
        List<Curve> ofCards = asked.steps.curves().stream().filter(one -> one.key().equals("require.cards")).toList();
        if (curve.key().equals("require.cards")) {
            CardWish wish = cards.remove(ofCards.indexOf(curve));
            if (least > 0) {
                cards.add(new CardWish(wish.sku(), wish.kind(), wish.ports(), wish.portGbit(), (int) least));
            }
        }
        return new Equipment(volumes, cards, before.extras(), before.enclosure());
    }

    private static Requirements least(Requirements r, String key, double least) {
        return new Requirements(
                new ProcessorNeeds(r.processors(), key.equals("require.cores") ? (int) least : r.cores(), key.equals("require.throughput") ? least : r.throughput(), key.equals("require.base_ghz") ? least : r.baseGhz(), key.equals("require.all_core_ghz") ? least : r.allCoreGhz()),
                new MemoryNeeds(key.equals("require.memory_gb") ? least : r.memoryGb(), key.equals("require.bandwidth_gbs") ? least : r.bandwidthGbs(), key.equals("require.gb_per_core") ? least : r.gbPerCore(), key.equals("require.gbs_per_core") ? least : r.gbsPerCore(), key.equals("require.spare_slots") ? (int) least : r.spareSlots(), r.mode(), r.populated()),
                new WorkWish(key.equals("require.work") ? least : r.work().least(), r.work().workload()));
    }

    private static void check(Asked asked, PriceRange part) {
        String about = part + "\n" + asked.findings.ranked().get(0).picks() + "\n" + asked.that.text();
        long fall = part.unitPrice().subtract(part.from()).movePointRight(2).longValueExact();
        assertThat(fall).as(about).isNotNegative();
        assertThat(isBest(asked, part, -fall)).as("at the least price of " + about).isTrue();
        assertThat(part.below()).as(about).isIn(End.OTHER_BUILD, End.FREE);
        if (part.below() == End.OTHER_BUILD) {
            assertThat(isBest(asked, part, -fall - 1)).as("below the least price of " + about).isFalse();
        }
        if (part.to().isPresent()) {
            long rise = part.to().get().subtract(part.unitPrice()).movePointRight(2).longValueExact();
            assertThat(rise).as(about).isNotNegative();
            assertThat(isBest(asked, part, rise)).as("at the greatest price of " + about).isTrue();
            assertThat(isBest(asked, part, rise + 1)).as("above the greatest price of " + about).isFalse();
        } else {
            assertThat(part.above()).as(about).isEqualTo(End.NOTHING);
            assertThat(isBest(asked, part, 10_000_000)).as("at any price of " + about).isTrue();
        }
    }

    /** Whether the answer, dearer by its units, is within the limit and no build comes before it. */
    private static boolean isBest(Asked asked, PriceRange part, long dearer) {
        Request request = asked.that.request();
        Map<String, List<Lot>> lots = new HashMap<>(asked.that.lots());
        lots.computeIfPresent(part.sku(), (sku, all) -> all.stream().map(lot -> new Lot(lot.sku(), lot.lot(), lot.supplier(),
                lot.condition(), lot.stock(),
                lot.breaks().stream().map(step -> new Lot.PriceBreak(step.minQuantity(), Math.max(0, step.unitPrice() + dearer), step.unitCost())).toList(),
                lot.onHand())).toList());
        Catalog catalog = asked.that.catalog();
        RandomCase changed = asked.that.with(catalog.platforms(), catalog.processors(), catalog.modules(), lots);
        long price = asked.findings.ranked().get(0).price().total() + part.units() * dearer;
        if (request.limit().price().isPresent() && price > request.limit().price().getAsLong()) {
            return false;
        }
        double own = isMoney(request) ? asked.findings.best() + part.units() * dearer : -asked.findings.best();
        return BruteForce.all(changed).stream().noneMatch(build -> {
            double aim = aim(build, request);
            return aim < own - LEAST_BETTER || !isMoney(request) && aim < own + 1e-9 && build.price() < price;
        });
    }
}
