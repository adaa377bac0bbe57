package sledwright.oracle;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sledwright.domain.Availability;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Enclosure;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Equipment;
import sledwright.domain.Goal;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.MemoryWish;
import sledwright.domain.Objective;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Part;
import sledwright.domain.PartChoice;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Shortlist;
import sledwright.domain.SupplierNames;
import sledwright.domain.Supply;
import sledwright.domain.Worth;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.samples.Shops;
import sledwright.samples.Variations;

/** A small shop and an order on it, the same for the same seed. */
record RandomOrder(long seed, Catalog catalog, OrderRequest order) {

    static final List<String> SUPPLIERS = List.of("Alder", "Birch", " birch", "Cedar");

    /** So often another request is drawn where no machine or too many meet one. */
    private static final int REDRAWN = 6;

    /** A delivery costs a multiple of this, minor units: far above any machine. */
    private static final int DEAR = 1_000_000;

    /** How large an order is, and how many times the stock of a single machine's case there is. */
    private record Size(RandomCase.Size parts, int leastLines, int mostLines, int leastMachines, int mostMachines, int stock) {
    }

    /** Lines of one to four machines on a stock that is now scarce, now ample. */
    static RandomOrder small(long seed) {
        return of(seed, new Size(RandomCase.Size.LISTABLE, 1, 3, 1, 4, new SplittableRandom(seed).nextInt(2) == 0 ? 1 : 3));
    }

    /** Two or three lines of one to three machines with drives, cards and extras, of which each machine can be listed and some line has some. */
    static RandomOrder equipped(long seed) {
        Size size = new Size(RandomCase.Size.LISTABLE, 2, 3, 1, 3, seed % 3 == 0 ? 2 : 6);
        RandomOrder drawn = RandomEquipment.on(of(seed, size));
        for (int i = 1; i <= REDRAWN * 4 && !drawn.isListed(); i++) {
            drawn = RandomEquipment.on(of(seed + i * 1_000_003L, size));
        }
        return drawn;
    }

    private boolean isListed() {
        try {
            boolean some = false;
            for (OrderLine line : order.lines()) {
                boolean met = !EveryMachine.of(catalog, line.request(), line.uniform(), stock(line.request().limit())).isEmpty();
                some |= met && !(line.request().equipment().volumes().isEmpty() && line.request().equipment().cards().isEmpty());
            }
            return some;
        } catch (EveryMachine.TooManyException large) {
            return false;
        }
    }

    /** Nine to forty machines of which each can be listed. */
    static RandomOrder large(long seed) {
        return of(seed, new Size(RandomCase.Size.LISTABLE, 3, 5, 3, 8, 6));
    }

    /** Nine to thirty machines of more kinds than can be listed. */
    static RandomOrder vast(long seed) {
        return of(seed, new Size(RandomCase.Size.SOLVABLE, 3, 5, 3, 6, 12));
    }

    /** More lines than are filled by a search for each. */
    static RandomOrder broad(long seed) {
        return of(seed, new Size(RandomCase.Size.LISTABLE, 25, 32, 1, 2, seed % 3 == 0 ? 10 : 40));
    }

    private static RandomOrder of(long seed, Size size) {
        SplittableRandom random = new SplittableRandom(seed * 104_729);
        int stock = size.stock;
        RandomParts parts = new RandomParts(random, new SplittableRandom(~seed), size.parts, 2);
        Map<String, List<Lot>> lots = new LinkedHashMap<>();
        parts.lots().forEach((sku, old) -> lots.put(sku, new ArrayList<>(old.stream().map(lot -> supplied(lot, stock, random)).toList())));
        Catalog shop = catalog(parts, List.of(), lots);
        Map<String, Integer> own = own(random, shop);
        List<OrderLine> lines = new ArrayList<>();
        int count = random.nextInt(size.leastLines, size.mostLines + 1);
        for (int i = 1; i <= count; i++) {
            int machines = random.nextInt(size.leastMachines, size.mostMachines + 1);
            boolean uniform = random.nextInt(4) == 0;
            lines.add(new OrderLine("line " + i, met(random, size.parts, shop, machines, uniform, own), random.nextInt(3) == 0 ? random.nextInt(1, 6) : 1, uniform));
        }
        List<Enclosure> enclosures = random.nextInt(10) < 3 ? enclosures(random, parts.platforms(), lots, stock) : List.of();
        Catalog catalog = catalog(parts, enclosures, lots);
        if (!enclosures.isEmpty() && random.nextInt(4) == 0) {
            own.put(enclosures.get(0).sku(), 1);
        }
        SplittableRandom others = new SplittableRandom(seed);
        lines.replaceAll(line -> enclosures.isEmpty() || others.nextInt(3) > 0 ? line : without(line, enclosures.get(others.nextInt(enclosures.size())), others));
        SplittableRandom wishes = new SplittableRandom(-seed);
        lines.replaceAll(line -> populated(line, wishes));
        lines.replaceAll(line -> wishes.nextInt(6) > 0 ? line : inOwnEnclosures(line));
        OrderRequest order = new OrderRequest("random", lines, random.nextInt(4) == 0 ? OptionalInt.of(random.nextInt(1, 3)) : OptionalInt.empty(),
                random.nextInt(4) == 0 ? random.nextInt(1, 60) * (seed % 3 == 0 ? DEAR : 100) : 0, random.nextInt(3) == 0 ? random.nextInt(1, 13) * 100 : 0, own);
        boolean shelf = others.nextInt(3) == 0;
        return new RandomOrder(seed, shelf ? Variations.of(catalog, new SupplierNames(Map.of(), Set.of(others.nextInt(2) == 0 ? "birch" : "cedar"))) : catalog, order);
    }

    private static OrderLine inOwnEnclosures(OrderLine line) {
        Request request = line.request();
        return new OrderLine(line.name(), request.withEquipment(request.equipment().withEnclosure(EnclosureFrom.OWN)), line.priority(), line.uniform());
    }

    /** One line in four wants modules of one part number, one in eight balanced channels. */
    private static OrderLine populated(OrderLine line, SplittableRandom random) {
        MemoryWish wish = new MemoryWish(random.nextInt(8) == 0, random.nextInt(4) == 0);
        return new OrderLine(line.name(), line.request().withRequire(line.request().require().withPopulated(wish)), line.priority(), line.uniform());
    }

    /** A line that wants nothing of an enclosure, or of one of its supplies. */
    private static OrderLine without(OrderLine line, Enclosure enclosure, SplittableRandom random) {
        Set<String> forbid = new TreeSet<>(line.request().forbid());
        forbid.add(random.nextInt(3) == 0 ? enclosure.sku() : enclosure.supplies().get(random.nextInt(enclosure.supplies().size())).sku());
        return new OrderLine(line.name(), line.request().withForbid(forbid), line.priority(), line.uniform());
    }

    private static Map<String, Integer> own(SplittableRandom random, Catalog shop) {
        Map<String, Integer> own = new HashMap<>();
        if (random.nextInt(4) == 0) {
            List<String> skus = shop.parts().stream().map(Part::sku).toList();
            for (int i = random.nextInt(3); i >= 0; i--) {
                own.put(skus.get(random.nextInt(skus.size())), random.nextInt(1, 5));
            }
        }
        return own;
    }

    /** A request that some machine meets, but for a few. */
    private static Request met(SplittableRandom random, RandomCase.Size size, Catalog shop, int machines, boolean uniform, Map<String, Integer> own) {
        Request drawn = request(random, size, shop, machines, uniform);
        for (int i = 0; i < REDRAWN; i++) {
            try {
                if (isMet(size, shop, drawn, uniform, own)) {
                    return drawn;
                }
            } catch (EveryMachine.TooManyException large) {
                // Another may ask for more and so leave fewer.
            }
            drawn = request(random, size, shop, machines, uniform);
        }
        return drawn;
    }

    private static boolean isMet(RandomCase.Size size, Catalog shop, Request drawn, boolean uniform, Map<String, Integer> own) {
        return size == RandomCase.Size.SOLVABLE
                ? new Search(shop).run(drawn.withMachines(1).withOnHand(own), Deadline.never()).status() != Status.IMPOSSIBLE
                : !EveryMachine.of(shop, drawn, uniform, stock(shop, own, drawn.limit())).isEmpty();
    }

    private static Request request(SplittableRandom random, RandomCase.Size size, Catalog shop, int machines, boolean uniform) {
        Request drawn = new RandomRequest(random, size, shop).request(machines);
        Limits limit = drawn.limit();
        Set<Condition> conditions = random.nextInt(4) == 0 ? Set.of(Condition.NEW, Condition.USED) : limit.conditions();
        OptionalInt leadDays = random.nextInt(3) == 0 ? OptionalInt.of(random.nextInt(6)) : limit.leadDays();
        Limits open = new Limits(OptionalLong.empty(), limit.powerW(), leadDays, limit.inletC(), limit.altitudeM(), limit.mainsV(), conditions);
        // Of a uniform line's machines, whether each is worth its own figures or those of the slowest is left open; so they are to be cheap.
        Objective objective = random.nextInt(5) > 0 || uniform && machines > 1 ? Objective.CHEAPEST : Objective.BEST_VALUE;
        Worth worth = new Worth(random.nextInt(6) * 250, random.nextInt(4) * 50, random.nextInt(4) * 75, random.nextInt(4) * 120);
        return new Request("random", machines, drawn.require(), open,
                new Goal(objective, objective == Objective.CHEAPEST ? Worth.NOTHING : worth, drawn.licence()), new Shortlist(1, drawn.step()),
                new PartChoice(drawn.platforms(), drawn.forbid(), drawn.use(), Map.of(), Equipment.NONE));
    }

    private static Lot supplied(Lot lot, int stock, SplittableRandom random) {
        return new Lot(lot.sku(), lot.lot(), SUPPLIERS.get(random.nextInt(SUPPLIERS.size())), lot.condition(),
                new Availability(lot.available() * stock, lot.leadDays()), lot.breaks(), false);
    }

    private static List<Enclosure> enclosures(SplittableRandom random, List<Platform> platforms, Map<String, List<Lot>> lots, int stock) {
        List<Enclosure> enclosures = new ArrayList<>();
        for (int i = random.nextInt(2) + 1; i > 0; i--) {
            Set<String> takes = platforms.stream().filter(platform -> random.nextInt(3) > 0).map(Platform::sku).collect(Collectors.toSet());
            takes.add(platforms.get(0).sku());
            List<Supply> supplies = new ArrayList<>();
            for (int j = random.nextInt(2) + 1; j > 0; j--) {
                int count = random.nextInt(1, 4);
                // Some feed not even one sled.
                double watts = random.nextInt(random.nextInt(4) == 0 ? 2 : 6, 20) * 50;
                supplies.add(new Supply("F" + i + j, "random feed", count, count > 1 && random.nextBoolean() ? 1 : 0, watts,
                        random.nextInt(3) == 0 ? 0 : watts * 0.75, new TreeMap<>(Map.of())));
                offer(random, "F" + i + j, random.nextInt(1000, 4000), stock * 4, lots);
            }
            enclosures.add(new Enclosure("E" + i, "random enclosure", takes, random.nextInt(1, 5), random.nextInt(20, 90),
                    random.nextInt(3) == 0 ? random.nextInt(8, 30) * 50 : 0, supplies));
            offer(random, "E" + i, random.nextInt(3000, 9000), stock * 2, lots);
        }
        return enclosures;
    }

    private static void offer(SplittableRandom random, String sku, int price, int most, Map<String, List<Lot>> lots) {
        List<Lot> offered = new ArrayList<>();
        for (int i = random.nextInt(2) + 1; i > 0; i--) {
            List<Lot.PriceBreak> breaks = new ArrayList<>(List.of(new Lot.PriceBreak(1, price + random.nextInt(500), OptionalLong.empty())));
            if (random.nextInt(3) == 0) {
                breaks.add(new Lot.PriceBreak(random.nextInt(2, 4), price * 3L / 4, OptionalLong.empty()));
            }
            offered.add(new Lot(sku, "L" + i, SUPPLIERS.get(random.nextInt(SUPPLIERS.size())),
                    random.nextBoolean() ? Condition.NEW : Condition.USED,
                    new Availability(random.nextInt(1, most + 1), random.nextInt(3) == 0 ? 3 : 0), breaks, false));
        }
        lots.put(sku, offered);
    }

    private static Catalog catalog(RandomParts parts, List<Enclosure> enclosures, Map<String, List<Lot>> lots) {
        return Shops.of("random", Currency.getInstance("EUR"), LocalDate.of(2025, 1, 1), parts.labour(), parts.factors(), parts.platforms(), enclosures,
                parts.processors(), parts.modules(), lots);
    }

    /** Units of each part that lines may draw in all, by what one of them accepts. */
    Map<String, Integer> stock(Limits limits) {
        return stock(catalog, order.onHand(), limits);
    }

    static Map<String, Integer> stock(Catalog catalog, Map<String, Integer> own, Limits limits) {
        Map<String, Integer> stock = new HashMap<>(own);
        catalog.lots().values().forEach(lots -> lots.stream().filter(lot -> Reading.lot(lot, limits).isEmpty())
                .forEach(lot -> stock.merge(lot.sku(), lot.available(), Integer::sum)));
        return stock;
    }

    /** Everything that a person needs to see what the order is about. */
    String text() {
        List<String> texts = new ArrayList<>();
        texts.add("order of seed %d: suppliers at most %s, delivery %d, module part %d, on hand %s".formatted(seed, order.suppliersMax(),
                order.deliveryCharge(), order.modulePartCharge(), order.onHand()));
        order.lines().forEach(line -> texts.add("%s, priority %d%s: %s".formatted(line.name(), line.priority(), line.uniform() ? ", uniform" : "", line.request())));
        catalog.enclosures().forEach(enclosure -> texts.add(enclosure.toString()));
        texts.add(new RandomCase(seed, catalog, order.lines().get(0).request()).text());
        catalog.lots().values().forEach(lots -> lots.forEach(lot -> texts.add("%s %s is %s's".formatted(lot.sku(), lot.lot(), lot.supplier()))));
        texts.add("the shop's own shelf: %s".formatted(catalog.suppliers().own()));
        return String.join("\n", texts);
    }
}
