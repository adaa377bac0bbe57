package sledwright.planner.order.market;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sledwright.domain.BayGroup;
import sledwright.domain.Board;
import sledwright.domain.Catalog;
import sledwright.domain.Enclosure;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Equipment;
import sledwright.domain.Expansion;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Part;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Supply;
import sledwright.generator.draw.Watts;
import sledwright.rules.card.PartsNeeded;
import sledwright.rules.choice.ForbiddenPart;
import sledwright.rules.enclosure.EnclosurePower;

/** What an order draws on: the lots that its lines accept, by part, and the enclosures that its sleds may stand in. */
public final class Market {

    /** More units than that are as good, and sums of them stay whole numbers. */
    private static final int MOST_UNITS = Integer.MAX_VALUE / 4;

    private final Catalog catalog;
    private final OrderRequest order;
    private final int machines;
    private final List<String> skus = new ArrayList<>();
    private final Map<String, Integer> index = new HashMap<>();
    private final List<Pool> pools;
    private final int[] poolOf;
    private final long[][] cheapest;
    private final Map<String, Integer> useful;
    private final List<List<OfferedLot>> byPart = new ArrayList<>();
    private final List<String> suppliers = new ArrayList<>();
    private final List<Bay> bays = new ArrayList<>();
    private final boolean[][] within;
    /** Units of each part that a pool's lines may draw. */
    private final int[][] available;

    public Market(Catalog catalog, OrderRequest order) {
        this.catalog = catalog;
        this.order = order;
        machines = order.machines();
        pools = pools(catalog, order);
        poolOf = order.lines().stream().mapToInt(line -> pools.indexOf(Pool.of(line.request().limit()))).toArray();
        useful = useful();
        Map<String, Integer> supplierIndex = new LinkedHashMap<>();
        for (Part part : catalog.parts()) {
            index.put(part.sku(), skus.size());
            skus.add(part.sku());
            List<OfferedLot> sources = new ArrayList<>();
            for (Lot lot : lots(part.sku())) {
                boolean[] accepted = new boolean[pools.size()];
                boolean any = false;
                for (int pool = 0; pool < accepted.length; pool++) {
                    accepted[pool] = pools.get(pool).accepts(lot);
                    any |= accepted[pool];
                }
                if (any) {
                    boolean isDelivered = !lot.onHand() && !catalog.suppliers().isOwn(lot.supplier());
                    int supplier = isDelivered
                            ? supplierIndex.computeIfAbsent(Lot.supplierKey(lot.supplier()), name -> supplierIndex.size()) : -1;
                    OfferedLot source = OfferedLot.of(lot, skus.size() - 1, accepted, supplier, useful.getOrDefault(part.sku(), 0));
                    if (!source.steps().isEmpty()) {
                        sources.add(source);
                    }
                }
            }
            byPart.add(sources);
        }
        suppliers.addAll(supplierIndex.keySet());
        cheapest = IntStream.range(0, pools.size())
                .mapToObj(pool -> byPart.stream().mapToLong(sources -> cheapest(sources, pool)).toArray())
                .toArray(long[][]::new);
        available = IntStream.range(0, pools.size())
                .mapToObj(pool -> byPart.stream().mapToInt(sources -> (int) Math.min(MOST_UNITS, sources.stream()
                        .filter(source -> source.pools()[pool]).mapToLong(OfferedLot::most).sum())).toArray())
                .toArray(int[][]::new);
        within = within();
        addBays();
    }

    /** For each pool and another whether its lines accept every lot of the other. */
    private boolean[][] within() {
        boolean[][] all = new boolean[pools.size()][pools.size()];
        for (boolean[] others : all) {
            Arrays.fill(others, true);
        }
        byPart.forEach(sources -> sources.forEach(source -> {
            for (int pool = 0; pool < all.length; pool++) {
                for (int other = 0; other < all.length; other++) {
                    all[pool][other] &= source.pools()[pool] || !source.pools()[other];
                }
            }
        }));
        return all;
    }

    /** Those of the lines and, where enclosures may hold sleds of several, those of lots that all of these accept. */
    private static List<Pool> pools(Catalog catalog, OrderRequest order) {
        Set<Pool> pools = new LinkedHashSet<>();
        Set<Pool> ofSleds = new LinkedHashSet<>();
        for (OrderLine line : order.lines()) {
            Pool pool = Pool.of(line.request().limit());
            pools.add(pool);
            Set<String> asked = line.request().platforms();
            boolean buys = line.request().equipment().enclosure() == EnclosureFrom.NEW;
            if (buys && catalog.enclosures().stream().anyMatch(enclosure -> asked.isEmpty()
                    || enclosure.takes().stream().anyMatch(asked::contains))) {
                List.copyOf(ofSleds).forEach(other -> other.and(pool).ifPresent(ofSleds::add));
                ofSleds.add(pool);
            }
        }
        pools.addAll(ofSleds);
        return List.copyOf(pools);
    }

    private List<Lot> lots(String sku) {
        List<Lot> lots = new ArrayList<>();
        int own = order.onHand().getOrDefault(sku, 0);
        if (own > 0) {
            lots.add(Lot.onHand(sku, own));
        }
        lots.addAll(catalog.lots(sku));
        return lots;
    }

    /** Units of each part that no order of a given number of machines goes beyond. */
    private Map<String, Integer> useful() {
        Map<String, Integer> useful = new HashMap<>();
        int mostSockets = 0;
        int mostSlots = 0;
        for (Platform platform : catalog.platforms()) {
            Board board = platform.board();
            mostSockets = Math.max(mostSockets, board.sockets());
            mostSlots = Math.max(mostSlots, board.sockets() * board.channels() * board.slotsPerChannel());
            useful.put(platform.sku(), machines);
            platform.cooling().forEach(kit -> useful.merge(kit.sku(), times(machines, board.sockets()), Math::max));
            platform.power().supplies().forEach(supply -> useful.merge(supply.sku(), times(machines, supply.count()), Math::max));
        }
        for (Enclosure enclosure : catalog.enclosures()) {
            useful.put(enclosure.sku(), machines);
            enclosure.supplies().forEach(supply -> useful.merge(supply.sku(), times(machines, supply.count()), Integer::sum));
        }
        int sockets = mostSockets;
        int slots = mostSlots;
        catalog.processors().forEach(processor -> useful.put(processor.sku(), times(machines, sockets)));
        catalog.modules().forEach(module -> useful.put(module.sku(), times(machines, slots)));
        addEquipment(useful);
        return useful;
    }

    private void addEquipment(Map<String, Integer> useful) {
        int mostBays = 0;
        int mostCards = 0;
        List<Equipment> wishes = order.lines().stream().map(line -> line.request().equipment()).distinct().toList();
        for (Platform platform : catalog.platforms()) {
            Expansion expansion = platform.expansion();
            mostBays = Math.max(mostBays, expansion.bays().stream().mapToInt(BayGroup::count).sum());
            mostCards = Math.max(mostCards, expansion.slots().size());
            for (Equipment wish : wishes) {
                for (int processors : platform.processors().counts()) {
                    Map<String, Integer> called = PartsNeeded.called(platform, processors, wish);
                    expansion.slots().stream().flatMap(slot -> slot.riser().stream()).distinct()
                            .forEach(riser -> called.merge(riser, 1, Integer::sum));
                    called.forEach((sku, each) -> useful.merge(sku, times(machines, each), Math::max));
                }
            }
        }
        int bays = mostBays;
        int cards = mostCards;
        catalog.drives().forEach(drive -> useful.put(drive.sku(), times(machines, bays)));
        catalog.cards().forEach(card -> useful.put(card.sku(), times(machines, cards)));
    }

    private static int times(int machines, int each) {
        return (int) Math.min(Integer.MAX_VALUE / 4, (long) machines * each);
    }

    private void addBays() {
        List<Boolean> lowLine = order.lines().stream().map(line -> line.request().limit().lowLine()).distinct().toList();
        for (Enclosure enclosure : catalog.enclosures()) {
            for (Supply supply : enclosure.supplies()) {
                for (boolean low : lowLine) {
                    Limits site = order.lines().stream().map(line -> line.request().limit()).filter(limit -> limit.lowLine() == low)
                            .findFirst().orElseThrow();
                    double capacityW = EnclosurePower.capacityW(enclosure, supply, site);
                    for (int pool = 0; pool < pools.size() && capacityW > 0; pool++) {
                        long capacity = Watts.micro(Math.min(capacityW, 1e9));
                        if (available(index.get(enclosure.sku()), pool) < 1 || available(index.get(supply.sku()), pool) < supply.count()) {
                            continue;
                        }
                        bays.add(new Bay(bays.size(), enclosure, supply, pool, site, capacity));
                    }
                }
            }
        }
    }

    public Catalog catalog() {
        return catalog;
    }

    public OrderRequest order() {
        return order;
    }

    public List<OrderLine> lines() {
        return order.lines();
    }

    public OrderLine line(int line) {
        return order.lines().get(line);
    }

    public int parts() {
        return skus.size();
    }

    public String sku(int part) {
        return skus.get(part);
    }

    /** Sku -> index of the part. */
    public Map<String, Integer> index() {
        return index;
    }

    public List<Pool> pools() {
        return pools;
    }

    public int poolOf(int line) {
        return poolOf[line];
    }

    /** Machines of a line that one enclosure takes at most. */
    public int room(int line, Bay bay) {
        return Math.min(bay.bays(), line(line).machines());
    }

    public List<OfferedLot> sources(int part) {
        return byPart.get(part);
    }

    /** What a unit of a part costs a pool's lines at least, scaled; 0 where they cannot have it. */
    public long cheapest(int part, int pool) {
        return cheapest[pool][part];
    }

    private static long cheapest(List<OfferedLot> sources, int pool) {
        return sources.stream().filter(source -> source.pools()[pool]).flatMap(source -> source.steps().stream())
                .mapToLong(OfferedLot.Step::price).min().orElse(0);
    }

    /** Units of a part that a pool's lines may draw. */
    public int available(int part, int pool) {
        return available[pool][part];
    }

    /** Units of a part that no machine goes beyond. */
    public int mostInMachine(int part) {
        return useful.getOrDefault(sku(part), 0) / Math.max(1, machines);
    }

    public boolean isModule(int part) {
        return catalog.module(sku(part)).isPresent();
    }

    /** Whether enclosures take units of a part. */
    public boolean isOfEnclosures(int part) {
        return bays.stream().anyMatch(bay -> bay.enclosure().sku().equals(sku(part)) || bay.supply().sku().equals(sku(part)));
    }

    /** A supplier's name as its lots spell it most often. */
    public String spelled(int supplier) {
        Map<String, Long> spellings = byPart.stream().flatMap(List::stream).filter(source -> source.supplier() == supplier)
                .collect(Collectors.groupingBy(source -> source.lot().supplier(), TreeMap::new, Collectors.counting()));
        return spellings.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow().getKey();
    }

    /** Those who deliver. */
    public List<String> suppliers() {
        return suppliers;
    }

    /** Whether it matters who delivers. */
    public boolean isSupplierScarce() {
        return order.deliveryCharge() > 0 || order.suppliersMax().isPresent();
    }

    public List<Bay> bays() {
        return bays;
    }

    /** Whether the order buys the enclosures of a line's sleds; the customer has them otherwise, and they are none of its business. */
    public boolean buysEnclosures(int line) {
        return line(line).request().equipment().enclosure() == EnclosureFrom.NEW;
    }

    /** Whether a line's machine of a platform stands in no enclosure that the order knows of. */
    public boolean standsAlone(int line, String platform) {
        return !buysEnclosures(line) || catalog.enclosures().stream().noneMatch(any -> any.takes().contains(platform));
    }

    /** Whether machines of a line may stand in an enclosure: it runs on the line's mains and its parts suit the line. */
    public boolean suits(Bay bay, int line) {
        Request request = line(line).request();
        if (!buysEnclosures(line) || bay.site().lowLine() != request.limit().lowLine()
                || !ForbiddenPart.allows(request, bay.enclosure().sku())
                || !ForbiddenPart.allows(request, bay.supply().sku())) {
            return false;
        }
        return within[poolOf(line)][bay.pool()];
    }
}
