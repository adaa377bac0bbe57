package sledwright.bench;

import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import sledwright.desk.Desk;
import sledwright.desk.QuoteQuestion;
import sledwright.desk.Reply;
import sledwright.desk.Terms;
import sledwright.desk.view.QuoteAnswer;
import sledwright.generator.Status;
import sledwright.input.Source;
import sledwright.report.quote.QuoteJson;

/**
 * How many whole answers a second one desk gives to several threads: read, searched, judged, explained and written as JSON. Nothing is asked
 * twice: each desk has learnt from as many other requests of the same mix before.
 */
final class ThreadsBenchmark {

    private static final Terms TERMS = Terms.within(Duration.ofSeconds(30));

    private final PrintStream out;

    ThreadsBenchmark(PrintStream out) {
        this.out = out;
    }

    /** @param ms of the clock, and of the processor */
    private record Answer(double ms, double busyMs, boolean impossible) {
    }

    void run(Shop shop, int count) throws InterruptedException, ExecutionException, IOException {
        run(shop, "drawn requests for whole machines", drawn(shop, 0, count), drawn(shop, count, count));
        if (shop.name().equals("demo")) {
            List<String> asked = Stream.concat(quotes().stream(), ServeBenchmark.wishes(count, 1).stream()).toList();
            run(shop, "the demo's quotes and wishes", asked, ServeBenchmark.wishes(count, 2));
        }
    }

    private static List<String> drawn(Shop shop, long first, int count) {
        return LongStream.range(first, first + count).mapToObj(shop.requests()::equipped).toList();
    }

    private static List<String> quotes() throws IOException {
        List<String> quotes = new ArrayList<>();
        for (Path file : DemoQuotes.files()) {
            quotes.add(Files.readString(file));
        }
        return quotes;
    }

    private void run(Shop shop, String mix, List<String> asked, List<String> before) throws InterruptedException, ExecutionException {
        for (int threads : new int[] {1, 2, 4}) {
            Desk desk = Desk.of(shop.catalog());
            pass(desk, before, 2);
            long start = System.nanoTime();
            List<Answer> answers = pass(desk, asked, threads);
            double seconds = (System.nanoTime() - start) / 1e9;
            if (threads == 1) {
                out.printf(Locale.ROOT, "== %s, %s: %d, of which %d cannot be met%n%n", shop.name(), mix, asked.size(),
                        answers.stream().filter(Answer::impossible).count());
                out.println("threads  answers/s   median ms   95 % ms  worst ms   ms of the processor each   heap MB");
            }
            out.printf(Locale.ROOT, "%7d %10.0f   %s %26.1f %9d%n", threads, asked.size() / seconds,
                    Spread.of(answers.stream().mapToDouble(Answer::ms)).columns(),
                    answers.stream().mapToDouble(Answer::busyMs).average().orElse(0), heapMb());
        }
        out.println();
    }

    private static List<Answer> pass(Desk desk, List<String> asked, int threads) throws InterruptedException, ExecutionException {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<Answer>> waiting = new ArrayList<>();
            asked.forEach(text -> waiting.add(pool.submit(() -> answer(desk, Source.of("a page", text.getBytes(StandardCharsets.UTF_8))))));
            List<Answer> answers = new ArrayList<>();
            for (Future<Answer> one : waiting) {
                answers.add(one.get());
            }
            return answers;
        } finally {
            pool.shutdown();
        }
    }

    private static Answer answer(Desk desk, Source source) {
        ThreadMXBean clock = ManagementFactory.getThreadMXBean();
        long start = System.nanoTime();
        long busy = clock.getCurrentThreadCpuTime();
        if (!(desk.quote(source, QuoteQuestion.plain(), TERMS) instanceof Reply.Answered<?> answered)
                || QuoteJson.of(((QuoteAnswer) answered.answer()).view()).isEmpty()) {
            throw new IllegalStateException("not answered (" + source.name() + ")");
        }
        return new Answer((System.nanoTime() - start) / 1e6, (clock.getCurrentThreadCpuTime() - busy) / 1e6,
                ((QuoteAnswer) answered.answer()).view().proof().status() == Status.IMPOSSIBLE);
    }

    private static long heapMb() {
        System.gc();
        return (Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory()) >> 20;
    }
}
