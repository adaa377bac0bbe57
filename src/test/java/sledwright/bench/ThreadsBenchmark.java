package sledwright.bench;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import sledwright.desk.Desk;
import sledwright.desk.QuoteQuestion;
import sledwright.desk.Reply;
import sledwright.desk.Terms;
import sledwright.desk.view.QuoteAnswer;
import sledwright.input.Source;
import sledwright.report.quote.QuoteJson;

/** How many whole answers a second one desk gives to several threads: read, searched, judged, explained and written as JSON. */
final class ThreadsBenchmark {

    private static final Terms TERMS = Terms.within(Duration.ofSeconds(30));

    private final PrintStream out;

    ThreadsBenchmark(PrintStream out) {
        this.out = out;
    }

    void run(Shop shop, int count) throws InterruptedException, ExecutionException {
        List<Source> sources = new ArrayList<>();
        for (long seed = 0; seed < count; seed++) {
            sources.add(Source.of("a page", shop.requests().equipped(seed).getBytes(StandardCharsets.UTF_8)));
        }
        Desk desk = Desk.of(shop.catalog());
        pass(desk, sources, 2);
        out.printf(Locale.ROOT, "== %s, %d requests, each asked once in a pass, after one that warms up%n%n", shop.name(), count);
        out.println("threads  answers/s   median ms   95 % ms  worst ms   heap MB");
        for (int threads : new int[] {1, 2, 4}) {
            long start = System.nanoTime();
            Spread spread = Spread.of(pass(desk, sources, threads).stream().mapToDouble(Double::doubleValue));
            double seconds = (System.nanoTime() - start) / 1e9;
            out.printf(Locale.ROOT, "%7d %10.0f   %s %9d%n", threads, count / seconds, spread.columns(), heapMb());
        }
    }

    /** Milliseconds of each answer. */
    private static List<Double> pass(Desk desk, List<Source> sources, int threads) throws InterruptedException, ExecutionException {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<Double>> answers = new ArrayList<>();
            sources.forEach(source -> answers.add(pool.submit(() -> millis(desk, source))));
            List<Double> millis = new ArrayList<>();
            for (Future<Double> answer : answers) {
                millis.add(answer.get());
            }
            return millis;
        } finally {
            pool.shutdown();
        }
    }

    private static double millis(Desk desk, Source source) {
        long start = System.nanoTime();
        if (!(desk.quote(source, QuoteQuestion.plain(), TERMS) instanceof Reply.Answered<?> answered)
                || QuoteJson.of(((QuoteAnswer) answered.answer()).view()).isEmpty()) {
            throw new IllegalStateException("not answered (" + source.name() + ")");
        }
        return (System.nanoTime() - start) / 1e6;
    }

    private static long heapMb() {
        System.gc();
        return (Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory()) >> 20;
    }
}
