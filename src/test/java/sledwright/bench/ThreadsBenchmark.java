package sledwright.bench;

import java.io.PrintStream;
import java.lang.management.ManagementFactory;
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
        out.println("threads  answers/s   median ms   95 % ms  worst ms   processor ms an answer   heap MB");
        for (int threads : new int[] {1, 2, 4}) {
            long start = System.nanoTime();
            List<Took> all = pass(desk, sources, threads);
            double seconds = (System.nanoTime() - start) / 1e9;
            out.printf(Locale.ROOT, "%7d %10.0f   %s %24.1f %9d%n", threads, count / seconds, Spread.of(all.stream().mapToDouble(Took::millis)).columns(),
                    all.stream().mapToDouble(Took::cpuMillis).average().orElse(0), heapMb());
        }
    }

    /** What an answer took by the clock, and of the processor. */
    private record Took(double millis, double cpuMillis) {
    }

    private static List<Took> pass(Desk desk, List<Source> sources, int threads) throws InterruptedException, ExecutionException {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<Took>> answers = new ArrayList<>();
            sources.forEach(source -> answers.add(pool.submit(() -> took(desk, source))));
            List<Took> all = new ArrayList<>();
            for (Future<Took> answer : answers) {
                all.add(answer.get());
            }
            return all;
        } finally {
            pool.shutdown();
        }
    }

    private static Took took(Desk desk, Source source) {
        long cpu = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        long start = System.nanoTime();
        if (!(desk.quote(source, QuoteQuestion.plain(), TERMS) instanceof Reply.Answered<?> answered)
                || QuoteJson.of(((QuoteAnswer) answered.answer()).view()).isEmpty()) {
            throw new IllegalStateException("not answered (" + source.name() + ")");
        }
        return new Took((System.nanoTime() - start) / 1e6, (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - cpu) / 1e6);
    }

    private static long heapMb() {
        System.gc();
        return (Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory()) >> 20;
    }
}
