package sledwright.bench;

import java.io.PrintStream;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Random;
import java.util.TreeMap;
import sledwright.domain.Availability;
import sledwright.domain.Catalog;
import sledwright.domain.Goal;
import sledwright.domain.Lot;
import sledwright.domain.MemoryNeeds;
import sledwright.domain.PartChoice;
import sledwright.domain.Pick;
import sledwright.domain.ProcessorNeeds;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Shortlist;
import sledwright.domain.WorkWish;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.metrics.Figures;
import sledwright.planner.allot.Allotment;
import sledwright.planner.allot.AllotmentOutcome;
import sledwright.planner.allot.Allotter;
import sledwright.planner.allot.LotName;
import sledwright.planner.allot.Promise;
import sledwright.rules.Order;

/**
 * Promises on the demo drawn anew after lots turned out short and others came in: what each promise in turn would take, what is decided, and the
 * bound, in one run. Roomy: stock is multiplied so that there is some for that many. Tight: hardly more is left than what was promised, a fifth of
 * that is lost, and what comes in its place comes later and is dearer, so that promises are in each other's way.
 */
final class AllocateBenchmark {

    private static final int STOCK_FOR = 12;
    private static final Duration FIND = Duration.ofSeconds(10);

    /** Of what nobody was promised, one unit of so many is there. */
    private static final int SPARE_OF = 40;
    private static final int LATER_DAYS = 6;

    private final PrintStream out;
    private final Shop shop;
    private final boolean tight;

    AllocateBenchmark(PrintStream out, Shop shop, boolean tight) {
        this.out = out;
        this.shop = shop;
        this.tight = tight;
    }

    void run(List<Integer> sizes, long seed, Duration limit) {
        out.printf("%8s %9s   %-28s %-28s %-28s %7s   %s%n", "promises", "machines", "greedy: broken changed cost", "decided", "bound", "gap %",
                "seconds: greedy, bound, decision");
        sizes.forEach(size -> run(size, seed, limit));
    }

    private void run(int size, long seed, Duration limit) {
        Random random = new Random(seed);
        int times = (size + STOCK_FOR - 1) / STOCK_FOR;
        Catalog stock = shop.catalog().withEachLot(lot -> lot.with(lot.available() * times, lot.breaks()));
        List<Promise> promises = promises(size, stock, random);
        Catalog today = tight ? tight(stock, promises, seed) : roomy(stock, times, seed);
        AllotmentOutcome outcome = new Allotter(today, promises, seed, List::of, words -> { }).run(Deadline.in(limit));
        AllotmentOutcome.Bound bound = outcome.bound();
        out.printf(Locale.ROOT, "%8d %9d   %-28s %-28s %-28s %7.3f   %.1f, %.1f, %.1f%n", size, promises.stream().mapToInt(one -> one.request().machines()).sum(),
                words(outcome.greedy()), words(outcome.found()), "%d %d %.2f".formatted(bound.broken(), bound.changed(), bound.cost() / 100),
                100 * outcome.gap().orElse(Double.NaN), outcome.times().greedy(), outcome.times().bound(), outcome.times().decision());
    }

    /** A quarter of the lots has lost most of what it had, and every tenth has more. */
    private static Catalog roomy(Catalog stock, int times, long seed) {
        return stock.withEachLot(lot -> {
            int luck = new Random(seed * 31 + new LotName(lot.sku(), lot.lot()).hashCode()).nextInt(20);
            return lot.with(luck < 5 ? lot.available() / 4 : luck < 7 ? lot.available() + 8 * times : lot.available(), lot.breaks());
        });
    }

    /** Of each lot what was promised, every fifth of which is lost; half of that comes again later, at a fifth more. */
    private static Catalog tight(Catalog stock, List<Promise> promises, long seed) {
        Map<LotName, Integer> promised = new HashMap<>();
        promises.forEach(promise -> promise.kept().forEach((lot, units) -> promised.merge(lot, units, Integer::sum)));
        Map<String, List<Lot>> lots = new TreeMap<>();
        stock.parts().forEach(part -> stock.lots(part.sku()).forEach(lot -> {
            LotName name = new LotName(lot.sku(), lot.lot());
            int units = promised.getOrDefault(name, 0);
            int lost = new Random(seed * 31 + name.hashCode()).nextInt(2) == 0 ? (2 * units + 4) / 5 : 0;
            List<Lot> some = lots.computeIfAbsent(lot.sku(), sku -> new ArrayList<>());
            some.add(lot.with(units == 0 ? lot.available() / SPARE_OF : units - lost, lot.breaks()));
            if (lost > 1) {
                Lot.PriceBreak single = lot.breaks().get(0);
                some.add(new Lot(lot.sku(), lot.lot() + "-later", lot.supplier(), lot.condition(),
                        new Availability(lost / 2, LATER_DAYS, lot.stock().lastDay()),
                        List.of(new Lot.PriceBreak(1, single.unitPrice() * 6 / 5, OptionalLong.empty())), false));
            }
        }));
        return stock.with(lots, stock.labour());
    }

    private static String words(Allotment.Figures figures) {
        return String.format(Locale.ROOT, "%d %d %.2f", figures.broken(), figures.changed(), figures.cost() / 100.0);
    }

    /** Each takes the cheapest that those before it left, and is told what that reaches. */
    private List<Promise> promises(int size, Catalog stock, Random random) {
        List<Promise> promises = new ArrayList<>();
        Map<LotName, Integer> taken = new HashMap<>();
        Search first = new Search(stock);
        for (long seed = random.nextInt(1 << 20); promises.size() < size; seed++) {
            Request asked = shop.request(shop.requests().request(seed, "cheapest"));
            Request request = asked.withMachines(1 + random.nextInt(3)).withOnHand(Map.of()).withAlternatives(1, Shortlist.PLAIN.step());
            Catalog left = stock.withEachLot(lot -> lot.with(lot.available() - taken.getOrDefault(new LotName(lot.sku(), lot.lot()), 0), lot.breaks()));
            Findings found = first.on(left).run(request, Deadline.in(FIND));
            if (!found.ranked().isEmpty()) {
                Promise promise = promise("promise " + (promises.size() + 1), found.ranked().get(0), random.nextInt(10));
                promises.add(promise);
                promise.kept().forEach((lot, units) -> taken.merge(lot, units, Integer::sum));
            }
        }
        return promises;
    }

    private static Promise promise(String name, Order order, int days) {
        Map<String, Integer> parts = new TreeMap<>();
        Map<LotName, Integer> kept = new TreeMap<>();
        int latest = 0;
        for (Pick pick : order.picks()) {
            Lot lot = pick.lot();
            parts.merge(lot.sku(), pick.quantity(), Integer::sum);
            kept.merge(new LotName(lot.sku(), lot.lot()), pick.quantity(), Integer::sum);
            latest = Math.max(latest, lot.leadDays());
        }
        Figures told = order.figures();
        Request asked = order.request();
        Requirements least = asked.require();
        Requirements require = new Requirements(
                new ProcessorNeeds(least.processors(), Math.max(least.cores(), told.cores()), Math.max(least.throughput(), told.throughput()), least.baseGhz(), least.allCoreGhz()),
                new MemoryNeeds(Math.max(least.memoryGb(), told.usableGb()), Math.max(least.bandwidthGbs(), told.bandwidthGbs()), least.gbPerCore(), least.gbsPerCore(), least.spareSlots(), least.mode(), least.populated()),
                new WorkWish(Math.max(least.work().least(), told.work()), least.work().workload()));
        Request promised = new Request("promise", asked.machines(), require,
                asked.limit().waiting().withLeadDays(OptionalInt.of(Math.max(latest, days))).withPrice(OptionalLong.empty()) .withPowerW(OptionalDouble.of(told.loadW())),
                Goal.CHEAPEST, new Shortlist(1, Shortlist.PLAIN.step()),
                new PartChoice(asked.platforms(), asked.forbid(), asked.use(), Map.of(), asked.equipment()));
        return new Promise(name, promised, parts, kept, false);
    }
}
