package sledwright.generator.memory;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sledwright.domain.Catalog;
import sledwright.domain.CoolingKit;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemorySupport;
import sledwright.domain.ModuleType;
import sledwright.domain.Objective;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.generator.draw.Draw;
import sledwright.generator.draw.DrawsKey;
import sledwright.generator.draw.EntangledDraws;
import sledwright.generator.draw.KindDraws;
import sledwright.generator.draw.Shelf;
import sledwright.generator.keep.Kept;
import sledwright.generator.shape.GroupKind;
import sledwright.generator.shape.ShapeFinder;
import sledwright.generator.shape.ShapeKey;
import sledwright.generator.shape.Shapes;
import sledwright.generator.time.Deadline;
import sledwright.metrics.SpareSlots;
import sledwright.rules.cooling.BlockedSlot;
import sledwright.rules.memory.DeviceWidth;
import sledwright.rules.memory.MemoryGeneration;
import sledwright.rules.memory.OneModulePart;

/**
 * The memory that a request may choose among, worked out as it is asked for and shared by platforms with equal rules, and by threads:
 * whatever ends before it is whole has its deadline from the one who asks.
 */
public final class MemoryMarket {

    private final Catalog catalog;
    private final Request request;
    private final Shelf shelf;
    private final boolean everyWeight;
    private final Kept kept;
    private final Map<String, List<MemoryModule>> sold = new ConcurrentHashMap<>();
    private final Map<List<Object>, PriceFloor> floors = new ConcurrentHashMap<>();
    private final Map<List<Object>, List<MemoryOption>> options = new ConcurrentHashMap<>();
    private final Map<String, Integer> leastUnits = new TreeMap<>();

    /**
     * @param request   as {@link #concerning} leaves it
     * @param somewhere modules of which one machine at least must hold one
     * @param everyWeight whether a heavier population may come before a lighter one that is as good and as cheap
     * @param kept      what is kept from request to request
     */
    public MemoryMarket(Catalog catalog, Request request, Set<String> somewhere, boolean everyWeight, Kept kept) {
        this.everyWeight = everyWeight;
        this.catalog = catalog;
        this.request = request;
        this.kept = kept;
        shelf = new Shelf(catalog, request);
        somewhere.forEach(sku -> leastUnits.put(sku, 1));
        request.use().stream().filter(sku -> catalog.module(sku).isPresent()).forEach(sku -> leastUnits.put(sku, request.machines()));
    }

    /**
     * The part of a request that memory and its price depend on. Requests alike in this share a market, and what one has worked out
     * serves the others: explanations ask after many that differ in a limit or two.
     */
    public static Request concerning(Request request) {
        if (request.objective() == Objective.BEST_VALUE) {
            return request;
        }
        Requirements require = request.require();
        Limits limit = request.limit();
        return Request.named("").withMachines(request.machines()).withForbid(request.forbid())
                .withUse(request.use()).withOnHand(request.onHand())
                .withRequire(new Requirements(0, 0, require.memoryGb(), 0, 0, 0, 0, 0, 0, require.spareSlots(), require.mode(),
                        require.populated()))
                .withLimit(new Limits(limit.price(), OptionalDouble.empty(), limit.mostDays(), OptionalDouble.empty(), 0,
                OptionalDouble.empty(), limit.conditions()));
    }

    /** What there is to draw on. */
    public Shelf shelf() {
        return shelf;
    }

    /** What is kept from request to request. */
    public Kept kept() {
        return kept;
    }

    /**
     * The memory for a given number of processors on a platform under a kit, by module type, fastest first within each.
     *
     * @param barred modules that do not go onto the platform
     */
    public List<MemoryOption> options(Platform platform, CoolingKit kit, int sockets, Set<String> barred) {
        List<List<Integer>> depths = IntStream.range(0, sockets).mapToObj(socket -> IntStream.range(0, platform.board().channels())
                .mapToObj(channel -> BlockedSlot.depth(platform, kit, socket, channel)).toList()).distinct().toList();
        int uncovered = SpareSlots.uncovered(platform, kit, sockets);
        return options.computeIfAbsent(List.of(platform.memory(), depths, uncovered, sockets, barred),
                key -> newOptions(platform.memory(), depths, uncovered, sockets, barred));
    }

    private List<MemoryOption> newOptions(MemorySupport memory, List<List<Integer>> depths, int uncovered, int sockets,
                                          Set<String> barred) {
        List<MemoryOption> found = new ArrayList<>();
        for (ModuleType type : ModuleType.values()) {
            List<MemoryModule> modules = memory.takes(type)
                    ? sold(memory).stream().filter(module -> module.type() == type && !barred.contains(module.sku())).toList() : List.of();
            for (int width : widths(memory, modules)) {
                for (List<MemoryModule> mixing : mixing(modules.stream()
                        .filter(module -> width == 0 || module.deviceWidth() == width).toList())) {
                    List<Level> fastestFirst = kept.get(new LevelsKey(memory, type, width, mixing, isSparing()),
                            () -> Level.of(memory, type, width, mixing, isSparing()));
                    for (int i = 0; i < fastestFirst.size(); i++) {
                        int nextSlowerMts = i + 1 < fastestFirst.size() ? fastestFirst.get(i + 1).mts() : 0;
                        option(memory, fastestFirst.get(i), nextSlowerMts, depths, uncovered, sockets, found);
                    }
                }
            }
        }
        return found;
    }

    private boolean isSparing() {
        return request.require().mode() == MemoryMode.RANK_SPARING;
    }

    /** The widths that modules of one machine must share, each by itself; 0 alone where they may mix. */
    private static List<Integer> widths(MemorySupport memory, List<MemoryModule> modules) {
        Set<Integer> all = modules.stream().map(MemoryModule::deviceWidth).collect(Collectors.toSet());
        return DeviceWidth.allows(memory, all) ? List.of(0) : all.stream().sorted().toList();
    }

    /** Modules that may stand in machines that are sold together: all of them, or each by itself. */
    private List<List<MemoryModule>> mixing(List<MemoryModule> modules) {
        return OneModulePart.allows(request.require().populated(), modules.size()) ? List.of(modules)
                : modules.stream().map(List::of).toList();
    }

    private List<MemoryModule> sold(MemorySupport memory) {
        return sold.computeIfAbsent(memory.generation(), generation -> catalog.modules().stream()
                .filter(module -> MemoryGeneration.allows(memory, module) && !shelf.lots(module.sku()).isEmpty()).toList());
    }

    private void option(MemorySupport memory, Level level, int nextSlowerMts, List<List<Integer>> depths, int uncovered, int sockets,
                        List<MemoryOption> found) {
        List<MemoryModule> modules = level.modules();
        Set<String> wanted = leastUnits.keySet();
        if (!wanted.isEmpty() && !modules.stream().map(MemoryModule::sku).collect(Collectors.toSet()).containsAll(wanted)) {
            return;
        }
        MemoryMode mode = request.require().mode();
        ShapeKey key = new ShapeKey(List.copyOf(level.groups().keySet()), memory.slotsPerChannel(), depths, mode == MemoryMode.MIRRORED,
                isSparing(), memory.rankLimit(level.type()), memory.maxDistinctCapacities(), memory.countsPerSocket(),
                request.require().populated().balanced());
        int slots = IntStream.range(0, memory.channels())
                .map(channel -> depths.stream().mapToInt(depth -> depth.get(channel)).min().orElse(0)).sum();
        int mostModuleGb = modules.stream().mapToInt(MemoryModule::capacityGb).max().orElse(0);
        double share = mode == MemoryMode.MIRRORED ? memory.mirroredFraction().orElse(0) : 1;
        MemoryOption.Extent extent = new MemoryOption.Extent(request.machines(), sockets, slots, slots * mostModuleGb, memory.channels(),
                mostModuleGb, share, catalog.labour().perModule());
        double worthOfGb = request.worth().gb() * share;
        List<MemoryModule> ofType = OneModulePart.allows(request.require().populated(), sold(memory).size())
                ? sold(memory).stream().filter(module -> module.type() == level.type()).toList() : modules;
        PriceFloor allPrices = floors.computeIfAbsent(List.of(ofType, share), same -> new PriceFloor(shelf, ofType, worthOfGb));
        boolean keptApart = level.entangled().stream().anyMatch(set -> level.holdsAny(set, wanted));
        found.add(new MemoryOption(level, nextSlowerMts, keptApart, extent, allPrices,
                () -> floors.computeIfAbsent(List.of(modules, share), same -> new PriceFloor(shelf, modules, worthOfGb)),
                new Builder(memory, level, key, uncovered, sockets)::points));
    }

    /** Works out an option, or knows its points: they are kept by what they depend on. */
    private final class Builder implements MemoryOption.Builder {

        private final MemorySupport memory;
        private final Level level;
        private final ShapeKey key;
        private final int uncovered;
        private final int sockets;
        private PointsKey.Content content;

        Builder(MemorySupport memory, Level level, ShapeKey key, int uncovered, int sockets) {
            this.memory = memory;
            this.level = level;
            this.key = key;
            this.uncovered = uncovered;
            this.sockets = sockets;
        }

        @Override
        public MemoryPoints points(int mostSocketGb, Deadline deadline) {
            return kept.get(new PointsKey(content(), mostSocketGb), () -> pricing(deadline).points(mostSocketGb));
        }

        private PointsKey.Content content() {
            PointsKey.Content known = content;
            if (known == null) {
                List<List<Lot>> lots = level.modules().stream().map(module -> shelf.lots(module.sku())).toList();
                Requirements require = request.require();
                known = new PointsKey.Content(List.of(key, level.groups(), lots, leastUnits, sockets, uncovered,
                        catalog.labour().perModule(),
                        memory.mirroredFraction(), request.machines(), request.limit().price(), require.memoryGb(), require.spareSlots(),
                        require.mode(), everyWeight), lots.stream().mapToInt(List::size).sum());
                content = known;
            }
            return known;
        }

        private Pricing pricing(Deadline deadline) {
            Shapes shapes = kept.get(key, () -> ShapeFinder.find(key, deadline));
            int unitsPerModule = request.machines() * sockets * key.multiple();
            int mostModules = shapes.layouts().maxModules();
            KindDraws kinds = new KindDraws(shelf, leastUnits, request.machines(), unitsPerModule, mostModules, everyWeight, deadline);
            EntangledDraws[] entangled = entangled(kinds, unitsPerModule);
            List<List<List<Draw>>> drawn = new ArrayList<>();
            level.groups().forEach((group, modules) -> drawn.add(entangled[drawn.size()] != null ? null
                    : kept.get(new DrawsKey(group, modules, KindDraws.lots(shelf, modules), request.machines(), unitsPerModule, mostModules,
                            modules.stream().map(module -> leastUnits.getOrDefault(module.sku(), 0)).toList(), everyWeight),
                            () -> kinds.ofGroup(group, modules))));
            return new Pricing(request, memory, shapes, drawn, entangled, sockets, uncovered, catalog.labour().perModule(),
                    everyWeight, deadline);
        }

        /** For each group the set that it is entangled in; a part that is wanted keeps its set's groups apart. */
        private EntangledDraws[] entangled(KindDraws kinds, int unitsPerModule) {
            EntangledDraws[] byGroup = new EntangledDraws[key.groups().size()];
            for (List<GroupKind> set : level.entangled()) {
                if (!level.holdsAny(set, leastUnits.keySet())) {
                    Map<GroupKind, List<MemoryModule>> modules = set.stream()
                            .collect(Collectors.toMap(Function.identity(), level.groups()::get));
                    EntangledDraws draws = new EntangledDraws(modules, kinds, unitsPerModule);
                    set.forEach(group -> byGroup[key.groups().indexOf(group)] = draws);
                }
            }
            return byGroup;
        }
    }
}
