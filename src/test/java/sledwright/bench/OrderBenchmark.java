package sledwright.bench;

import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicReference;
import sledwright.domain.Catalog;
import sledwright.domain.OrderRequest;
import sledwright.generator.time.Deadline;
import sledwright.oracle.OrderPace;
import sledwright.planner.order.OrderOutcome;
import sledwright.planner.order.OrderPlanner;

/**
 * Orders of many machines on the demo's stock: how soon a first whole order stands, how close the last one comes to its bound, and
 * what each machine in turn from what is left, and an outside solver, make of the same order.
 *
 * <p>From 1,000 machines on every lot has ten times its units, or there would not be enough.
 */
final class OrderBenchmark {

    private static final int LARGE = 1000;
    private static final int STOCK_TIMES = 10;

    /** Orders of each size; one of a large size. */
    private static final int SEEDS = 3;

    private final PrintStream out;
    private final Shop shop;

    OrderBenchmark(PrintStream out, Shop shop) {
        this.out = out;
        this.shop = shop;
    }

    void run(List<Integer> sizes) {
        new OrderPlanner(shop.catalog(), 1).plan(new DrawnOrder(shop).of(99, shop.catalog(), 10, 3), Deadline.in(Duration.ofSeconds(5)), progress -> { });
        out.printf("%-10s %5s %5s %8s %8s %9s %12s %8s %8s %9s %9s %9s %9s%n", "machines", "lines", "seed", "first s", "total s", "status", "best",
                "gap", "heap MB", "greedy", "greedy s", "CP-SAT", "+ ours");
        for (int machines : sizes) {
            boolean large = machines >= LARGE;
            Catalog catalog = large ? shop.catalog().withEachLot(lot -> lot.with(lot.available() * STOCK_TIMES, lot.breaks())) : shop.catalog();
            int lines = large ? machines / 100 : Math.min(6, 2 + Math.max(1, machines / 40));
            for (int seed = 1; seed <= (large ? 1 : SEEDS); seed++) {
                measure(catalog, new DrawnOrder(shop).of(seed, catalog, machines, lines), machines, seed, Duration.ofSeconds(large ? 10 : 5));
            }
        }
    }

    private void measure(Catalog catalog, OrderRequest order, int machines, int seed, Duration limit) {
        AtomicReference<Double> first = new AtomicReference<>(Double.NaN);
        System.gc();
        heap().forEach(MemoryPoolMXBean::resetPeakUsage);
        long start = System.nanoTime();
        OrderOutcome outcome = new OrderPlanner(catalog, seed).plan(order, Deadline.in(limit), progress -> {
            if (progress.missing() == 0 && first.get().isNaN()) {
                first.set(progress.seconds());
            }
        });
        double total = (System.nanoTime() - start) / 1e9;
        double heapMb = heap().stream().mapToLong(pool -> pool.getPeakUsage().getUsed()).sum() / 1e6;
        start = System.nanoTime();
        Greedy.Filled greedy = new Greedy(catalog).fill(order);
        double greedyS = (System.nanoTime() - start) / 1e9;
        OrderPace pace = new OrderPace(catalog, order, limit);
        pace.add(greedy.builds());
        String alone = ratio(pace.cheapest(), outcome);
        pace.add(outcome.lines().stream().map(line -> line.fills().stream().map(OrderOutcome.Fill::build).toList()).toList());
        String together = ratio(pace.cheapest(), outcome);
        out.printf(Locale.ROOT, "%-10d %5d %5d %8.2f %8.2f %9s %12.0f %7.3f%% %8.0f %9s %9.2f %9s %9s%n", machines, order.lines().size(), seed, first.get(), total,
                outcome.status().label() + (outcome.missing() > 0 ? " -" + outcome.missing() : ""), outcome.best(), 100 * outcome.gap(), heapMb,
                greedy.missing() > 0 ? "-" + greedy.missing() : ratio(greedy.price(), outcome), greedyS, alone, together);
    }

    /** How much dearer than the planner's order, in percent. */
    private static String ratio(double cost, OrderOutcome outcome) {
        return Double.isNaN(cost) || outcome.missing() > 0 ? "-" : String.format(Locale.ROOT, "%+.3f%%", 100 * (cost / outcome.best() - 1));
    }

    private static List<MemoryPoolMXBean> heap() {
        return ManagementFactory.getMemoryPoolMXBeans().stream().filter(pool -> pool.getType() == MemoryType.HEAP).toList();
    }
}
