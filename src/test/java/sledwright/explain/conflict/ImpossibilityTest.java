package sledwright.explain.conflict;

import static org.assertj.core.api.Assertions.assertThat;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import sledwright.catalog.CatalogReader;
import sledwright.domain.CardWish;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Equipment;
import sledwright.domain.Labour;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.MemoryMode;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Supply;
import sledwright.domain.Thermal;
import sledwright.explain.Explainer;
import sledwright.explain.Explanation;
import sledwright.explain.ask.Oracle;
import sledwright.explain.ask.WhatIf;
import sledwright.generator.Doubts;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.samples.Answers;
import sledwright.samples.PlatformSketch;
import sledwright.samples.Samples;
import sledwright.words.Sentence;

/** Impossible requests on a small shop, whose conflicts and ways out can be counted by hand or by trying every subset. */
class ImpossibilityTest {

    private static Explanation explain(Request request, Catalog shop) {
        Search search = new Search(shop);
        var findings = search.run(request, Deadline.never());
        assertThat(findings.status()).isEqualTo(Status.IMPOSSIBLE);
        return new Explainer(shop, search, Deadline.never()).explain(findings, List.of());
    }

    private static List<String> conflicts(Request request) {
        return explain(request, Answers.SHOP).conflicts().stream().map(Conflict::message).toList();
    }

    private static List<String> relaxations(Request request) {
        return explain(request, Answers.SHOP).relaxations().stream().map(Relaxation::message).toList();
    }

    private static Request asking(Requirements require, Limits limit) {
        return Request.named("any").withRequire(require).withLimit(limit);
    }

    @Test
    void aPriceThatIsTooLow() {
        Request request = asking(Samples.require().cores(20).make(), Samples.limit().price(30000).make());
        assertThat(conflicts(request)).containsExactly(
                "At least 20 cores and a price of at most 300.00 EUR exclude each other: with at least 20 cores, the cheapest build costs %s EUR."
                        .formatted(cheapest(request)));
        assertThat(relaxations(request)).contains(
                "Raise the price from 300.00 EUR to %s EUR: builds from %s EUR.".formatted(cheapest(request), cheapest(request)));
    }

    @Test
    void entriesOfOneCardAreOneWish() {
        CardWish three = new CardWish(Optional.of("HT-250"), Optional.empty(), 0, 0, 3);
        Request request = asking(Samples.require().cores(8).memoryGb(32).make(), Limits.NONE)
                .withEquipment(new Equipment(List.of(), List.of(three, three.with(1)), Map.of(), EnclosureFrom.NEW));
        Explanation told = explain(request, CatalogReader.read(Path.of("catalogs/heronfold-yard")));
        assertThat(told.conflicts()).extracting(Conflict::message)
                .containsExactly("There is room for 2 of them; the request asks for 4 x HT-250.");
        assertThat(told.relaxations()).extracting(Relaxation::message).singleElement().asString()
                .startsWith("Fit 2 instead of 4 x HT-250: builds from ");
    }

    /** Supplies of the enclosure count as forbidden, and as too weak for the mains, where it is asked which demands a build meets. */
    @Test
    void whatSledsStandInConflictsWithTheMainsAndWithForbiddenParts() {
        Catalog yard = CatalogReader.read(Path.of("catalogs/heronfold-yard"));
        Request request = asking(Samples.require().cores(8).memoryGb(32).make(), Limits.NONE.withMainsV(OptionalDouble.of(115)))
                .withPlatforms(Set.of("FINCH-S2")).withForbid(Set.of("FINCH-PS-1400"));
        Explanation told = explain(request, yard);
        assertThat(told.conflicts()).extracting(Conflict::message).containsExactly("A new enclosure for sleds, mains of 115 V, the platform FINCH-S2"
                + " and no FINCH-PS-1400 exclude one another: with the others, a sled goes into an enclosure that stands already.");
        assertThat(told.relaxations()).extracting(Relaxation::message).containsExactlyInAnyOrder(
                "Take the platform WHEATEAR-R1: builds from 122.35 EUR.",
                "Put sleds into an enclosure that stands already: builds from 123.67 EUR.",
                "Allow FINCH-PS-1400: builds from 298.67 EUR.",
                "Feed it from mains of 180 V or more instead of 115 V: builds from 370.67 EUR.");
    }

    private static String cheapest(Request request) {
        return Answers.SHOP.amount(Math.round(new Search(Answers.SHOP).run(request.withLimit(Limits.NONE), Deadline.never()).best()))
                .toPlainString();
    }

    @Test
    void everyKindOfDemandHasItsWords() {
        // Two sockets of twelve cores at most; the shop has 12 R16, 20 R16B and 8 R32.
        assertThat(conflicts(asking(Samples.require().cores(30).make(), Limits.NONE)))
                .containsExactly("The number of cores reaches 24 at most; the request asks for at least 30 cores.");
        assertThat(relaxations(asking(Samples.require().cores(30).make(), Limits.NONE)))
                .singleElement().asString().startsWith("Lower the number of cores from 30 to 24: builds from ");
        assertThat(conflicts(asking(Samples.require().cores(24).make(), Samples.limit().conditions(Condition.NEW, Condition.REFURBISHED).make())))
                .containsExactly("At least 24 cores and new or refurbished parts alone exclude each other: with new or refurbished parts alone, "
                        + "the number of cores reaches 20 at most.");
        assertThat(relaxations(asking(Samples.require().cores(24).make(), Samples.limit().conditions(Condition.NEW, Condition.REFURBISHED).make())))
                .anyMatch(way -> way.startsWith("Accept used parts, too: builds from "));
        assertThat(relaxations(asking(Samples.require().cores(24).make(), Samples.limit().leadDays(1).make())))
                .anyMatch(way -> way.startsWith("Wait 4 days instead of 1: builds from "));
        assertThat(relaxations(asking(Samples.require().processors(3).make(), Limits.NONE)))
                .singleElement().asString().startsWith("Take 2 processors instead of 3: builds from ");
        assertThat(conflicts(asking(Samples.require().mode(MemoryMode.MIRRORED).memoryGb(600).make(), Limits.NONE)))
                .anyMatch(conflict -> conflict.contains("usable memory of at least 600 GB") || conflict.contains("Usable memory"));
        assertThat(relaxations(Request.named("any").withUse(Set.of("P10", "P12")))).hasSize(2)
                .allMatch(way -> way.startsWith("Do without P1"));
        assertThat(conflicts(Request.named("any").withPlatforms(Set.of("SLED")).withForbid(Set.of("SLED"))))
                .containsExactly("The platform SLED and no SLED exclude each other: with no SLED, a build needs another platform, such as BOX.");
        assertThat(conflicts(Request.named("any").withPlatforms(Set.of("SLED")).withMachines(2))).containsExactly(
                "2 identical machines, the platform SLED and what is in stock exclude one another: with the others, "
                        + "the most is 1 machine; with the others and any stock, a build needs 2 units of SLED (1 in stock).");
        assertThat(relaxations(Request.named("any").withPlatforms(Set.of("SLED")).withMachines(2)))
                .anyMatch(way -> way.startsWith("Order 1 machine instead of 2: builds from "))
                .anyMatch(way -> way.startsWith("Take the platform BOX: builds from "))
                .anyMatch(way -> way.startsWith("Get 1 more unit of SLED: builds from "));
        assertThat(relaxations(asking(Samples.require().cores(20).make(), Samples.limit().powerW(200).make())))
                .anyMatch(way -> way.matches("Allow a load of [0-9.]+ W instead of 200 W: builds from .*"));
    }

    @Test
    void aShopThatCannotBuildAnythingSaysSo() {
        Catalog empty = Answers.SHOP.withLots(Map.of());
        Explanation said = explain(Request.named("any").withMachines(2), empty);
        assertThat(said.conflicts()).singleElement().satisfies(conflict -> {
            assertThat(conflict.keys()).isEmpty();
            assertThat(conflict.message()).isEqualTo("No build can be made of this catalogue, whatever is asked.");
        });
        assertThat(said.relaxations()).isEmpty();
        assertThat(said.notes()).isEmpty();
    }

    @Test
    void stockThatIsTooDearIsNamedByItsLot() {
        Map<String, List<Lot>> lots = new HashMap<>(Answers.SHOP.lots());
        lots.put("SLED", List.of(Samples.lot("SLED", "S1", 1, 15000), Samples.lot("SLED", "S2", 1, 18000)));
        Catalog shop = Answers.SHOP.withLots(lots);
        Request two = Request.named("any").withMachines(2);
        long least = Math.round(new Search(shop).run(two, Deadline.never()).best());
        Explanation said = explain(two.withLimit(Samples.limit().price(least - 1000).make()), shop);
        assertThat(said.conflicts()).extracting(Conflict::message).containsExactly(
                "2 identical machines, what is in stock and a price of at most %s EUR exclude one another: with the others and any stock, a build needs "
                        .formatted(shop.amount(least - 1000)) + "2 units of SLED from lot S1 (1 there); with the others, the cheapest build costs %s EUR."
                        .formatted(shop.amount(least)));
        assertThat(said.relaxations()).extracting(Relaxation::message).anyMatch(way ->
                way.startsWith("Get 1 more unit of SLED at the price of lot S1: builds from %s EUR".formatted(shop.amount(least - 3000))));
    }

    /** A shop of one platform and the processor of 120 W. */
    private static Catalog shop(Platform platform) {
        return Samples.catalog(new Labour(3000, 50), List.of(platform), List.of(Answers.HOT), List.of(Answers.R16), Samples.lot("BOX", "B1", 3, 20000),
                Samples.lot("P12", "C1", 8, 9000), Samples.lot("TALL", "H1", 9, 1000), Samples.lot("PAIR", "W1", 9, 4000),
                Samples.lot("ONE", "W2", 9, 4000), Samples.lot("R16", "M1", 12, 2000));
    }

    private static PlatformSketch platform() {
        return Samples.platform().sku("BOX").cooling(Samples.TALL);
    }

    private static void alone(Platform platform, Requirements require, Limits limit, String conflict, String way) {
        Explanation said = explain(asking(require, limit), shop(platform));
        assertThat(said.conflicts()).extracting(Conflict::message).containsExactly(conflict);
        assertThat(said.relaxations()).extracting(Relaxation::message).singleElement().asString().startsWith(way + ": builds from ");
    }

    @Test
    void whatNoMachineOfTheShopHas() {
        alone(platform().mirrored(OptionalDouble.empty()).make(), Samples.require().mode(MemoryMode.MIRRORED).make(), Limits.NONE,
                "No build has such memory; the request asks for mirrored memory.", "Take independent memory");
        Supply highLine = Samples.supply("PAIR", 2, 1, 750, 0, Map.of());
        alone(platform().supplies(highLine).make(), Samples.require().make(), Samples.limit().mainsV(115).make(),
                "A build needs mains of 180 V or more; the request asks for mains of 115 V.", "Feed it from mains of 180 V or more instead of 115 V");
    }

    @Test
    void thinAirIsADemandOfItsOwn() {
        Thermal cool = new Thermal(950, 300, List.of(new Thermal.InletRow(150, 30, Set.of())));
        Request request = asking(Samples.require().make(), Samples.limit().site(28, 3050).make());
        Explanation said = explain(request, shop(platform().thermal(cool).make()));
        assertThat(said.conflicts()).singleElement().satisfies(conflict -> {
            assertThat(conflict.keys()).containsExactly("limit.inlet_c", "limit.altitude_m");
            assertThat(conflict.rules()).containsExactly("inlet-limit");
            assertThat(conflict.message()).isEqualTo(
                    "Inlet air of 28 C and a site at 3050 m exclude each other: with a site at 3050 m, the inlet air may be at most 23 C.");
        });
        assertThat(said.relaxations()).extracting(Relaxation::message).map(words -> words.replaceFirst(": builds from .*", ""))
                .containsExactlyInAnyOrder("Cool the inlet air from 28 to 23 C", "Take a site at 1550 m instead of 3050 m");
        assertThat(explain(asking(Samples.require().make(), Samples.limit().site(31, 3050).make()), shop(platform().thermal(cool).make())).conflicts())
                .extracting(Conflict::keys).containsExactly(List.of("limit.inlet_c"));
    }

    @Test
    void whatTimeCutsOffIsSaid() {
        Request request = asking(Samples.require().cores(20).make(), Samples.limit().price(30000).make());
        Search search = new Search(Answers.SHOP);
        Findings findings = search.run(request, Deadline.never());
        Explanation said = new Explainer(Answers.SHOP, search, Deadline.in(Duration.ZERO)).explain(findings, List.of());
        assertThat(said.conflicts()).isEmpty();
        assertThat(said.notes()).containsExactly(Sentence.plain("Time ran out before every conflict and every way out was found. Maybe allow more time: --time-limit"));
        assertThat(new Explainer(Answers.SHOP, search, Deadline.never()).steps(findings, true).notes())
                .containsExactly(Sentence.plain("No valid build exists, so there are no steps from it."));
    }

    @Test
    void stepsSayWhatTheyLack() {
        Search search = new Search(Answers.SHOP);
        Findings findings = search.run(asking(Samples.require().cores(20).make(), Limits.NONE), Deadline.never());
        assertThat(new Explainer(Answers.SHOP, search, Deadline.in(Duration.ZERO)).steps(findings, true).notes())
                .containsExactly(Sentence.plain("Time ran out before every step was found. Maybe allow more time: --time-limit"));
        Findings unproved = new Findings(findings.request(), Status.BEST_FOUND, findings.best(), findings.best(), findings.ranked(), Doubts.of(Doubts.Cause.TIME));
        assertThat(new Explainer(Answers.SHOP, search, Deadline.never()).steps(unproved, true).notes())
                .containsExactly(Sentence.plain("The best is not proved, so there are no steps from it. Maybe allow more time: --time-limit"));
        assertThat(new Explainer(Answers.SHOP, search, Deadline.never()).steps(search.run(Request.named("any"), Deadline.never()), true).notes())
                .containsExactly(Sentence.plain("The request asks for no figure that could be more or less."));
    }

    @Test
    void onlyTheFirstConflictsAreTold() {
        Explanation said = explain(asking(Samples.require().cores(1000).memoryGb(100000).bandwidthGbs(9000).gbPerCore(5000).gbsPerCore(900).spareSlots(99)
                .make(), Limits.NONE), Answers.SHOP);
        assertThat(said.conflicts()).hasSize(Impossibility.ENOUGH);
        assertThat(said.notes()).containsExactly(Sentence.plain("There are further conflicts or ways out; these are the first that were found."));
    }

    @Test
    void randomRequestsAgainstEverySubset() {
        int told = 0;
        for (int seed = 0; told < 12; seed++) {
            Request request = random(new Random(seed));
            Search search = new Search(Answers.SHOP);
            if (search.run(request, Deadline.never()).status() != Status.IMPOSSIBLE) {
                continue;
            }
            told++;
            List<Demand> demands = Demands.of(WhatIf.of(request, Optional.empty()), Answers.SHOP);
            Feasibility asked = new Feasibility(WhatIf.of(request, Optional.empty()), demands, new Oracle(Answers.SHOP, search, Deadline.never()));
            Oracle memory = new Oracle(Answers.SHOP, new Search(Answers.SHOP), Deadline.never());
            MinimalSets<Demand> found = MinimalSets.of(demands, asked, Integer.MAX_VALUE);
            assertThat(found.conflicts()).as("seed " + seed).containsExactlyInAnyOrderElementsOf(
                    BruteForce.conflicts(demands, kept -> memory.cheapest(asked.terms(kept)).isPresent()));
            assertThat(found.corrections()).as("seed " + seed).containsExactlyInAnyOrderElementsOf(
                    BruteForce.corrections(demands, kept -> memory.cheapest(asked.terms(kept)).isPresent()));
        }
    }

    private static Request random(Random random) {
        var require = Samples.require().cores(8 + random.nextInt(20)).memoryGb(64 + 64 * random.nextInt(8));
        if (random.nextBoolean()) {
            require.bandwidthGbs(60 + random.nextInt(120));
        }
        if (random.nextInt(3) == 0) {
            require.processors(1 + random.nextInt(2));
        }
        if (random.nextInt(3) == 0) {
            require.mode(random.nextBoolean() ? MemoryMode.MIRRORED : MemoryMode.RANK_SPARING);
        }
        var limit = Samples.limit().price(30000 + random.nextInt(60000));
        if (random.nextBoolean()) {
            limit.leadDays(random.nextInt(5));
        }
        if (random.nextBoolean()) {
            limit.powerW(180 + random.nextInt(200));
        }
        if (random.nextInt(3) == 0) {
            limit.conditions(Condition.NEW, Condition.REFURBISHED);
        }
        Request request = Request.named("any").withRequire(require.make()).withLimit(limit.make()).withMachines(1 + random.nextInt(2));
        request = random.nextBoolean() ? request.withPlatforms(Set.of("SLED")) : request;
        request = random.nextInt(3) == 0 ? request.withForbid(Set.of("R32")) : request;
        return random.nextInt(4) == 0 ? request.withUse(Set.of("R16")) : request;
    }
}
