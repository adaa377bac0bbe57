package sledwright.bench;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import sledwright.compare.Comparer;
import sledwright.compare.Comparison;
import sledwright.compare.Cost;
import sledwright.domain.Energy;
import sledwright.generator.Axis;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.request.Job;

/**
 * How long the comparisons of the demo's quotes take, every build judged: all figures over the price, over price and total cost, and
 * platform by platform. Each has a search of its own, after passes that warm up the virtual machine.
 */
final class CompareBenchmark {

    private static final int PASSES = 3;
    private static final Duration LIMIT = Duration.ofSeconds(30);
    /** Four years at 0.30 a kWh and six tenths of the load. */
    private static final Energy ENERGY = new Energy(4, 30, 0.6);

    private final PrintStream out;

    CompareBenchmark(PrintStream out) {
        this.out = out;
    }

    void run() throws IOException {
        out.printf("%-28s %8s %6s %8s %6s %8s %6s%n", "ms and points", "price", "", "total", "", "by sku", "");
        List<List<Double>> times = List.of(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        for (Path file : DemoQuotes.files()) {
            Job.Quote job = DemoQuotes.read(file, List.of());
            StringBuilder row = new StringBuilder("%-28s".formatted(job.name()));
            List<Cost> price = List.of(Cost.PRICE);
            measure(job, Optional.empty(), price, false, row, times.get(0));
            measure(job, Optional.of(ENERGY), Arrays.asList(Cost.values()), false, row, times.get(1));
            measure(job, Optional.empty(), price, true, row, times.get(2));
            out.println(row);
        }
        for (List<Double> kind : times) {
            out.printf("median, 95 %%, worst %s%n", Spread.of(kind.stream().mapToDouble(Double::doubleValue)).columns());
        }
    }

    private static void measure(Job.Quote job, Optional<Energy> energy, List<Cost> costs, boolean byPlatform, StringBuilder row, List<Double> times) {
        double millis = 0;
        Comparison found = null;
        for (int pass = 0; pass < PASSES; pass++) {
            long start = System.nanoTime();
            found = new Comparer(job.catalog(), new Search(job.catalog())).compare(job.request(), energy, costs, Arrays.asList(Axis.values()), byPlatform, Deadline.in(LIMIT));
            millis = (System.nanoTime() - start) / 1e6;
        }
        times.add(millis);
        row.append(String.format(Locale.ROOT, " %8.0f %5d%s", millis, found.curves().stream().mapToInt(curve -> curve.points().size()).sum(),
                found.curves().stream().allMatch(curve -> curve.bound().isEmpty()) ? " " : "?"));
    }
}
