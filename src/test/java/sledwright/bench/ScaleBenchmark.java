package sledwright.bench;

import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalLong;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import sledwright.domain.Availability;
import sledwright.domain.Catalog;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.OrderRequest;
import sledwright.domain.Request;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.OrderOutcome;
import sledwright.planner.order.OrderPlanner;

/**
 * How the time of an answer grows with one thing at a time: parts of the catalogue, lots of each part, machines of a request, machines of an order of
 * several lines. All times are the processor's, of the thread that searches, so that a busy machine may measure them; docs/scale.md has what came out.
 */
final class ScaleBenchmark {

    private static final Duration LIMIT = Duration.ofSeconds(60);
    private static final Duration ORDER_LIMIT = Duration.ofSeconds(10);
    /** So that no request fails for want of units when it asks for more machines. */
    private static final int STOCK_TIMES = 1000;

    private final PrintStream out;

    ScaleBenchmark(PrintStream out) {
        this.out = out;
    }

    /** @param what catalogue, lots, machines or order */
    void run(String what, int requests) {
        switch (what) {
            case "catalogue" -> catalogue(requests);
            case "lots" -> lots(requests);
            case "machines" -> machines(requests);
            case "order" -> orders();
            default -> throw new IllegalArgumentException("no such growth (" + what + ")\nMaybe catalogue, lots, machines or order.");
        }
    }

    private void catalogue(int requests) {
        for (int scale : new int[] {1, 10, 100}) {
            Shop shop = Shop.generated(scale);
            Catalog catalog = shop.catalog();
            row("x%d: %d parts, read in %.0f ms".formatted(scale, catalog.platforms().size() + catalog.processors().size() + catalog.modules().size(),
                    shop.readMillis()), catalog, drawn(shop, requests, request -> request));
        }
    }

    private void lots(int requests) {
        Shop shop = Shop.demo();
        List<Request> drawn = drawn(shop, requests, request -> request);
        for (int times : new int[] {1, 4, 16, 64}) {
            row("each lot as " + times, split(shop.catalog(), times), drawn);
        }
    }

    private void machines(int requests) {
        Shop shop = Shop.demo();
        Catalog stock = more(shop.catalog(), STOCK_TIMES);
        for (int machines : new int[] {1, 10, 100, 1000}) {
            row(machines + " alike machines", stock, drawn(shop, requests, request -> free(request).withMachines(machines)));
        }
    }

    /** A pass for a search that knows nothing yet, and one for a search that has been asked the same before, as behind a page or in a batch. */
    private void row(String name, Catalog catalog, List<Request> requests) {
        Search search = new Search(catalog);
        // So that Java has compiled what every row needs.
        for (int pass = 0; pass < 2; pass++) {
            Search other = new Search(catalog);
            requests.forEach(request -> other.run(request, Deadline.in(LIMIT)));
        }
        List<Sample> first = requests.stream().map(request -> Sample.of(search, 0, "", request, LIMIT)).toList();
        List<Sample> again = requests.stream().map(request -> Sample.of(search, 0, "", request, LIMIT)).toList();
        out.printf(Locale.ROOT, "%-34s lots %7d; of %d requests met %d, not decided %d; first %s; again %s; heap MB %d%n", name,
                catalog.lots().values().stream().mapToInt(List::size).sum(), requests.size(),
                first.stream().filter(sample -> !sample.findings().ranked().isEmpty()).count(),
                first.stream().filter(sample -> sample.findings().status() == Status.BEST_FOUND).count(),
                Spread.of(first.stream().mapToDouble(Sample::cpuMillis)).columns(), Spread.of(again.stream().mapToDouble(Sample::cpuMillis)).columns(), heapMb());
    }

    private void orders() {
        Shop shop = Shop.demo();
        Catalog stock = more(shop.catalog(), 20);
        long planning = Thread.currentThread().getId();
        LongSupplier clock = () -> ManagementFactory.getThreadMXBean().getThreadCpuTime(planning);
        for (int machines : new int[] {10, 10, 30, 100, 300, 1000}) {
            OrderRequest order = new DrawnOrder(shop).of(5, stock, machines, 5);
            AtomicLong whole = new AtomicLong(-1);
            long start = clock.getAsLong();
            OrderOutcome outcome = new OrderPlanner(stock, 1).plan(order, Deadline.in(ORDER_LIMIT, clock), progress -> {
                if (progress.missing() == 0) {
                    whole.compareAndSet(-1, clock.getAsLong() - start);
                }
            });
            out.printf(Locale.ROOT, "%5d machines, 5 lines: whole after %.2f s, ended after %.2f s, %s, gap %.4f %%%n", machines, whole.get() / 1e9,
                    (clock.getAsLong() - start) / 1e9, outcome.status().label(), 100 * outcome.gap());
        }
    }

    private static List<Request> drawn(Shop shop, int requests, UnaryOperator<Request> changed) {
        return LongStream.range(0, requests).mapToObj(seed -> changed.apply(shop.request(shop.requests().request(seed, "cheapest")))).toList();
    }

    /** Without a limit of the price, which is one of all machines together. */
    private static Request free(Request asked) {
        Limits limit = asked.limit();
        return asked.withLimit(new Limits(OptionalLong.empty(), limit.powerW(), limit.leadDays(), limit.inletC(), limit.altitudeM(), limit.mainsV(), limit.conditions()));
    }

    private static Catalog more(Catalog catalog, int times) {
        return catalog.withEachLot(lot -> lot.with(lot.available() * times, lot.breaks()));
    }

    /** The same units in several lots, each half a percent dearer than the one before. */
    private static Catalog split(Catalog catalog, int times) {
        Map<String, List<Lot>> offers = new LinkedHashMap<>();
        catalog.lots().forEach((sku, lots) -> offers.put(sku, lots.stream().flatMap(lot -> IntStream.range(0, Math.min(times, Math.max(1, lot.available())))
                .mapToObj(part -> part(lot, part, times))).toList()));
        return catalog.withLots(offers);
    }

    private static Lot part(Lot lot, int part, int times) {
        List<Lot.PriceBreak> breaks = new ArrayList<>();
        lot.breaks().forEach(old -> breaks.add(new Lot.PriceBreak(old.minQuantity(), old.unitPrice() + old.unitPrice() * part / 200, old.unitCost())));
        int units = lot.available() / times + (part < lot.available() % times ? 1 : 0);
        return new Lot(lot.sku(), lot.lot() + "/" + part, lot.supplier(), lot.condition(),
                new Availability(units, lot.leadDays(), lot.stock().lastDay()), breaks, lot.onHand());
    }

    private static long heapMb() {
        System.gc();
        return (Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory()) >> 20;
    }
}
