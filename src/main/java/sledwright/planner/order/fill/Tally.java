package sledwright.planner.order.fill;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sledwright.domain.Build;
import sledwright.domain.MemoryWish;
import sledwright.planner.order.market.Bay;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.Draws;
import sledwright.planner.order.market.Market;
import sledwright.rules.memory.OneModulePart;

/** An order in the making: how often each column is used, what that takes from the stock, and what it costs. */
public final class Tally {

    private final Market market;
    private final Draws draws;
    private final long[] penalty;
    private final Map<Column, Integer> counts = new LinkedHashMap<>();
    private final Map<Integer, Set<Column>> byLine = new HashMap<>();
    private final int[] filled;
    private final int[][] need;
    private final Map<Bay, int[]> enclosures = new HashMap<>();
    private long cost;

    /** @param penalty for each line what a machine that is not delivered counts, scaled */
    public Tally(Market market, Draws draws, long[] penalty) {
        this.market = market;
        this.draws = draws;
        this.penalty = penalty;
        filled = new int[market.lines().size()];
        need = new int[market.pools().size()][market.parts()];
        for (int line = 0; line < filled.length; line++) {
            cost += penalty[line] * market.line(line).machines();
        }
    }

    /** An order of which nothing is filled yet. */
    Tally empty() {
        return new Tally(market, draws, penalty);
    }

    public Tally copy(Draws on) {
        Tally copy = new Tally(market, on, penalty);
        List<Step> all = counts.entrySet().stream().map(entry -> new Step(entry.getKey(), entry.getValue())).toList();
        // Where fewer suppliers are open, some of it may not be had any more.
        if (!copy.change(all)) {
            all.forEach(step -> copy.change(List.of(step)));
        }
        return copy;
    }

    public Draws draws() {
        return draws;
    }

    public Market market() {
        return market;
    }

    /** How often each column is used. */
    public Map<Column, Integer> counts() {
        return counts;
    }

    int count(Column column) {
        return counts.getOrDefault(column, 0);
    }

    /** The columns that a line uses. */
    Set<Column> columnsOf(int line) {
        return byLine.getOrDefault(line, Set.of());
    }

    /** Machines of a line that are not delivered. */
    public int missing(int line) {
        return market.line(line).machines() - filled[line];
    }

    public int missing() {
        int missing = 0;
        for (int line = 0; line < filled.length; line++) {
            missing += missing(line);
        }
        return missing;
    }

    /** Whether the order takes any unit of a part. */
    public boolean takes(int part) {
        return Arrays.stream(need).anyMatch(pool -> pool[part] > 0);
    }

    /** Units of each part that each pool's lines take. */
    public int[][] need() {
        return need;
    }

    /** Price, less worth, with what is not delivered counted; scaled. */
    public long cost() {
        return cost;
    }

    /** The same without what is not delivered. */
    public long ofDelivered() {
        long all = cost;
        for (int line = 0; line < filled.length; line++) {
            all -= penalty[line] * missing(line);
        }
        return all;
    }

    /** A change of how often a column is used. */
    record Step(Column column, int times) {
    }

    /** By how much the cost would change; {@link Draws#IMPOSSIBLE} where the stock does not allow it. */
    long difference(List<Step> steps) {
        Undo undo = new Undo();
        long difference = apply(steps, undo);
        undo.back();
        return difference;
    }

    boolean change(List<Step> steps) {
        Undo undo = new Undo();
        long difference = apply(steps, undo);
        if (difference >= Draws.IMPOSSIBLE) {
            undo.back();
            return false;
        }
        cost += difference;
        return true;
    }

    /** Takes some lines' machines apart and fills them in some other way; they keep those that they had where these cost no more. */
    void renew(Collection<Integer> lines, Runnable fill) {
        List<Step> had = steps(lines);
        long before = cost;
        change(without(had));
        fill.run();
        if (cost >= before) {
            change(without(steps(lines)));
            change(had);
        }
    }

    List<Step> steps(Collection<Integer> lines) {
        return lines.stream().flatMap(line -> columnsOf(line).stream()).map(column -> new Step(column, count(column))).toList();
    }

    static List<Step> without(List<Step> steps) {
        return steps.stream().map(step -> new Step(step.column(), -step.times())).toList();
    }

    /** What a change has touched, to take it back. */
    private final class Undo {
        private final List<int[]> needs = new ArrayList<>();
        private final List<Runnable> others = new ArrayList<>();

        void back() {
            for (int i = needs.size() - 1; i >= 0; i--) {
                int[] was = needs.get(i);
                need[was[0]][was[1]] = was[2];
            }
            for (int i = others.size() - 1; i >= 0; i--) {
                others.get(i).run();
            }
        }
    }

    private long apply(List<Step> steps, Undo undo) {
        // Prices before, of each part that changes; a part is priced once however many steps touch it.
        Map<Integer, Long> before = new HashMap<>();
        long difference = 0;
        boolean housed = false;
        for (Step step : steps) {
            Column column = step.column();
            int pool = market.poolOf(column.line());
            for (int i = 0; i < column.parts().length; i++) {
                need(before, undo, pool, column.parts()[i], column.units()[i] * step.times());
            }
            difference += (column.own() - penalty[column.line()] * column.machines()) * step.times();
            int line = column.line();
            filled[line] += column.machines() * step.times();
            int used = count(column, step.times());
            undo.others.add(() -> {
                filled[line] -= column.machines() * step.times();
                count(column, -step.times());
            });
            housed |= column.bay() != null;
            if (filled[line] > market.line(line).machines() || used < 0) {
                return Draws.IMPOSSIBLE;
            }
        }
        if (steps.stream().map(step -> step.column().line()).distinct().anyMatch(this::isMixed)) {
            return Draws.IMPOSSIBLE;
        }
        if (housed && !house(steps, before, undo)) {
            return Draws.IMPOSSIBLE;
        }
        for (Map.Entry<Integer, Long> part : before.entrySet()) {
            long after = draws.price(part.getKey(), need);
            if (after >= Draws.IMPOSSIBLE) {
                return Draws.IMPOSSIBLE;
            }
            difference += after - part.getValue();
        }
        return difference;
    }

    /** Parts of memory modules that a line's machines take. */
    Set<Integer> moduleParts(int line) {
        return columnsOf(line).stream().flatMapToInt(column -> Arrays.stream(column.parts())).filter(market::isModule).boxed()
                .collect(Collectors.toSet());
    }

    /** Whether a line that wants one build has several, or one that wants one part number of module. */
    private boolean isMixed(int line) {
        MemoryWish wish = market.line(line).request().require().populated();
        if (wish.onePart() && !OneModulePart.allows(wish, moduleParts(line).size())) {
            return true;
        }
        if (!market.line(line).uniform()) {
            return false;
        }
        List<Build> builds = columnsOf(line).stream().flatMap(column -> column.builds().stream()).toList();
        return builds.stream().anyMatch(build -> !build.isAlike(builds.get(0)));
    }

    /** Counts a column more or less often; how often it is used then. */
    private int count(Column column, int more) {
        int times = counts.merge(column, more, Integer::sum);
        if (times == 0) {
            counts.remove(column);
            byLine.get(column.line()).remove(column);
        } else {
            byLine.computeIfAbsent(column.line(), line -> new LinkedHashSet<>()).add(column);
        }
        return times;
    }

    private void need(Map<Integer, Long> before, Undo undo, int pool, int part, int more) {
        before.computeIfAbsent(part, asked -> draws.price(asked, need));
        undo.needs.add(new int[] {pool, part, need[pool][part]});
        need[pool][part] += more;
    }

    /** Puts the sleds of every kind of enclosure that changes into enclosures again. */
    private boolean house(List<Step> steps, Map<Integer, Long> before, Undo undo) {
        for (Bay bay : steps.stream().map(step -> step.column().bay()).filter(some -> some != null).distinct().toList()) {
            List<List<Integer>> packed = Packing.pack(loads(bay), bay);
            if (packed == null) {
                return false;
            }
            int[] were = enclosures.computeIfAbsent(bay, some -> new int[1]);
            int more = packed.size() - were[0];
            int old = were[0];
            need(before, undo, bay.pool(), market.index().get(bay.enclosure().sku()), more);
            need(before, undo, bay.pool(), market.index().get(bay.supply().sku()), more * bay.supply().count());
            were[0] = packed.size();
            undo.others.add(() -> were[0] = old);
        }
        return true;
    }

    /** The load of every sled in a kind of enclosure, in the order of {@link #counts}. */
    public long[] loads(Bay bay) {
        return counts.entrySet().stream().filter(entry -> bay.equals(entry.getKey().bay()))
                .flatMapToLong(entry -> IntStream.range(0, entry.getValue()).boxed()
                        .flatMapToLong(time -> Arrays.stream(entry.getKey().microwatts()))).toArray();
    }
}
