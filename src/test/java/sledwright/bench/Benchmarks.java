package sledwright.bench;

import java.io.PrintStream;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import sledwright.book.ReviewBenchmark;
import sledwright.oracle.DemoPace;
import sledwright.oracle.SolverPace;

/** Runs a benchmark by name; docs/performance.md has the commands. */
public final class Benchmarks {

    private static final String USAGE = """
            A benchmark is one of
              quote [SHOP [COUNT [FIRST_SEED [SECONDS]]]]   SHOP is demo or x10 ...; otherwise demo 500 0 30
              whole [SHOP [COUNT [FIRST_SEED [SECONDS]]]]   the same, half with storage and a third with cards
              solver [COUNT]                                CP-SAT beside the search, on random cases; otherwise 60
              solver-demo [COUNT [SECONDS]]                 the same on requests for one machine of the demo, with settings of CP-SAT; otherwise 20 60
              explain [EVERY]                               why not, and conflicts, of the demo's quotes; of every EVERYth part
              compare                                       the frontiers of the demo's quotes
              scale catalogue|lots|machines|order [COUNT]   how the time of COUNT requests grows with one of these; otherwise 40
              review [QUOTES]                               a review by one process, by two, by three over PostgreSQL; otherwise 100
              threads [SHOP [COUNT]]                        whole answers a second of 1, 2 and 4 threads; otherwise demo 500
              serve [WISHES [SECONDS]]                      the page for one client, for eight and in a browser; otherwise 200 10
              order [MACHINES ...]                          orders of that many machines on the demo; otherwise 10 50 200 2000
              gaps [COUNT [SECONDS [FIRST [busy]]]]         orders whose bounds are hard to close, on the demo; otherwise 40 10 0; busy: by the processor's time
              allocate [PROMISES ...]                       promises drawn anew on the demo; otherwise 20 100 500
              allocate-tight [PROMISES ...]                 the same where hardly enough is left
              restock [SHOP [CLASSES [PARTS [SAMPLES [BUDGET]]]]]   a plan on random classes and offers; otherwise demo 20 250 1000 20000""";

    private Benchmarks() {
    }

    /** Words of a benchmark, in one argument or several. */
    public static void main(String[] arguments) throws Exception {
        List<String> words = Arrays.stream(String.join(" ", arguments).trim().split("\\s+")).toList();
        run(System.out, words.get(0), words.subList(1, words.size()));
    }

    private static void run(PrintStream out, String name, List<String> words) throws Exception {
        switch (name) {
            case "quote" -> new QuoteBenchmark(out, Duration.ofSeconds(Long.parseLong(word(words, 3, "30"))))
                    .run(Shop.named(word(words, 0, "demo")), Long.parseLong(word(words, 2, "0")), Integer.parseInt(word(words, 1, "500")));
            case "whole" -> new QuoteBenchmark(out, Duration.ofSeconds(Long.parseLong(word(words, 3, "30"))))
                    .runWhole(Shop.named(word(words, 0, "demo")), Long.parseLong(word(words, 2, "0")), Integer.parseInt(word(words, 1, "500")));
            case "solver" -> SolverPace.print(out, Integer.parseInt(word(words, 0, "60")));
            case "solver-demo" -> {
                Shop demo = Shop.demo();
                DemoPace.print(out, demo.catalog(), seed -> demo.request(demo.requests().request(seed, "cheapest")),
                        Integer.parseInt(word(words, 0, "20")), Integer.parseInt(word(words, 1, "60")));
            }
            case "explain" -> new ExplainBenchmark(out).run(Integer.parseInt(word(words, 0, "40")));
            case "restock" -> new RestockBenchmark(out).run(Shop.named(word(words, 0, "demo")), Integer.parseInt(word(words, 1, "20")),
                    Integer.parseInt(word(words, 2, "250")), Integer.parseInt(word(words, 3, "1000")), Long.parseLong(word(words, 4, "20000")), 7);
            case "scale" -> new ScaleBenchmark(out).run(word(words, 0, ""), Integer.parseInt(word(words, 1, "40")));
            case "review" -> ReviewBenchmark.run(out, Integer.parseInt(word(words, 0, "100")));
            case "threads" -> new ThreadsBenchmark(out).run(Shop.named(word(words, 0, "demo")), Integer.parseInt(word(words, 1, "500")));
            case "serve" -> new ServeBenchmark(out).run(Integer.parseInt(word(words, 0, "200")), Integer.parseInt(word(words, 1, "10")));
            case "allocate", "allocate-tight" -> new AllocateBenchmark(out, Shop.demo(), name.endsWith("tight"))
                    .run((words.isEmpty() ? List.of("20", "100", "500") : words).stream().map(Integer::valueOf).toList(), 1, Duration.ofMinutes(5));
            case "compare" -> new CompareBenchmark(out).run();
            case "gaps" -> new GapsBenchmark(out, Shop.demo(), word(words, 3, "").equals("busy"))
                    .run(Integer.parseInt(word(words, 2, "0")), Integer.parseInt(word(words, 0, "40")), Integer.parseInt(word(words, 1, "10")));
            case "order" -> new OrderBenchmark(out, Shop.demo())
                    .run((words.isEmpty() ? List.of("10", "50", "200", "2000") : words).stream().map(Integer::valueOf).toList());
            default -> throw new IllegalArgumentException("no such benchmark (" + name + ")\n" + USAGE);
        }
    }

    private static String word(List<String> words, int index, String otherwise) {
        return index < words.size() ? words.get(index) : otherwise;
    }
}
