package sledwright.oracle;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import sledwright.domain.Assortment;
import sledwright.domain.Catalog;
import sledwright.domain.DeliverBy;
import sledwright.domain.Goal;
import sledwright.domain.Limits;
import sledwright.domain.TaxedPrice;
import sledwright.domain.Worth;
import sledwright.domain.Workload;
import sledwright.domain.WorkWish;
import sledwright.domain.Objective;
import sledwright.domain.Labour;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemoryWish;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.Request;
import sledwright.domain.Slot;
import sledwright.samples.Shops;
import sledwright.samples.Variations;

/** A small catalogue and a request on it, the same for the same seed. */
record RandomCase(long seed, Catalog catalog, Request request) {

    /** How large a case is. */
    enum Size {
        /** So small that every build can be listed. */
        LISTABLE,
        /** One machine, more channels and modules: for the outside solver. */
        SOLVABLE
    }

    static RandomCase of(long seed, Size size) {
        SplittableRandom random = new SplittableRandom(seed * 7919 + size.ordinal());
        int machines = size == Size.SOLVABLE || random.nextDouble() < 0.65 ? 1 : random.nextInt(2, 4);
        RandomParts parts = new RandomParts(random, new SplittableRandom(~seed), size, machines);
        Catalog catalog = catalog(parts.labour(), parts.factors(), parts.platforms(), parts.processors(), parts.modules(), parts.lots());
        Request request = new RandomRequest(random, size, catalog).request(machines);
        return Packs.perhaps(dated(RandomEdges.of(new RandomCase(seed, catalog, working(populated(request, new SplittableRandom(-seed)), size, new SplittableRandom(7 * seed + 5))),
                size), new SplittableRandom(11 * seed + 3)));
    }

    /** Some limits as others write them: days as a last day, a price with its tax. */
    private static RandomCase dated(RandomCase that, SplittableRandom random) {
        Limits limit = that.request().limit();
        if (limit.leadDays().isPresent() && random.nextInt(3) == 0) {
            int days = limit.leadDays().getAsInt();
            limit = limit.withLeadDays(random.nextBoolean() ? OptionalInt.empty() : OptionalInt.of(random.nextInt(6)))
                    .withBy(Optional.of(new DeliverBy(that.catalog().pricedOn().plusDays(days), days)));
        }
        if (limit.price().isPresent() && random.nextInt(4) == 0) {
            long price = limit.price().getAsLong();
            TaxedPrice tax = new TaxedPrice(0, new BigDecimal(List.of("19", "7.125", "20").get(random.nextInt(3))), "VAT",
                    random.nextBoolean() ? OptionalLong.empty() : OptionalLong.of(Math.max(0, price + random.nextInt(-2000, 2000))));
            limit = limit.withTaxed(tax.withMost(tax.gross(price)));
        }
        return that.with(that.request().withLimit(limit));
    }

    /** A workload of a third of the cases that can be listed; what it asks for is often what some machine does exactly. */
    private static Request working(Request request, Size size, SplittableRandom random) {
        if (size != Size.LISTABLE || random.nextInt(3) > 0) {
            return request;
        }
        double parallel = random.nextInt(3) == 0 ? 1 : random.nextInt(4) == 0 ? 0 : 1 - 1.0 / (4 << random.nextInt(6));
        double traffic = random.nextInt(4) == 0 ? 0 : (1 + random.nextInt(40)) / 8.0;
        Workload workload = new Workload(random.nextBoolean() ? "run" : "", parallel, traffic, 0);
        double least = random.nextInt(3) > 0 ? 0 : random.nextBoolean() ? 1 + random.nextInt(20)
                : 17.064 * (1 + random.nextInt(2)) / Math.max(traffic, 1);
        Worth worth = request.worth();
        double each = random.nextInt(3) == 0 ? random.nextInt(5) * 130.0 : 0;
        Objective objective = random.nextInt(3) == 0 ? Objective.MOST_WORK : random.nextInt(6) == 0 ? Objective.BEST_VALUE : request.objective();
        return new Request(request.name(), request.machines(), request.require().withWork(new WorkWish(least, workload)), request.limit(),
                new Goal(objective, new Worth(worth.core(), worth.gb(), worth.gbs(), worth.throughput(), each), request.licence()), request.list(),
                request.parts());
    }

    /** One request in two may want its memory populated in some way. */
    private static Request populated(Request from, SplittableRandom random) {
        MemoryWish wish = new MemoryWish(random.nextInt(6) == 0, random.nextInt(6) == 0);
        return random.nextInt(2) == 0 ? from : from.withRequire(from.require().withPopulated(wish));
    }

    /** The same case with another request. */
    RandomCase with(Request other) {
        return new RandomCase(seed, catalog, other);
    }

    /** The same case on other parts and lots. */
    RandomCase with(Collection<Platform> platforms, Collection<Processor> processors, Collection<MemoryModule> modules,
                    Map<String, List<Lot>> lots) {
        Assortment all = catalog.assortment();
        Assortment other = new Assortment(List.copyOf(platforms), all.enclosures(), List.copyOf(processors), List.copyOf(modules), all.drives(),
                all.cards(), all.extras());
        return new RandomCase(seed, Variations.of(catalog, other).withLots(lots), request);
    }

    /** Sku -> lots of everything on sale. */
    Map<String, List<Lot>> lots() {
        Map<String, List<Lot>> lots = new LinkedHashMap<>();
        catalog.parts().forEach(part -> lots.put(part.sku(), catalog.lots(part.sku())));
        return lots;
    }

    private static Catalog catalog(Labour labour, Map<String, Double> factors, List<Platform> platforms,
                                   List<Processor> processors, List<MemoryModule> modules, Map<String, List<Lot>> lots) {
        return Shops.of("random", Currency.getInstance("EUR"), LocalDate.of(2025, 1, 1), labour, factors, platforms,
                processors, modules, lots);
    }

    /** Everything that a person needs to see what the case is about. */
    String text() {
        List<String> lines = new ArrayList<>();
        lines.add("seed " + seed);
        lines.add(request.toString());
        lines.add("%s, factors %s".formatted(catalog.labour(), catalog.throughputFactors()));
        for (Platform platform : catalog.platforms()) {
            lines.add("%s: %s; %d sockets; %s; cooling %s; %s; %s; slots %s".formatted(platform.sku(), platform.processors(),
                    platform.board().sockets(), platform.memory(), platform.cooling(), platform.thermal(), platform.power(),
                    platform.board().slots().stream().map(Slot::name).collect(Collectors.joining(" "))));
        }
        catalog.processors().forEach(processor -> lines.add(processor.toString()));
        catalog.modules().forEach(module -> lines.add(module.toString()));
        catalog.platforms().forEach(platform -> lines.add(platform.sku() + ": " + platform.expansion()));
        catalog.enclosures().forEach(enclosure -> lines.add(enclosure.toString()));
        catalog.drives().forEach(drive -> lines.add(drive.toString()));
        catalog.cards().forEach(card -> lines.add(card.toString()));
        catalog.extras().forEach(extra -> lines.add(extra.toString()));
        lots().values().forEach(list -> list.forEach(lot -> lines.add("%s %s: %d, %s, %d days, %s".formatted(lot.sku(), lot.lot(),
                lot.available(), lot.condition(), lot.leadDays(), lot.breaks().stream()
                        .map(step -> "%d+ at %d".formatted(step.minQuantity(), step.unitPrice())).collect(Collectors.joining(", "))))));
        return String.join("\n", lines);
    }
}
