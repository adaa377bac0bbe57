package sledwright.bench;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import sledwright.domain.Energy;
import sledwright.generator.Axis;
import sledwright.generator.Deadline;
import sledwright.generator.Search;
import sledwright.generator.Staircase;
import sledwright.generator.Staircases;
import sledwright.request.Job;
import sledwright.request.Kind;
import sledwright.request.RequestReader;

/** How long the staircases of the demo's quotes take, over the price and over price and energy, after a pass that warms up. */
final class CompareBenchmark {

    private final PrintStream out;

    CompareBenchmark(PrintStream out) {
        this.out = out;
    }

    void run(Path scenarios) throws IOException {
        List<Path> files;
        try (Stream<Path> found = Files.list(scenarios)) {
            files = found.sorted().filter(file -> RequestReader.open(file, List.of()).kind() == Kind.QUOTE).toList();
        }
        for (Path file : files) {
            Job job = RequestReader.read(file, List.of(), Optional.empty(), Set.of(Kind.QUOTE));
            for (Optional<Energy> energy : List.of(Optional.<Energy>empty(), Optional.of(new Energy(4, 30, 0.6)))) {
                for (int pass = 0; pass < 3; pass++) {
                    long start = System.nanoTime();
                    Deadline deadline = Deadline.in(Duration.ofSeconds(60));
                    var found = new sledwright.compare.Comparer(job.catalog()).compare(job.request(), energy, energy.isPresent() ? List.of(sledwright.compare.Cost.values()): List.of(sledwright.compare.Cost.PRICE), List.of(Axis.values()), false, deadline);
                    if (pass == 2) out.printf(Locale.ROOT, "%-32s %s %8.1f ms %d %s%n", file.getFileName(), energy.isPresent(), (System.nanoTime() - start) / 1e6, found.curves().stream().mapToInt(c->c.points().size()).sum(), found.status());
                }
            }
        }
    }
}
