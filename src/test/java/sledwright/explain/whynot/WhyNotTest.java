package sledwright.explain.whynot;

import static org.assertj.core.api.Assertions.assertThat;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.domain.Objective;
import sledwright.domain.Request;
import sledwright.explain.Explainer;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.input.Source;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;
import sledwright.rules.Machine;
import sledwright.rules.Order;
import sledwright.rules.Rulebook;
import sledwright.samples.Answers;
import sledwright.samples.Samples;
import sledwright.words.Sentence;

class WhyNotTest {

    private static final double ROUNDING = 1e-4;

    /** Whatever the shop of the demo sells where a request is silent. */
    private static final List<String> ANY_MEMORY = List.of("require.balanced=false", "require.one_module_part=false");

    private static Job.Quote job(String scenario) {
        return (Job.Quote) RequestReader.read(Source.of(Path.of("scenarios", scenario + ".yaml")), ANY_MEMORY, Optional.empty(), Set.of(Kind.QUOTE));
    }

    private static Findings search(Catalog catalog, Request request) {
        return new Search(catalog).run(request.withAlternatives(1, request.step()), Deadline.never());
    }

    private static WhyNot whyNot(Catalog catalog, Request request, String sku) {
        Search search = new Search(catalog);
        return new Explainer(catalog, search, Deadline.never()).explain(search.run(request, Deadline.never()), List.of(sku)).whyNot().get(0);
    }

    private static WhyNot whyNot(String scenario, String sku) {
        Job.Quote job = job(scenario);
        return whyNot(job.catalog(), job.request(), sku);
    }

    private static Findings searchHolding(Catalog catalog, Request request, String sku) {
        return new Search(catalog).runHolding(sku, request.withAlternatives(1, request.step()), Deadline.never());
    }

    /** The catalogue with every lot of a part at one unit price. */
    private static Catalog priced(Catalog catalog, String sku, long unitPrice) {
        Map<String, List<Lot>> lots = new HashMap<>(catalog.lots());
        lots.put(sku, catalog.lots(sku).stream().map(lot -> new Lot(lot.sku(), lot.lot(), lot.supplier(), lot.condition(), lot.stock(),
                List.of(new Lot.PriceBreak(lot.minQuantity(), unitPrice, OptionalLong.empty())), lot.onHand())).toList());
        return catalog.withLots(lots);
    }

    /** Below zero: the first is better. Only what the objective measures counts, and then the price where that is a figure. */
    private static int compare(Findings one, Findings other, Objective objective) {
        if (objective == Objective.CHEAPEST || objective == Objective.BEST_VALUE) {
            return Math.abs(one.best() - other.best()) < ROUNDING ? 0 : Double.compare(one.best(), other.best());
        }
        int byFigure = Math.abs(one.best() - other.best()) < ROUNDING ? 0 : Double.compare(other.best(), one.best());
        return byFigure != 0 ? byFigure
                : Long.compare(one.ranked().get(0).price().total(), other.ranked().get(0).price().total());
    }

    @ParameterizedTest
    @CsvSource({
        "render-node, S2-22X", "render-node, NV4R16-24-21", "render-node, FINCH-S4", "render-node, TERN-R2", "render-node, S2-18",
        "sled-upgrade, S2-18X", "sled-upgrade, NV4R32-24-24", "parts-on-hand, S2-16", "parts-on-hand, NV4R32-24-24",
        "best-value-host, S2-22X", "best-value-host, NV4R32-24-24", "most-for-the-budget, NV4R32-24-24", "most-for-the-budget, FINCH-S4",
        "cache-node, FINCH-S4", "cache-node, S2-06", "widest-memory, K1-24X", "mirrored-ledger, S2-16", "scarce-batch, NV4R16-24-21",
        "render-farm, K1-12", "small-web-node, LAPWING-R1", "licence-by-core, FINCH-S4", "rank-sparing-archive, TERN-R2",
    })
    void theBreakEvenPriceIsWhereItTurns(String scenario, String sku) {
        Job.Quote job = job(scenario);
        Findings best = search(job.catalog(), job.request());
        if (best.ranked().get(0).needed().containsKey(sku)) {
            assertThat(whyNot(scenario, sku).verdict()).isEqualTo(WhyNot.Verdict.CHOSEN);
            return;
        }
        Findings with = searchHolding(job.catalog(), job.request(), sku);
        WhyNot answer = whyNot(scenario, sku);
        if (with.status() == Status.IMPOSSIBLE) {
            assertThat(answer.verdict()).isEqualTo(WhyNot.Verdict.BARRED);
            assertThat(answer.rules()).isNotEmpty();
            return;
        }
        assertThat(answer.verdict()).isEqualTo(WhyNot.Verdict.BEATEN);
        WhyNot.Offer offer = answer.offer().orElseThrow();
        Order order = with.ranked().get(0);
        assertThat(offer.price()).isEqualTo(job.catalog().amount(order.price().total()));
        assertThat(offer.extra()).isEqualTo(job.catalog().amount(order.price().total() - best.ranked().get(0).price().total()));
        assertThat(offer.difference().values().stream().reduce(BigDecimal.ZERO, BigDecimal::add)).isEqualByComparingTo(offer.extra());
        Objective objective = job.request().objective();
        if (offer.breakEven().isEmpty()) {
            assertThat(compare(searchHolding(priced(job.catalog(), sku, 0), job.request(), sku), best, objective)).isPositive();
            assertThat(answer.message()).contains("Even for nothing it would not be in the best build.");
            return;
        }
        long level = offer.breakEven().get().movePointRight(2).longValueExact();
        Findings there = searchHolding(priced(job.catalog(), sku, level), job.request(), sku);
        assertThat(compare(there, best, objective)).isNotPositive();
        Findings beyond = searchHolding(priced(job.catalog(), sku, level + 1), job.request(), sku);
        assertThat(beyond.ranked().isEmpty() || compare(beyond, best, objective) > 0).isTrue();
        if (level > 0) {
            assertThat(search(priced(job.catalog(), sku, level - 1), job.request()).ranked().get(0).needed())
                    .as("below the price the search chooses it by itself").containsKey(sku);
        }
        assertThat(answer.message()).contains("At %s EUR each (".formatted(offer.breakEven().get()));
        assertThat(there.ranked().get(0).needed().get(sku)).isGreaterThanOrEqualTo(offer.units());
    }

    @Test
    void whereTheDifferenceLiesIsToldKindByKind() {
        // 2 x P10 with the low kit: 200 + 100 + 20 + 80 + 160 + 34; with P12 the kit is the deep one.
        Request request = Answers.ASKED.withPlatforms(Set.of("BOX"));
        WhyNot answer = whyNot(Answers.SHOP, request, "P12");
        assertThat(answer.sentences()).extracting(Sentence::toString).first().asString()
                .isEqualTo("The best build with it is BOX with 2 x P12 and 8 x R16: 684.00 EUR, 90.00 EUR dearer.");
        assertThat(answer.sentences()).extracting(Sentence::toString).element(1).isEqualTo("In EUR against the best: processors +80.00, cooling +10.00.");
        assertThat(answer.sentences()).extracting(Sentence::toString).element(2)
                .isEqualTo("At 45.00 EUR each (2 units; now 90.00 EUR) a build with it is as good as the best.");
    }

    @Test
    void ofManyBuildsTheOneThatComesLevelFirstCounts() {
        Job.Quote job = job("render-node");
        String sku = "NV4R16-24-21";
        WhyNot.Offer offer = whyNot("render-node", sku).offer().orElseThrow();
        Order today = searchHolding(job.catalog(), job.request(), sku).ranked().get(0);
        long units = today.needed().get(sku);
        long paid = today.picks().stream().filter(pick -> pick.sku().equals(sku)).mapToLong(sledwright.domain.Pick::total).sum();
        long extra = offer.extra().movePointRight(2).longValueExact();
        assertThat(offer.units()).isNotEqualTo((int) units);
        assertThat(offer.breakEven().orElseThrow().movePointRight(2).longValueExact()).isGreaterThan((paid - extra) / units);
    }

    /** Three machines are alike though the part number of a module may differ: one unit of the part in one of them is a build with it. */
    @Test
    void ofSeveralMachinesOneHoldsThePart() {
        Job.Quote job = job("scarce-batch");
        WhyNot answer = whyNot(job.catalog(), job.request().withMachines(3), "BR4R32-44-24");
        assertThat(answer.sentences()).extracting(Sentence::toString).first().asString().contains("(in 1 of 3 machines): ").contains(" 2.00 EUR dearer");
        assertThat(answer.offer().orElseThrow().units()).isEqualTo(1);
        Order order = searchHolding(job.catalog(), job.request().withMachines(3), "BR4R32-44-24").ranked().get(0);
        assertThat(Rulebook.judge(order)).isEmpty();
        assertThat(order.machines()).allSatisfy(build -> assertThat(Rulebook.judge(
                Machine.of(build, order.request(), job.catalog().throughputFactors()))).isEmpty());
        assertThat(order.needed()).containsEntry("BR4R32-44-24", 1);
    }

    /** The best value with the part may lie at the limit of the price: its price line is followed no farther. */
    @Test
    void theBreakEvenPriceKeepsToTheLimit() {
        Job.Quote job = job("best-value-host");
        Request request = job.request().withLimit(job.request().limit().withPrice(OptionalLong.of(21800)));
        WhyNot.Offer offer = whyNot(job.catalog(), request, "OS3R8-28-16").offer().orElseThrow();
        assertThat(offer.breakEven().orElseThrow()).isEqualByComparingTo("2.03");
    }

    @Test
    void whatIsChosenIsSaidToBe() {
        assertThat(whyNot(Answers.SHOP, Answers.ASKED, "R16").sentences()).extracting(Sentence::toString).containsExactly("R16 is in the best build.");
    }

    @Test
    void theRulesThatBarAPartAreNamed() {
        assertThat(whyNot("sled-upgrade", "K1-24X").sentences()).extracting(Sentence::toString).contains(
                "socket-match: K1-24X is of generation Kestrel 1 in socket LK3; FINCH-S4 takes Shikra 1, Shikra 2 in socket LS2.",
                "asked-platform: With K1-24X, a build needs another platform, such as TERN-R2; the request asks for the platform FINCH-S4.");
        WhyNot forbidden = whyNot("sled-upgrade", "BR4R32-44-24");
        assertThat(forbidden.rules()).containsExactly("forbidden-part");
        assertThat(forbidden.sentences()).extracting(Sentence::toString).contains("forbidden-part: The request forbids BR4R32-44-24.")
                .anyMatch(sentence -> sentence.startsWith("A way out: Allow BR4R32-44-24: builds from "));
        assertThat(whyNot("render-node", "S1-06").rules()).contains("cores", "throughput", "bandwidth");
        assertThat(whyNot("render-node", "S1-06").sentences()).extracting(Sentence::toString).contains(
                "cores: With S1-06, the number of cores reaches 12 at most; the request asks for at least 32 cores.");
    }

    @Test
    void stockTimeAndConditionBarParts() {
        Request request = Request.named("any").withPlatforms(Set.of("BOX")).withRequire(Samples.require().processors(2).make());
        WhyNot late = whyNot(Answers.SHOP, request.withLimit(Samples.limit().leadDays(3).make()), "P12");
        assertThat(late.rules()).containsExactly("lead-time");
        assertThat(late.sentences()).extracting(Sentence::toString).contains("lead-time: With P12, the last part arrives in 4 days at the earliest; "
                + "the request asks for delivery within 3 days.");
        WhyNot used = whyNot(Answers.SHOP, request.withLimit(Samples.limit().conditions(sledwright.domain.Condition.NEW).make()), "P12");
        assertThat(used.rules()).containsExactly("condition");
        WhyNot scarce = whyNot(Answers.SHOP, request.withMachines(3), "P12");
        assertThat(scarce.rules()).containsExactlyInAnyOrder("in-stock", "processor-count");
        assertThat(scarce.sentences()).extracting(Sentence::toString).anyMatch(sentence -> sentence.contains("6 units of P12 (4 in stock)"));
        Map<String, List<Lot>> lots = new HashMap<>(Answers.SHOP.lots());
        lots.remove("P12");
        WhyNot unsold = whyNot(Answers.SHOP.withLots(lots), request, "P12");
        assertThat(unsold.sentences()).extracting(Sentence::toString).contains("in-stock: No lot offers P12.");
        assertThat(unsold.rules()).containsExactly("in-stock");
    }

    @Test
    void aModuleThatTheBoardDoesNotTake() {
        Job.Quote job = job("sled-upgrade");
        String other = job.catalog().modules().stream().filter(module -> module.generation().equals("DDR3")).findFirst().orElseThrow().sku();
        WhyNot barred = whyNot(job.catalog(), job.request(), other);
        assertThat(barred.rules()).contains("memory-generation");
        assertThat(barred.message()).contains("memory-generation: ");
    }

    @Test
    void nothingIsFoundWhereNothingIs() {
        assertThat(whyNot(Answers.SHOP, Answers.ASKED.withLimit(Samples.limit().price(1).make()), "P12").sentences()).extracting(Sentence::toString)
                .containsExactly("No valid build exists, with P12 or without it.");
    }

    @Test
    void timeThatIsUpIsSaid() {
        Search search = new Search(Answers.SHOP);
        Findings findings = search.run(Answers.ASKED, Deadline.never());
        String other = findings.ranked().get(0).needed().containsKey("P12") ? "P10" : "P12";
        WhyNot answer = new Explainer(Answers.SHOP, search, Deadline.in(java.time.Duration.ZERO)).explain(findings, List.of(other)).whyNot().get(0);
        assertThat(answer.verdict()).isEqualTo(WhyNot.Verdict.UNSETTLED);
        assertThat(answer.message()).startsWith("Time ran out");
    }

    @Test
    void aPartThatCostsNothingToUseIsNoMatterOfItsPrice() {
        Request request = Request.named("any").withRequire(Samples.require().cores(20).memoryGb(128).make())
                .withOnHand(Map.of("R16", 8, "R16B", 8));
        assertThat(whyNot(Answers.SHOP, request, "R16B").sentences()).extracting(Sentence::toString).hasSize(2)
                .anyMatch(sentence -> sentence.endsWith("at the price of the best.")).contains("Its price does not matter for that.");
    }

    @Test
    void whatTimeCutsOffIsSaid() {
        Set<String> said = new HashSet<>();
        for (int asked = 0; asked < 300; asked++) {
            int most = asked;
            AtomicInteger questions = new AtomicInteger();
            Search search = new Search(Answers.SHOP);
            Findings findings = search.run(Answers.ASKED, Deadline.never());
            said.addAll(new Explainer(Answers.SHOP, search, Deadline.never().or(() -> questions.getAndIncrement() >= most))
                    .explain(findings, List.of("R32")).whyNot().get(0).sentences().stream().map(Sentence::toString).toList());
        }
        assertThat(said).contains("Time ran out before an answer was found. Maybe allow more time: --time-limit",
                "Time ran out before it was proved that no better build holds it. Maybe allow more time: --time-limit",
                "Time ran out before the price was found at which it would win. Maybe allow more time: --time-limit");
    }
}
