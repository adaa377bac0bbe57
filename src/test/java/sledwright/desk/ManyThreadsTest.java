package sledwright.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import sledwright.catalog.CatalogReader;
import sledwright.domain.Catalog;
import sledwright.domain.MemoryModule;
import sledwright.domain.Objective;
import sledwright.generator.Status;
import sledwright.input.Source;
import sledwright.report.compare.CompareJson;
import sledwright.report.quote.QuoteJson;
import sledwright.samples.RequestGenerator;

/**
 * Four threads at one desk answer as one thread at a desk of its own: quotes, why-nots, what cannot be built, comparisons, with unlike
 * deadlines of which some are over before they begin. More by {@code -Dsledwright.answers=500}, for each thread; other ones by
 * {@code -Dsledwright.seed=100001}.
 */
class ManyThreadsTest {

    private static final int THREADS = 4;
    private static final Path SHOP = Path.of("catalogs/heronfold-yard");
    private static final long SEED = Long.getLong("sledwright.seed", 1);
    private static final int ANSWERS = Integer.getInteger("sledwright.answers", 10);

    /** Long enough for every answer to be whole; the answers of the others may be cut off anywhere. */
    private static final List<Duration> WHOLE = List.of(Duration.ofMinutes(5), Duration.ofMinutes(7));
    private static final List<Duration> CUT = List.of(Duration.ZERO, Duration.ofMillis(3));

    private record Question(long seed, Source source, QuoteQuestion asked, boolean compared, Duration time) {

        boolean whole() {
            return WHOLE.contains(time);
        }
    }

    /** What came back: the bytes that a user would get, and what is claimed by them. */
    private record Answer(String json, Status status, Optional<Objective> objective, Optional<BigDecimal> best, Optional<BigDecimal> bound) {

        /** Nothing that is claimed here is refuted by an answer that is whole. */
        boolean agreesWith(Answer whole) {
            int sign = objective.orElseThrow() == Objective.CHEAPEST || objective.get() == Objective.BEST_VALUE ? 1 : -1;
            boolean bestHolds = best.isEmpty() || whole.best.isPresent() && sign * best.get().compareTo(whole.best.get()) >= 0;
            return bestHolds && (bound.isEmpty() || whole.best.isEmpty() || sign * bound.get().compareTo(whole.best.get()) <= 0);
        }
    }

    private static final Catalog CATALOG = CatalogReader.read(SHOP);
    private static final RequestGenerator REQUESTS = new RequestGenerator("shop", SHOP);

    private static Question question(long seed) {
        Random random = new Random(seed);
        boolean compared = random.nextInt(12) == 0;
        Source source = compared ? Source.of(Path.of("scenarios/small-web-node.yaml"))
                : Source.of("a page", (random.nextBoolean() ? REQUESTS.request(seed) : REQUESTS.equipped(seed)).getBytes(StandardCharsets.UTF_8));
        List<MemoryModule> modules = CATALOG.modules();
        List<String> whyNot = random.nextInt(4) == 0 ? List.of(modules.get(random.nextInt(modules.size())).sku()) : List.of();
        List<Duration> times = random.nextInt(5) == 0 ? CUT : WHOLE;
        return new Question(seed, source, new QuoteQuestion(List.of(), whyNot, false), compared, times.get(random.nextInt(times.size())));
    }

    private static Answer answer(Desk desk, Question question, Duration time) {
        Terms terms = Terms.within(time);
        if (question.compared()) {
            var view = answered(desk.compare(question.source(), CompareQuestion.plain(), terms), question).view();
            return new Answer(CompareJson.of(view), Status.PROVED, Optional.empty(), Optional.empty(), Optional.empty());
        }
        var view = answered(desk.quote(question.source(), question.asked(), terms), question).view();
        return new Answer(QuoteJson.of(view), view.proof().status(), Optional.of(view.objective()), view.proof().best(), view.proof().bound());
    }

    private static <A> A answered(Reply<A> reply, Question question) {
        assertThat(reply).as("seed %d: %s", question.seed(), reply).isInstanceOf(Reply.Answered.class);
        return ((Reply.Answered<A>) reply).answer();
    }

    @Test
    void fourThreadsAnswerAsOneDoes() throws Exception {
        List<Question> questions = new ArrayList<>();
        for (long seed = SEED; seed < SEED + (long) THREADS * ANSWERS; seed++) {
            questions.add(question(seed));
        }
        Desk shared = Desk.of(CATALOG);
        ExecutorService threads = Executors.newFixedThreadPool(THREADS);
        List<Future<Answer>> answers = new ArrayList<>();
        questions.forEach(one -> answers.add(threads.submit(() -> answer(shared, one, one.time()))));
        threads.shutdown();
        Desk alone = Desk.of(CATALOG);
        int whole = 0;
        for (int i = 0; i < questions.size(); i++) {
            Question question = questions.get(i);
            Answer found = answers.get(i).get();
            Answer reference = answer(alone, question, WHOLE.get(0));
            String seed = "seed " + question.seed();
            if (question.whole()) {
                assertThat(found.json()).as(seed).isEqualTo(reference.json());
                whole++;
            } else if (found.status() != Status.BEST_FOUND && !question.compared()) {
                assertThat(found.status()).as(seed).isEqualTo(reference.status());
                assertThat(found.best()).as(seed).isEqualTo(reference.best());
            } else if (!question.compared()) {
                assertThat(found.agreesWith(reference)).as("%s: %s against %s", seed, found.json(), reference.json()).isTrue();
            }
        }
        assertThat(whole).isBetween(questions.size() / 2, questions.size() - 1);
    }
}
