package sledwright.bench;

import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.LongSupplier;
import java.util.stream.IntStream;
import sledwright.domain.Catalog;
import sledwright.domain.Equipment;
import sledwright.domain.Goal;
import sledwright.domain.Objective;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.PartChoice;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Shortlist;
import sledwright.domain.Worth;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.OrderOutcome;
import sledwright.planner.order.OrderPlanner;
import sledwright.planner.order.OrderProgress;

/**
 * Seeded orders of 15 to 62 machines on the demo's stock whose bounds are hard to close: few suppliers, charges, lines of one build, sleds on hand, lines whose surplus is
 * of worth. How far the best order and the bound are apart after so many seconds: of the clock, or, where other programs are busy, of the processor that the planner
 * itself has had, in the thread that asks.
 */
final class GapsBenchmark {

    private static final double[] AFTER = {1, 5, 10, 60};
    private static final int CHARGE = 1_500;

    private final PrintStream out;
    private final Shop shop;
    private final LongSupplier clock;
    private final List<Kind> kinds = List.of(
            (seed, shop) -> with(lines(seed, shop, 16, 3), OptionalInt.of(2), CHARGE, 0),
            (seed, shop) -> with(lines(seed, shop, 15, 2), OptionalInt.of(1), 0, 0),
            (seed, shop) -> with(lines(seed, shop, 24, 8).stream().map(line -> new OrderLine(line.name(), line.request(), 1, true)).toList(), OptionalInt.empty(), CHARGE, 0),
            (seed, shop) -> with(lines(seed, shop, 62, 2), OptionalInt.empty(), 0, 0),
            (seed, shop) -> with(lines(seed, shop, 30, 3), OptionalInt.empty(), CHARGE, 0),
            (seed, shop) -> with(lines(seed, shop, 20, 3), OptionalInt.empty(), 0, 50),
            (seed, shop) -> with(lines(seed, shop, 18, 3).stream().map(GapsBenchmark::worth).toList(), OptionalInt.empty(), 0, 0),
            GapsBenchmark::sleds);

    /** Draws an order of a kind. */
    private interface Kind {
        OrderRequest of(long seed, Shop shop);
    }

    /** @param busy whether the processor's time counts */
    GapsBenchmark(PrintStream out, Shop shop, boolean busy) {
        this.out = out;
        this.shop = shop;
        long planning = Thread.currentThread().getId();
        clock = busy ? () -> ManagementFactory.getThreadMXBean().getThreadCpuTime(planning) : System::nanoTime;
    }

    /** @param seconds that each may take */
    void run(int first, int orders, int seconds) {
        new OrderPlanner(shop.catalog(), 1).plan(new DrawnOrder(shop).of(99, shop.catalog(), 10, 3), Deadline.in(Duration.ofSeconds(5)), progress -> { });
        out.printf("%5s %5s %9s %6s %11s %8s %9s %9s %9s %9s %14s %14s%n", "kind", "seed", "machines", "lines", "status", "took s", "gap 1 s", "5 s", "10 s", "60 s", "best",
                "bound");
        List<double[]> all = new ArrayList<>();
        for (int i = first; i < first + orders; i++) {
            int kind = i % kinds.size();
            long seed = 1 + i / kinds.size();
            OrderRequest order = kinds.get(kind).of(seed, shop);
            double[] gaps = new double[AFTER.length];
            Arrays.fill(gaps, Double.NaN);
            long start = clock.getAsLong();
            OrderOutcome outcome = new OrderPlanner(shop.catalog(), seed).plan(order, Deadline.in(Duration.ofSeconds(seconds), clock),
                    now -> note(now, (clock.getAsLong() - start) / 1e9, gaps));
            double took = (clock.getAsLong() - start) / 1e9;
            boolean whole = outcome.missing() == 0;
            for (int at = 0; at < AFTER.length; at++) {
                gaps[at] = AFTER[at] >= Math.min(took, seconds) ? whole ? 100 * outcome.gap() : Double.NaN : gaps[at];
            }
            out.printf(Locale.ROOT, "%5d %5d %9d %6d %11s %8.2f %8.3f%% %8.3f%% %8.3f%% %8.3f%% %14.2f %14.2f%n", kind + 1, seed, order.machines(), order.lines().size(),
                    outcome.status().label() + (whole ? "" : " -" + outcome.missing()), took, gaps[0], gaps[1], gaps[2], gaps[3], outcome.best(), outcome.bound());
            all.add(gaps);
        }
        for (int at = 0; at < AFTER.length; at++) {
            int column = at;
            out.printf("gap in percent after %.0f s, median, 95 %%, worst of those known: %s%n", AFTER[at],
                    Spread.of(all.stream().mapToDouble(gaps -> gaps[column]).filter(gap -> !Double.isNaN(gap))).columns());
        }
    }

    /** The gap stays what it was until something is heard. */
    private static void note(OrderProgress now, double seconds, double[] gaps) {
        if (now.missing() == 0 && !Double.isNaN(now.bound())) {
            IntStream.range(0, AFTER.length).filter(at -> seconds <= AFTER[at])
                    .forEach(at -> gaps[at] = 100 * Math.max(0, now.best() - now.bound()) / Math.abs(now.best()));
        }
    }

    private static List<OrderLine> lines(long seed, Shop shop, int machines, int lines) {
        return new DrawnOrder(shop).of(seed, shop.catalog(), machines, lines).lines();
    }

    private static OrderRequest with(List<OrderLine> lines, OptionalInt suppliers, long delivery, long modulePart) {
        return new OrderRequest("gaps", lines, suppliers, delivery, modulePart, Map.of());
    }

    private static OrderLine worth(OrderLine line) {
        Request asked = line.request();
        Request request = new Request(asked.name(), asked.machines(), asked.require(), asked.limit(),
                new Goal(Objective.BEST_VALUE, new Worth(200, 30, 20, 40), asked.licence()), new Shortlist(1, asked.step()),
                new PartChoice(asked.platforms(), asked.forbid(), asked.use(), Map.of(), Equipment.NONE));
        return new OrderLine(line.name(), request, line.priority(), line.uniform());
    }

    /** Sleds beside machines on their own feet, two enclosures of them on hand. */
    private static OrderRequest sleds(long seed, Shop shop) {
        Catalog catalog = shop.catalog();
        List<OrderLine> lines = new ArrayList<>(lines(seed, shop, 12, 2));
        Set<String> sleds = Set.copyOf(catalog.platforms().stream().filter(catalog::isSled).map(Platform::sku).toList());
        OrderLine first = lines.get(0);
        lines.add(worth(new OrderLine("sleds", Request.named("sleds").withMachines(6).withPlatforms(sleds)
                .withRequire(first.request().require()), 1, false)));
        return new OrderRequest("gaps", lines, OptionalInt.empty(), 0, 0, Map.of(catalog.enclosures().get(0).sku(), 2));
    }
}
