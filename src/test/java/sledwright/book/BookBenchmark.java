package sledwright.book;

import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import sledwright.book.store.BookPlace;
import sledwright.input.Source;

/** How fast a book is: quotes saved a second by eight at once, and a review of quotes of the demo. */
public final class BookBenchmark {

    private static final Path SHOP = Path.of("catalogs/heronfold-yard");
    private static final int WRITERS = 8;

    private BookBenchmark() {
    }

    /** @param arguments how many quotes; anything beside it: no review */
    public static void main(String[] arguments) throws Exception {
        int quotes = Integer.parseInt(arguments[0]);
        PrintStream out = System.out;
        Path folder = Files.createTempDirectory("book");
        try (Book book = Book.open(BookPlace.of(folder.resolve("b.db")), "benchmark")) {
            List<NewVersion> kinds = kinds();
            long start = System.nanoTime();
            long cpu = cpu();
            long[] each = save(book, quotes, kinds);
            double seconds = (System.nanoTime() - start) / 1e9;
            double cpuMs = (cpu() - cpu) / 1e6 / quotes;
            Arrays.sort(each);
            out.printf("%d quotes saved by %d at once: %.0f a second; median %.1f ms, worst %.1f ms; %.2f ms of processor each%n", quotes, WRITERS,
                    quotes / seconds, each[each.length / 2] / 1e6, each[each.length - 1] / 1e6, cpuMs);
            if (arguments.length > 1) {
                return;
            }
            start = System.nanoTime();
            List<Reviewed> all = book.review(SHOP, false, Shelf.ANNA, Shelf.TERMS);
            out.printf("%d reviewed in %.1f s, %d of them impossible%n", all.size(), (System.nanoTime() - start) / 1e9,
                    all.stream().filter(one -> one.outcome() == Reviewed.Outcome.IMPOSSIBLE).count());
        }
    }

    private static long cpu() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime();
    }

    private static List<NewVersion> kinds() throws IOException {
        List<NewVersion> kinds = new ArrayList<>();
        byte[] paper = new byte[60_000];
        for (int cores = 4; cores < 44; cores++) {
            for (String file : List.of("render-node", "cache-node", "small-web-node", "virtual-machine-host", "file-server")) {
                kinds.add(version(file, cores, paper));
            }
        }
        return kinds;
    }

    private static long[] save(Book book, int quotes, List<NewVersion> kinds) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(WRITERS);
        try {
            List<Callable<Long>> tasks = IntStream.range(0, quotes).<Callable<Long>>mapToObj(one -> () -> {
                long start = System.nanoTime();
                book.save(kinds.get(one % kinds.size()), "customer " + one % 300, "", Shelf.ANNA);
                return System.nanoTime() - start;
            }).toList();
            long[] each = new long[quotes];
            int place = 0;
            for (Future<Long> task : threads.invokeAll(tasks)) {
                each[place++] = task.get();
            }
            return each;
        } finally {
            threads.shutdown();
            threads.awaitTermination(1, TimeUnit.MINUTES);
        }
    }

    /** As large as a quote of the demo with all its papers. */
    private static NewVersion version(String file, int cores, byte[] paper) throws IOException {
        NewVersion like = Shelf.version(List.of(Map.of("L1", 1, "L2", 2, "L3", 8), Map.of("L1", 1, "L4", 2), Map.of("L5", 1)), Shelf.DAY.plusDays(14));
        byte[] request = Files.readAllBytes(Path.of("scenarios", file + ".yaml"));
        Asked asked = new Asked(Source.of(Path.of(file)).plainName(), request, List.of("require.cores=" + cores), SHOP);
        Random random = new Random(cores);
        random.nextBytes(paper);
        byte[] text = "A line of a quote with its figures and a price. ".repeat(400).getBytes(StandardCharsets.UTF_8);
        return new NewVersion(asked, new NewVersion.Head(file, 1, "proved", Optional.of(Shelf.DAY.plusDays(14))), like.catalog(), like.options(), List.of(file),
                NewVersion.packed(Map.of("text.shop", text, "json.shop", text, "html.customer", text, "html.shop", text, "pdf.customer", paper.clone(),
                "pdf.shop", paper.clone())));
    }
}
