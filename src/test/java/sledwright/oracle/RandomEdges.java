package sledwright.oracle;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.SplittableRandom;
import sledwright.domain.Catalog;
import sledwright.domain.Equipment;
import sledwright.domain.Expansion;
import sledwright.domain.Goal;
import sledwright.domain.Labour;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModes;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemoryNeeds;
import sledwright.domain.MemorySupport;
import sledwright.domain.Objective;
import sledwright.domain.Part;
import sledwright.domain.PartChoice;
import sledwright.domain.Platform;
import sledwright.domain.Processor;
import sledwright.domain.ProcessorNeeds;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Worth;
import sledwright.rules.Order;
import sledwright.samples.Shops;

/**
 * Moves a random case to where bounds are tight: parts that cost nothing, labour that costs nothing, parts that the customer has,
 * and limits that are exactly what some build costs, draws or reaches.
 */
final class RandomEdges {

    private final SplittableRandom random;
    private final RandomCase.Size size;

    private RandomEdges(long seed, RandomCase.Size size) {
        random = new SplittableRandom(seed * 104_729 + size.ordinal());
        this.size = size;
    }

    /** The case, or in three cases of ten another that lies at some edges; always the same of the same case. */
    static RandomCase of(RandomCase that, RandomCase.Size size) {
        RandomEdges edges = new RandomEdges(that.seed(), size);
        return edges.chance(0.3) ? edges.moved(that) : that;
    }

    private RandomCase moved(RandomCase that) {
        RandomCase shop = new RandomCase(that.seed(), catalog(that), that.request());
        Request request = shop.request();
        if (size == RandomCase.Size.LISTABLE) {
            request = aimed(request);
        }
        if (chance(0.4)) {
            request = request.withOnHand(onHand(shop.catalog()));
        }
        return atABuild(shop.with(request));
    }

    private Catalog catalog(RandomCase that) {
        Catalog from = that.catalog();
        Labour labour = new Labour(chance(0.5) ? 0 : from.labour().perMachine(), chance(0.6) ? 0 : from.labour().perModule());
        List<Platform> platforms = chance(0.3) ? from.platforms().stream().map(RandomEdges::withAnUnevenShare).toList() : List.copyOf(from.platforms());
        int times = chance(0.15) ? 12 : 1;
        List<Processor> processors = from.processors().stream().map(one -> withCores(one, times * one.cores())).toList();
        return Shops.of(from.name(), from.currency(), from.pricedOn(), labour, from.throughputFactors(), platforms, processors,
                List.copyOf(from.modules()), lots(that));
    }

    /** A share that no sum of GB makes a whole number of millionths. */
    private static Platform withAnUnevenShare(Platform from) {
        MemorySupport memory = from.memory();
        OptionalDouble share = memory.modes().mirroredFraction().isPresent() ? OptionalDouble.of(1 / 3.0) : memory.modes().mirroredFraction();
        return new Platform(from.sku(), from.name(), from.processors(),
                new MemorySupport(memory.generation(), memory.channels(), memory.slotsPerChannel(), memory.maxLogicalRanks(), memory.speeds(), memory.mix(), new MemoryModes(share, memory.modes().rankSparing())),
                from.board(), from.coolingAndPower(), Expansion.NONE);
    }

    private static Processor withCores(Processor from, int cores) {
        return new Processor(from.sku(), from.description(), from.fit(),
                new Processor.CoreFigures(cores, 2 * cores, from.baseGhz(), from.allCoreGhz(), from.tdpW()), from.memory(),
                from.socketsMax(), from.throughput());
    }

    private Map<String, List<Lot>> lots(RandomCase that) {
        double free = pick(0.0, 0.2, 0.5, 1.0);
        boolean modulesOnly = chance(0.5);
        // Dear modules bring out what bounds lose by rounding.
        int times = chance(0.2) ? 1000 : 1;
        Map<String, List<Lot>> lots = new LinkedHashMap<>();
        that.lots().forEach((sku, all) -> {
            boolean module = that.catalog().module(sku).isPresent();
            lots.put(sku, all.stream().map(lot -> (module || !modulesOnly) && chance(free) ? free(lot) : module ? dearer(lot, times) : lot).toList());
        });
        return lots;
    }

    /** At nothing from the first unit on, or from a price break on. */
    private Lot free(Lot lot) {
        int from = chance(0.7) ? 0 : random.nextInt(lot.breaks().size());
        List<Lot.PriceBreak> breaks = new ArrayList<>(lot.breaks());
        for (int i = from; i < breaks.size(); i++) {
            breaks.set(i, new Lot.PriceBreak(breaks.get(i).minQuantity(), 0, OptionalLong.empty()));
        }
        return lot.with(lot.available(), breaks);
    }

    private static Lot dearer(Lot lot, int times) {
        return lot.with(lot.available(), lot.breaks().stream()
                .map(one -> new Lot.PriceBreak(one.minQuantity(), times * one.unitPrice(), one.unitCost())).toList());
    }

    /** Every objective as often as any other. */
    private Request aimed(Request from) {
        Objective objective = pick(RandomRequest.DRAWN);
        Worth worth = objective == Objective.BEST_VALUE && from.worth().equals(Worth.NOTHING)
                ? new Worth(random.nextInt(6) * 250, random.nextInt(4) * 1000.0 / 3, random.nextInt(4) * 75, random.nextInt(4) * 120) : from.worth();
        return new Request(from.name(), from.machines(), from.require(), from.limit(), new Goal(objective, worth, from.licence()), from.list(),
                new PartChoice(from.platforms(), from.forbid(), from.use(), from.onHand(), Equipment.NONE));
    }

    /** Modules above all, and enough of them to fill a machine. */
    private Map<String, Integer> onHand(Catalog catalog) {
        List<String> modules = catalog.modules().stream().map(MemoryModule::sku).toList();
        List<String> all = catalog.parts().stream().map(Part::sku).toList();
        Map<String, Integer> own = new HashMap<>();
        int kinds = random.nextInt(1, 4);
        for (int i = 0; i < kinds; i++) {
            List<String> from = chance(0.7) ? modules : all;
            own.put(from.get(random.nextInt(from.size())), random.nextInt(1, 13));
        }
        return own;
    }

    /** With limits that are exactly the figures of one build, or a hair beyond. */
    private RandomCase atABuild(RandomCase that) {
        RandomCase unlimited = that.with(that.request().withLimit(that.request().limit().withPrice(OptionalLong.empty())));
        List<Candidate> builds = size == RandomCase.Size.LISTABLE ? BruteForce.all(unlimited) : found(unlimited);
        if (builds.isEmpty()) {
            return that;
        }
        // At the least price there is nothing left to spend on what is dearer than nothing.
        Candidate build = chance(0.3) ? Collections.min(builds, Comparator.comparingLong(Candidate::price)) : builds.get(random.nextInt(builds.size()));
        Request request = unlimited.request();
        Limits limit = request.limit();
        if (chance(0.7)) {
            limit = limit.withPrice(OptionalLong.of(Math.max(0, build.price() - (chance(0.8) ? 0 : 1))));
        }
        if (chance(0.2)) {
            limit = new Limits(limit.price(), OptionalDouble.of(build.load() / 1e6), limit.leadDays(), limit.inletC(), limit.altitudeM(),
                    limit.mainsV(), limit.conditions());
        }
        return that.with(request.withLimit(limit).withRequire(reached(request.require(), build)));
    }

    private Requirements reached(Requirements from, Candidate build) {
        int cores = chance(0.1) ? build.cores() : from.cores();
        double memory = chance(0.2) ? build.usable() / 1e6 : from.memoryGb();
        double bandwidth = chance(0.15) ? build.bandwidth() / 1e6 : from.bandwidthGbs();
        ProcessorNeeds processing = new ProcessorNeeds(from.processors(), cores, chance(0.15) ? build.throughput() / 1e6 : from.throughput(),
                from.baseGhz(), from.allCoreGhz());
        return new Requirements(processing, new MemoryNeeds(memory, bandwidth, chance(0.15) ? perCore(build.usable(), build) : from.gbPerCore(),
                chance(0.15) ? perCore(build.bandwidth(), build) : from.gbsPerCore(), from.spareSlots(), from.mode(), from.populated()));
    }

    private static double perCore(long millionths, Candidate build) {
        return NaiveFigures.rounded(millionths / 1e6 / build.cores());
    }

    private static List<Candidate> found(RandomCase that) {
        List<Order> orders = Agreement.search(that.with(that.request().withAlternatives(12, 0))).ranked();
        return orders.stream().map(Agreement::candidate).toList();
    }

    private boolean chance(double share) {
        return random.nextDouble() < share;
    }

    @SafeVarargs
    private <T> T pick(T... choices) {
        return choices[random.nextInt(choices.length)];
    }
}
