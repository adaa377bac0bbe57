package sledwright.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import sledwright.desk.view.OtherLimits;
import sledwright.desk.view.QuoteAnswer;
import sledwright.generator.Status;
import sledwright.input.Fault;
import sledwright.input.Source;

class DeskTest {

    private static final Path SHOP = Path.of("catalogs/heronfold-yard");
    private static final Source NODE = Source.of(Path.of("scenarios/render-node.yaml"));
    private static final Terms TERMS = Terms.within(Duration.ofSeconds(30));

    private final Desk desk = Desk.at(SHOP);

    private static Source said(String text) {
        return Source.of("a page", text.getBytes(StandardCharsets.UTF_8));
    }

    private static <A> A answer(Reply<A> reply) {
        assertThat(reply).isInstanceOf(Reply.Answered.class);
        return ((Reply.Answered<A>) reply).answer();
    }

    @Test
    void aQuoteIsAnsweredWithItsView() {
        QuoteAnswer answer = answer(Desk.open().quote(NODE, QuoteQuestion.plain(), TERMS));
        assertThat(answer.view().proof().status()).isEqualTo(Status.PROVED);
        assertThat(answer.view().alternatives()).hasSameSizeAs(answer.outcome().ranked()).isNotEmpty();
    }

    /** Without time for a search of its own, the limit is named all the same, with nothing beside it. */
    @Test
    void otherLimitsBeginWithTheAnswerThatIsThere() {
        Desk keeping = answer(Desk.keeping(SHOP));
        QuoteAnswer answer = answer(keeping.quote(said("kind: quote\nrequire: {cores: 20, memory_gb: 256}\nlimit: {lead_days: 3}\n"), QuoteQuestion.plain(), TERMS));
        OtherLimits hurried = keeping.otherLimits(answer, Terms.within(Duration.ZERO));
        assertThat(hurried.key()).isEqualTo("limit.lead_days");
        assertThat(hurried.waits()).isEmpty();
        assertThat(keeping.otherLimits(answer, TERMS).waits()).isNotEmpty();
    }

    /** What electricity costs is no part of the price, which is what less of is better here. */
    @Test
    void otherLimitsAreComparedByThePriceWhereEnergyIsCounted() {
        Desk keeping = answer(Desk.keeping(SHOP));
        QuoteAnswer power = answer(keeping.quote(Source.of(Path.of("scenarios/four-years-of-power.yaml")), QuoteQuestion.plain(), TERMS));
        assertThat(power.price()).hasValue(new BigDecimal("427.36"));
        for (OtherLimits.Wait wait : keeping.otherLimits(power, TERMS).waits()) {
            String days = "limit.lead_days=" + wait.days();
            BigDecimal there = answer(keeping.quote(Source.of(Path.of("scenarios/four-years-of-power.yaml")), new QuoteQuestion(List.of(days), List.of(), false), TERMS)).price().orElseThrow();
            assertThat(wait.change()).as(days).isEqualTo(there.subtract(power.price().orElseThrow()));
        }
        assertThat(keeping.otherLimits(power, TERMS).waits()).extracting(OtherLimits.Wait::change).contains(new BigDecimal("1.64"));
        String plain = "kind: quote\nrequire: {cores: 24}\nlimit: {conditions: [new, refurbished]}\n";
        List<OtherLimits.Wider> without = keeping.otherLimits(answer(keeping.quote(said(plain), QuoteQuestion.plain(), TERMS)), TERMS).conditions();
        QuoteAnswer counted = answer(keeping.quote(said(plain + "energy: {years: 4, price_per_kwh: 0.3}\n"), QuoteQuestion.plain(), TERMS));
        assertThat(keeping.otherLimits(counted, TERMS).conditions()).isEqualTo(without).isNotEmpty();
    }

    @Test
    void whatCannotBeBuiltIsAnAnswer() {
        QuoteAnswer answer = answer(desk.quote(said("kind: quote\nlimit: {price: 1}\nrequire: {cores: 4}\n"), QuoteQuestion.plain(), TERMS));
        assertThat(answer.view().proof().status()).isEqualTo(Status.IMPOSSIBLE);
        assertThat(answer.view().explanation().conflicts()).isNotEmpty();
    }

    @Test
    void faultsAreValues() {
        Reply<QuoteAnswer> reply = desk.quote(said("kind: quote\nrequire: {cores: many}\nforbid: [BITTERN-HS-11]\n"), QuoteQuestion.plain(), TERMS);
        assertThat(reply).isEqualTo(new Reply.Faulty<QuoteAnswer>(List.of(
                new Fault("a page", 2, "require.cores \"many\": must be a number", "many"),
                new Fault("a page", 3, "forbid \"BITTERN-HS-11\": is no part of the catalogue, did you mean BITTERN-HS-1?", "BITTERN-HS-11"))));
    }

    @Test
    void aQuestionThatCannotBeAnsweredSaysWhichPartOfIt() {
        Reply<QuoteAnswer> reply = desk.quote(NODE, new QuoteQuestion(List.of(), List.of("BITTERN-HS-11"), false), TERMS);
        assertThat(reply).isEqualTo(new Reply.Misasked<QuoteAnswer>(new Misasking("why-not", "BITTERN-HS-11", " is no part of the catalogue, did you mean BITTERN-HS-1?", Optional.empty())));
    }

    @Test
    void nobodyWaitsForWhatIsCancelled() {
        QuoteAnswer answer = answer(desk.quote(NODE, QuoteQuestion.plain(), TERMS.until(() -> true)));
        assertThat(answer.view().proof().status()).isEqualTo(Status.BEST_FOUND);
    }
}
