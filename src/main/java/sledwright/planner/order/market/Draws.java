package sledwright.planner.order.market;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import sledwright.domain.Lot;
import sledwright.domain.Pick;
import sledwright.metrics.CheapestDraw;

/** What units of a part cost when an order draws them together. */
public final class Draws {

    /** Above any price, and small enough that many of them add up without overflow. */
    public static final long IMPOSSIBLE = Long.MAX_VALUE / 1024;

    private final Market market;
    private final boolean[] open;
    private final long[][][] tables;
    private final SharedDraw[] shared;
    private final Map<List<Integer>, Long> mixed = new HashMap<>();
    private final Taken[] last;

    /** @param open for each supplier whether the order may draw on it */
    public Draws(Market market, boolean[] open) {
        this.market = market;
        this.open = open.clone();
        shared = new SharedDraw[market.parts()];
        tables = new long[market.parts()][market.pools().size()][];
        last = new Taken[market.parts()];
    }

    /** What was last taken of a part, which is asked for again and again while other parts are drawn. */
    private record Taken(List<Integer> need, Map<Lot, Integer> units) {
    }

    /** Units by lot that a part's units take; empty where there are not enough. */
    public Map<Lot, Integer> taken(int part, int[][] need) {
        List<Integer> asked = key(part, need);
        if (last[part] == null || !last[part].need.equals(asked)) {
            Map<Lot, Integer> units = new HashMap<>();
            Map<Integer, List<Pick>> picks = picks(part, need);
            if (picks != null) {
                picks.values().forEach(some -> some.forEach(pick -> units.merge(pick.lot(), pick.quantity(), Integer::sum)));
            }
            last[part] = new Taken(asked, units);
        }
        return last[part].units;
    }

    public boolean isOpen(OfferedLot source) {
        return source.supplier() < 0 || open[source.supplier()];
    }

    /** The price of units of a part, scaled; {@link #IMPOSSIBLE} where there are not enough. */
    public long price(int part, int[][] need) {
        int only = -1;
        int pools = need.length;
        for (int pool = 0; pool < pools; pool++) {
            if (need[pool][part] > 0) {
                if (only >= 0) {
                    return mixed.computeIfAbsent(key(part, need), asked -> sharedPrice(part, need));
                }
                only = pool;
            }
        }
        return only < 0 ? 0 : price(part, only, need[only][part]);
    }

    private static List<Integer> key(int part, int[][] need) {
        List<Integer> key = new ArrayList<>();
        key.add(part);
        for (int[] pool : need) {
            key.add(pool[part]);
        }
        return key;
    }

    private long price(int part, int pool, int units) {
        long[] table = tables[part][pool];
        if (table == null) {
            table = CheapestDraw.prices(lots(part, pool), sources(part, pool).stream().mapToInt(OfferedLot::most).sum());
            tables[part][pool] = table;
        }
        return units >= table.length || table[units] >= CheapestDraw.IMPOSSIBLE ? IMPOSSIBLE : table[units] * ScaledMoney.ONE;
    }

    private List<OfferedLot> sources(int part, int pool) {
        return market.sources(part).stream().filter(source -> isOpen(source) && source.pools()[pool]).toList();
    }

    private List<Lot> lots(int part, int pool) {
        return sources(part, pool).stream().map(OfferedLot::lot).toList();
    }

    private long sharedPrice(int part, int[][] need) {
        long price = draw(part).price(units(part, need));
        return price >= CheapestDraw.IMPOSSIBLE ? IMPOSSIBLE : price * ScaledMoney.ONE;
    }

    /** How many more units a pool could have of a part if others took theirs from other lots. */
    public int room(int part, int pool, int[][] need) {
        return Room.of(market.sources(part).stream().filter(this::isOpen).toList(), units(part, need), pool);
    }

    private SharedDraw draw(int part) {
        if (shared[part] == null) {
            shared[part] = new SharedDraw(market.sources(part).stream().filter(this::isOpen).toList());
        }
        return shared[part];
    }

    private static int[] units(int part, int[][] need) {
        return Arrays.stream(need).mapToInt(pool -> pool[part]).toArray();
    }

    /** The picks of a part's units by pool; null where there are not enough. A pick's own price is not that of the order. */
    public Map<Integer, List<Pick>> picks(int part, int[][] need) {
        List<Integer> pools = IntStream.range(0, need.length).filter(pool -> need[pool][part] > 0).boxed().toList();
        if (pools.size() == 1) {
            List<Pick> picks = CheapestDraw.picks(lots(part, pools.get(0)), need[pools.get(0)][part]);
            return picks == null ? null : Map.of(pools.get(0), picks);
        }
        if (pools.isEmpty()) {
            return Map.of();
        }
        return draw(part).picks(units(part, need));
    }
}
