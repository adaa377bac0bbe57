package sledwright.book;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import sledwright.book.store.BookPlace;
import sledwright.book.store.SharedServer;
import sledwright.desk.Terms;

/**
 * A review of quotes that all ask for something else, shared by several processes over PostgreSQL, each held to one core: the processor's time of each. The
 * longest of them is what a review takes at least where each process has a machine of its own.
 */
public final class ReviewBenchmark {

    private static final Path SHOP = Path.of("catalogs/heronfold-yard");
    private static final List<String> FILES = List.of("render-node", "cache-node", "small-web-node", "virtual-machine-host", "file-server");

    /** So that no answer hangs on how busy the machine is. */
    private static final Terms LONG = Terms.within(Duration.ofMinutes(10));

    private ReviewBenchmark() {
    }

    /** @param quotes how many are reviewed, by one process, by two, by three */
    public static void run(PrintStream out, int quotes) throws IOException {
        List<Reviewed> expected = List.of();
        for (int processes = 1; processes <= 3; processes++) {
            BookPlace at = SharedServer.fresh();
            try (Book book = Book.open(at, "benchmark")) {
                for (int quote = 0; quote < quotes; quote++) {
                    book.save(version(quote), "customer " + quote, "", Shelf.ANNA);
                }
                List<Process> workers = new ArrayList<>();
                for (int process = 0; process < processes; process++) {
                    workers.add(worker(at.address().orElseThrow()));
                }
                List<BufferedReader> said = workers.stream().map(Process::inputReader).toList();
                for (BufferedReader worker : said) {
                    worker.readLine();
                }
                long start = System.nanoTime();
                for (Process worker : workers) {
                    worker.getOutputStream().close();
                }
                List<Double> spent = new ArrayList<>();
                for (BufferedReader worker : said) {
                    spent.add(Double.valueOf(worker.readLine()));
                }
                double seconds = (System.nanoTime() - start) / 1e9;
                // All of it is worked out by now, so that this reads what the processes have found.
                List<Reviewed> found = book.review(SHOP, false, Shelf.ANNA, LONG);
                expected = expected.isEmpty() ? found : expected;
                out.printf(Locale.ROOT, "%d quotes, %d processes: %.1f s of the processor in all, longest %.1f s; %.1f s by the clock; outcomes as of one process: %s%n", quotes,
                        processes, spent.stream().mapToDouble(each -> each).sum(), spent.stream().mapToDouble(each -> each).max().orElseThrow(), seconds,
                        found.toString().equals(expected.toString()));
            }
        }
    }

    /**
     * A process that takes part once its standard input is closed, and prints how many seconds of the processor it then took.
     *
     * @param arguments the book's address
     */
    public static void main(String[] arguments) throws IOException {
        try (Book book = Book.open(BookPlace.named(arguments[0]).orElseThrow(), "benchmark")) {
            System.out.println("ready");
            System.in.read();
            double before = cpuSeconds();
            book.review(SHOP, false, Shelf.ANNA, LONG);
            System.out.println(cpuSeconds() - before);
        }
    }

    private static double cpuSeconds() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime() / 1e9;
    }

    private static Process worker(String book) throws IOException {
        return new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx1g", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1",
                "-XX:ActiveProcessorCount=1", "-cp",
                System.getProperty("java.class.path"), ReviewBenchmark.class.getName(), book).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    }

    private static NewVersion version(int quote) throws IOException {
        NewVersion like = Shelf.version(List.of(Map.of("L1", 1)), Shelf.DAY.plusDays(14));
        String file = FILES.get(quote % FILES.size());
        byte[] request = Files.readAllBytes(Path.of("scenarios", file + ".yaml"));
        int step = quote / FILES.size();
        Asked asked = new Asked(file, request, List.of("require.cores=" + (4 + step % 40), "require.memory_gb=" + 16 * (1 + step / 40)), SHOP);
        return new NewVersion(asked, new NewVersion.Head(file, 1, "proved", Optional.of(Shelf.DAY.plusDays(14))), like.catalog(), like.options(), List.of(file), like.papers());
    }
}
