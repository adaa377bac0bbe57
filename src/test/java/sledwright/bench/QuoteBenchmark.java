package sledwright.bench;

import java.io.PrintStream;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.LongFunction;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import sledwright.domain.Request;
import sledwright.generator.Search;
import sledwright.generator.Status;

/**
 * How long the search takes over seeded random requests: median, 95 percent and worst, in all, by objective and by memory
 * mode, with the slowest requests to try again.
 *
 * <p>A shop is measured twice after a pass that warms up the virtual machine. <b>Kept</b>: one search answers all requests, as
 * a long-lived process would, so that shapes are at hand. <b>Fresh</b>: each request has a search of its own, as in a
 * process for each quote, but for the compiled code.
 */
final class QuoteBenchmark {

    private static final int SLOWEST = 5;

    private final PrintStream out;
    private final Duration limit;

    /** @param limit most time of one search; the program's own default is 30 s */
    QuoteBenchmark(PrintStream out, Duration limit) {
        this.out = out;
        this.limit = limit;
    }

    /** Measures requests of the seeds from {@code first} on. */
    void run(Shop shop, long first, int count) {
        run(shop, first, count, shop.requests()::request);
    }

    /** Measures requests of which half ask for storage and a third for cards. */
    void runWhole(Shop shop, long first, int count) {
        run(shop, first, count, shop.requests()::equipped);
    }

    private void run(Shop shop, long first, int count, LongFunction<String> request) {
        out.printf(Locale.ROOT, "== %s: %d platforms, %d processors, %d modules; read in %.0f ms; seeds %d to %d; at most %d s each%n",
                shop.name(), shop.catalog().platforms().size(), shop.catalog().processors().size(), shop.catalog().modules().size(),
                shop.readMillis(), first, first + count - 1, limit.toSeconds());
        List<String> texts = new ArrayList<>();
        List<Request> requests = new ArrayList<>();
        for (long seed = first; seed < first + count; seed++) {
            String yaml = request.apply(seed);
            texts.add(yaml);
            requests.add(shop.request(yaml));
        }
        Search kept = new Search(shop.catalog());
        pass(first, texts, requests, () -> kept);
        report("kept", pass(first, texts, requests, () -> kept));
        report("fresh", pass(first, texts, requests, () -> new Search(shop.catalog())));
    }

    private List<Sample> pass(long first, List<String> texts, List<Request> requests, Supplier<Search> search) {
        List<Sample> samples = new ArrayList<>();
        for (int i = 0; i < texts.size(); i++) {
            samples.add(Sample.of(search.get(), first + i, texts.get(i), requests.get(i), limit));
        }
        return samples;
    }

    private void report(String pass, List<Sample> samples) {
        out.printf("%n%-28s %5s %9s %9s %9s   %s%n", "-- " + pass + ", ms", "n", "median", "95 %", "worst", "answers");
        row("all", samples);
        row("all, time of the thread", samples, Sample::cpuMillis);
        by(samples, sample -> sample.request().objective().label());
        by(samples, sample -> sample.request().require().mode().label());
        by(samples, sample -> sample.request().equipment().volumes().isEmpty() ? sample.request().equipment().cards().isEmpty() ? "bare" : "with cards"
                : "with storage");
        by(samples, sample -> sample.request().machines() == 1 ? "1 machine" : sample.request().machines() < 6 ? "2 to 5" : "6 and more");
        out.printf("%nSlowest:%n");
        samples.stream().sorted(Comparator.comparingDouble(Sample::millis).reversed()).limit(SLOWEST)
                .forEach(sample -> out.printf(Locale.ROOT, "%.1f ms, %s%n%s%n", sample.millis(), sample.findings().status().label(),
                        sample.yaml()));
    }

    private void by(List<Sample> samples, Function<Sample, String> trait) {
        Map<String, List<Sample>> groups = samples.stream().collect(Collectors.groupingBy(trait, TreeMap::new, Collectors.toList()));
        groups.forEach(this::row);
    }

    private void row(String name, List<Sample> samples) {
        row(name, samples, Sample::millis);
    }

    private void row(String name, List<Sample> samples, Function<Sample, Double> time) {
        Spread spread = Spread.of(samples.stream().mapToDouble(time::apply));
        out.printf("%-28s %5d %s   %s%n", name, samples.size(), spread.columns(), answers(samples));
    }

    private static String answers(List<Sample> samples) {
        String counts = Arrays.stream(Status.values())
                .map(status -> samples.stream().filter(sample -> sample.findings().status() == status).count() + " " + status.label())
                .filter(text -> !text.startsWith("0 ")).collect(Collectors.joining(", "));
        long doubted = samples.stream().filter(sample -> sample.findings().status() == Status.PROVED && !sample.findings().complete()).count();
        return doubted == 0 ? counts : counts + " (" + doubted + " with alternatives in doubt)";
    }
}
