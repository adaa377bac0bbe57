package sledwright.generator.memory;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import sledwright.domain.CoolingKit;
import sledwright.domain.Goal;
import sledwright.domain.Licence;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemorySupport;
import sledwright.domain.Objective;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Worth;
import sledwright.generator.draw.CountedDraws;
import sledwright.generator.draw.DrawsKey;
import sledwright.generator.draw.EntangledDraws;
import sledwright.generator.draw.KindDraws;
import sledwright.generator.draw.Shelf;
import sledwright.generator.draw.UnitCounts;
import sledwright.generator.keep.Content;
import sledwright.generator.keep.Kept;
import sledwright.generator.shape.GroupKind;
import sledwright.generator.shape.ShapeFinder;
import sledwright.generator.shape.ShapeKey;
import sledwright.generator.shape.Shapes;
import sledwright.generator.shape.SocketSlots;
import sledwright.generator.time.Deadline;

/**
 * The memory that a request may choose among, worked out as it is asked for and shared by platforms with equal rules, and by threads:
 * whatever ends before it is whole has its deadline from the one who asks.
 */
public final class MemoryMarket {

    private final MemoryStock stock;
    private final Request request;
    private final Shelf shelf;
    private final Kept kept;
    private final Kept options;
    private final Map<String, Integer> leastUnits = new TreeMap<>();

    /**
     * @param stock     of the lots that the request accepts
     * @param request   as {@link #concerning} leaves it
     * @param somewhere modules of which one machine at least must hold one
     * @param options   where this market's options are kept, which no other can use
     */
    public MemoryMarket(MemoryStock stock, Request request, Set<String> somewhere, Kept options) {
        this.options = options;
        this.stock = stock;
        this.request = request;
        shelf = stock.shelf();
        kept = stock.kept();
        somewhere.forEach(sku -> leastUnits.put(sku, 1));
        request.use().stream().filter(sku -> stock.catalog().module(sku).isPresent())
                .forEach(sku -> leastUnits.put(sku, request.machines()));
    }

    /**
     * The part of a request that its market depends on. Requests alike in that share one, whatever else they ask of memory
     * ({@link MemoryNeed}), and what one has worked out serves the others: explanations ask after many that differ in a limit or two.
     */
    public static Request concerning(Request request) {
        Requirements require = request.require();
        Limits limit = request.limit();
        Request part = Request.named("").withMachines(request.machines()).withForbid(request.forbid())
                .withUse(request.use()).withOnHand(request.onHand())
                .withRequire(Requirements.NONE.withMode(require.mode()).withPopulated(require.populated())
                        .withSpareSlots(require.spareSlots()))
                .withLimit(Limits.NONE.withLeadDays(limit.mostDays()).withConditions(limit.conditions()));
        return request.objective() == Objective.BEST_VALUE
                ? part.withGoal(new Goal(Objective.CHEAPEST, new Worth(0, request.worth().gb(), 0, 0), Licence.NONE)) : part;
    }

    // A short run hashes one request, and records of records take long to hash the first time: plain values stand for them.

    /** What of such a part decides which lots may be drawn on. */
    public static List<Object> accepted(Request part) {
        return List.of(part.forbid(), part.onHand(), part.limit().mostDays(), part.limit().conditions());
    }

    /** All else of such a part. */
    public static List<Object> beside(Request part) {
        Requirements require = part.require();
        return List.of(part.machines(), part.use(), require.mode(), require.spareSlots(), require.populated().balanced(),
                require.populated().onePart(), part.worth().gb());
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
        SocketRoom room = kept.get(new SocketRoom.Key(platform, kit, sockets), () -> SocketRoom.of(platform, kit, sockets));
        return options.get(new OptionsKey(this, room.content(), barred), () -> newOptions(platform, room, barred));
    }

    private List<MemoryOption> newOptions(Platform platform, SocketRoom room, Set<String> barred) {
        List<MemoryOption> found = new ArrayList<>();
        for (List<Level> fastestFirst : stock.levels(platform, barred, request.require().populated(), isSparing())) {
            for (int i = 0; i < fastestFirst.size(); i++) {
                int nextSlowerMts = i + 1 < fastestFirst.size() ? fastestFirst.get(i + 1).mts() : 0;
                option(room, fastestFirst.get(i), nextSlowerMts, found);
            }
        }
        return found;
    }

    private boolean isSparing() {
        return request.require().mode() == MemoryMode.RANK_SPARING;
    }

    private void option(SocketRoom room, Level level, int nextSlowerMts, List<MemoryOption> found) {
        MemorySupport memory = room.memory();
        List<MemoryModule> modules = level.modules();
        Set<String> wanted = leastUnits.keySet();
        if (!wanted.isEmpty() && !modules.stream().map(MemoryModule::sku).collect(Collectors.toSet()).containsAll(wanted)) {
            return;
        }
        MemoryMode mode = request.require().mode();
        double share = mode == MemoryMode.MIRRORED ? memory.modes().mirroredFraction().orElse(0) : 1;
        int slots = Math.min(room.least(), Math.max(0, room.mostModules(request.require())) / room.sockets());
        MemoryOption.Extent extent = new MemoryOption.Extent(request.machines(), room.sockets(), slots, memory.channels(),
                level.extremes().mostGb(), share, stock.catalog().labour().perModule());
        double worthOfGb = request.worth().gb() * share;
        PriceFloor allPrices = stock.floorAtAnySpeed(level, memory, request.require().populated(), worthOfGb);
        boolean keptApart = level.entangled().stream().anyMatch(set -> level.holdsAny(set, wanted));
        found.add(new MemoryOption(level, nextSlowerMts, keptApart, extent, allPrices,
                () -> stock.floor(level, worthOfGb),
                new Builder(room, level)));
    }

    private ShapeKey shapes(SocketRoom room, Level level) {
        MemorySupport memory = room.memory();
        return new ShapeKey(List.copyOf(level.groups().keySet()), new SocketSlots(memory.slotsPerChannel(), room.depths()),
                request.require().mode(), memory.rankLimit(level.type()), memory.mix().maxDistinctCapacities(),
                memory.mix().countsPerSocket(), request.require().populated().balanced());
    }

    /** Works out an option, or knows its points: they are kept by what they depend on. */
    private final class Builder implements MemoryOption.Builder {

        private final SocketRoom room;
        private final Level level;
        private PointsKey.OfOption content;

        Builder(SocketRoom room, Level level) {
            this.room = room;
            this.level = level;
        }

        @Override
        public MemoryOption.Points of(MemoryNeed need, Deadline deadline) {
            return new AskedPoints(kept, content(), need, () -> pricing(need, deadline));
        }

        private PointsKey.OfOption content() {
            PointsKey.OfOption known = content;
            if (known == null) {
                List<List<Lot>> lots = level.modules().stream().map(module -> shelf.lots(module.sku())).toList();
                Content all = new Content(List.of(shapes(room, level), level.groups(), lots, leastUnits, room.sockets(), room.uncovered(),
                        stock.catalog().labour().perModule(), room.memory().modes().mirroredFraction(), request.machines()));
                known = new PointsKey.OfOption(all, lots.stream().mapToInt(List::size).sum());
                content = known;
            }
            return known;
        }

        private Pricing pricing(MemoryNeed need, Deadline deadline) {
            ShapeKey key = shapes(room, level);
            Shapes shapes = kept.get(key, () -> ShapeFinder.find(key, deadline));
            UnitCounts counts = new UnitCounts(request.machines(), request.machines() * room.sockets() * key.multiple(),
                    shapes.layouts().maxModules());
            KindDraws kinds = new KindDraws(shelf, leastUnits, counts, need.everyWeight());
            Map<GroupKind, EntangledDraws> entangled = entangled(kinds, counts.perModule());
            List<GroupDraws> drawn = new ArrayList<>();
            level.groups().forEach((group, modules) -> drawn.add(entangled.containsKey(group)
                    ? new GroupDraws(null, more -> { }, entangled.get(group)) : counted(kinds, counts, group, modules, need, deadline)));
            return new Pricing(request.machines(), need, room, shapes, drawn, stock.catalog().labour().perModule(), deadline);
        }

        private GroupDraws counted(KindDraws kinds, UnitCounts counts, GroupKind group, List<MemoryModule> modules, MemoryNeed need,
                Deadline deadline) {
            DrawsKey key = new DrawsKey(group, modules, KindDraws.lots(shelf, modules), counts,
                    modules.stream().map(module -> leastUnits.getOrDefault(module.sku(), 0)).toList(), need.everyWeight());
            CountedDraws draws = kept.get(key, () -> kinds.ofGroup(group, modules, deadline));
            return new GroupDraws(draws, more -> kept.grew(key, draws, more), null);
        }

        /** Of each group that is entangled, the set that it is in; a part that is wanted keeps its set's groups apart. */
        private Map<GroupKind, EntangledDraws> entangled(KindDraws kinds, int unitsPerModule) {
            Map<GroupKind, EntangledDraws> byGroup = new HashMap<>();
            for (List<GroupKind> set : level.entangled()) {
                if (!level.holdsAny(set, leastUnits.keySet())) {
                    Map<GroupKind, List<MemoryModule>> modules = set.stream()
                            .collect(Collectors.toMap(Function.identity(), level.groups()::get));
                    EntangledDraws draws = new EntangledDraws(modules, kinds, unitsPerModule);
                    set.forEach(group -> byGroup.put(group, draws));
                }
            }
            return byGroup;
        }
    }
}
