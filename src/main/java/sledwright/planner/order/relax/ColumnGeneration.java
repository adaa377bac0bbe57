package sledwright.planner.order.relax;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.market.Bay;
import sledwright.planner.order.market.Column;
import sledwright.planner.order.market.Columns;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.OfferedLot;
import sledwright.planner.order.market.ScaledMoney;

/**
 * Column generation: the master prices the parts, the exact search answers with the best machines at these prices, and so on until
 * no better ones exist. Every round also gives a bound, whether or not it is the last.
 */
public final class ColumnGeneration {

    /** How far the prices stay with those of the best bound so far; the master's own swing. */
    private static final double HELD = 0.6;

    private static final double CLOSE = 1e-7;

    /** Minor units between mix and bound that no proof hangs on. */
    private static final double NOTHING = 0.002;

    /** Rounds after which a question that is still open is left open. */
    private static final int FEW = 4;

    /** How often cuts are looked for in a set of orders. */
    private static final int MOST_ROUNDS_OF_CUTS = 8;

    /** What no order takes that there is. */
    static final long NEVER = Long.MAX_VALUE / 16;

    private final Market market;
    private final Pricer pricer;
    private final RestrictedMaster master;
    private final LowerBound lower;
    private final boolean free;
    private final Columns columns;
    private final long[] penalty;
    private final Restrictions settled;
    private final Set<Integer> mustBeBought;
    private final List<Map<Integer, Integer>> most;
    private final List<StockCut> cuts = new ArrayList<>();
    private int roundsOfCuts;
    private boolean tightens;
    private Duals center;
    private long bound = Long.MIN_VALUE;
    private RestrictedMaster.Mix mix;
    private boolean finished;

    /** @param free whether parts cost nothing, so that only what is delivered counts */
    public ColumnGeneration(Market market, Pricer pricer, Columns columns, long[] penalty, boolean free, Restrictions settled) {
        this.market = market;
        this.penalty = penalty;
        this.pricer = pricer;
        this.columns = columns;
        this.free = free;
        this.settled = settled;
        mustBeBought = settled.drawn().entrySet().stream().filter(lot -> lot.getValue().least() > 0).map(lot -> lot.getKey().part())
                .collect(Collectors.toSet());
        most = IntStream.range(0, market.lines().size()).mapToObj(line -> settled.most(market, line)).toList();
        master = new RestrictedMaster(market, penalty, free, settled);
        lower = new LowerBound(market, free, settled);
    }

    /** The same under further restrictions, where no order takes less than here. */
    public ColumnGeneration under(Restrictions others) {
        ColumnGeneration other = new ColumnGeneration(market, pricer, columns, penalty, free, others);
        other.bound = bound;
        other.tightens = tightens;
        // Those that do not hold the mix back would only take time.
        cuts.stream().filter(cut -> mix == null || mix.duals().cut().getOrDefault(cut, 0L) > 0).forEach(other.cuts::add);
        return other;
    }

    /** The same, and so all that is under it, with cuts on the stock of parts. */
    public ColumnGeneration tightened() {
        ColumnGeneration other = under(settled);
        other.tightens = true;
        return other;
    }

    public Restrictions settled() {
        return settled;
    }

    /** No order takes less, scaled. */
    public long bound() {
        return bound;
    }

    /** The last mix of columns; null before the first round. */
    public RestrictedMaster.Mix mix() {
        return mix;
    }

    /** Whether the bound is as good as this relaxation gives. */
    public boolean isFinished() {
        return finished;
    }

    /**
     * A bound at the least that every part costs, before any linear program is solved: weak where stock is scarce, but soon there.
     *
     * @return what a machine of each line takes at least, as far as is known, scaled
     */
    public long[] start(Deadline deadline) {
        long[][] parts = new long[market.pools().size()][market.parts()];
        long[] bays = new long[market.bays().size()];
        Duals duals = lower.kept(defaulted(new Duals(parts, bays, bays, Map.of(), 0)));
        long[] least = new RoughBound(market, pricer, duals).eachLine(deadline);
        center = duals;
        if (least == null) {
            return new long[market.lines().size()];
        }
        long[] all = new long[least.length];
        for (int line = 0; line < least.length; line++) {
            least[line] = Math.min(least[line], missing(line, duals));
            all[line] = market.line(line).machines() * least[line];
        }
        bound = Math.max(bound, lower.at(duals, all));
        return least;
    }

    /** Runs until nothing is left, until the bound is as high as matters, or the deadline comes, telling of each round. */
    public void run(long enough, Deadline deadline, Consumer<Long> better) {
        while ((!finished || tightens()) && bound < enough && !deadline.isOver()) {
            master(deadline);
            search(deadline);
            better.accept(bound);
        }
    }

    /** Adds cuts that the mix violates; whether there are any. */
    private boolean tightens() {
        if (!tightens || mix == null || roundsOfCuts++ >= MOST_ROUNDS_OF_CUTS) {
            return false;
        }
        finished = !cuts.addAll(new StockCuts(market, settled, mix).violated());
        return !finished;
    }

    /**
     * Whether no order that is allowed takes less than so much; also false where that is not known after a few rounds, or the deadline
     * comes.
     */
    public boolean reaches(long enough, Deadline deadline) {
        for (int round = 0; round < FEW && !finished && bound < enough && !deadline.isOver(); round++) {
            master(deadline);
            // More columns would only lower what is too low already.
            if (mix != null && ScaledMoney.of(mix.cost()) < enough) {
                return false;
            }
            search(deadline);
        }
        return bound >= enough;
    }

    /** What the columns known so far make of it, scaled: no less than its bound will be. */
    public long estimate(Deadline deadline) {
        master(deadline);
        return mix == null ? bound : ScaledMoney.of(mix.cost());
    }

    private void master(Deadline deadline) {
        if (settled.isContradictory() || settled.mustDeliver() > market.order().suppliersMax().orElse(Integer.MAX_VALUE)) {
            bound = NEVER;
        } else {
            mix = master.solve(columns.all().stream().filter(column -> column.isWithin(most.get(column.line()))).toList(), cuts, deadline);
        }
        // What is not solved leaves the bound as it was.
        finished = mix == null;
    }

    private void search(Deadline deadline) {
        if (finished) {
            return;
        }
        long before = bound;
        Duals own = lower.kept(defaulted(mix.duals()));
        boolean added = center != null && look(lower.kept(own.towards(center, HELD)), deadline);
        if (!added && !deadline.isOver()) {
            added = look(own, deadline);
        }
        double gap = mix.cost() - ScaledMoney.minor(bound);
        finished = !deadline.isOver() && (!added || gap <= NOTHING || bound == before && gap <= CLOSE * Math.abs(mix.cost()));
        // Where the time was over before any bound, nothing says which columns promise least.
        if (center != null) {
            columns.tidy(this::reducedCost, mix.columns().keySet());
        }
    }

    /**
     * Asks the search at some prices; whether it found a column that the master lacks and gains by. What a deadline cuts off says no
     * bound.
     */
    private boolean look(Duals duals, Deadline deadline) {
        boolean better = false;
        // Lines know nothing of each other here, so they are searched side by side; what they find is kept in their order.
        List<Line> lines = IntStream.range(0, market.lines().size()).parallel()
                .mapToObj(line -> deadline.isOver() ? Line.UNKNOWN : line(line, duals, deadline)).toList();
        for (Column column : lines.stream().flatMap(line -> line.found.stream()).toList()) {
            better |= mix != null && columns.isNew(column) && saved(column) > ScaledMoney.ONE * CLOSE;
            columns.add(column);
        }
        if (lines.contains(Line.UNKNOWN)) {
            return better;
        }
        long[] least = lines.stream().mapToLong(Line::least).toArray();
        long found = lower.at(duals, least);
        if (found > bound || center == null) {
            center = duals;
        }
        bound = Math.max(bound, found);
        return better;
    }

    /**
     * What the search says of a line.
     *
     * @param least its machines take no less
     * @param found ways to build them
     */
    private record Line(long least, List<Column> found) {

        static final Line UNKNOWN = new Line(Long.MIN_VALUE, List.of());

        static Line of(long least, List<Pricer.Best> found) {
            return new Line(least, found.stream().map(Pricer.Best::column).filter(Objects::nonNull).toList());
        }
    }

    private Line line(int line, Duals duals, Deadline deadline) {
        return market.line(line).isTogether() ? together(line, duals, deadline) : oneByOne(line, duals, deadline);
    }

    /** All machines of one build, or some of them, and what is missing. */
    private Line together(int line, Duals duals, Deadline deadline) {
        Pricer.Best one = pricer.best(line, Set.of(), most.get(line), 1, duals, deadline);
        List<Pricer.Best> found = new ArrayList<>(List.of(one));
        if (one.column() != null) {
            Column all = pricer.column(line, Collections.nCopies(market.line(line).machines(), one.column().builds().get(0)),
                    one.column().bay());
            // In fractions it would take what all of its machines together cannot have.
            if (Arrays.stream(all.parts()).allMatch(part -> all.unitsOf(part) <= market.available(part, market.poolOf(line)))) {
                found.add(new Pricer.Best(all, Long.MAX_VALUE));
            }
        }
        long least = together(line, Set.of(), one.least(), duals, found, deadline);
        for (Trait trait : wanted(line)) {
            least = Math.max(least, together(line, Set.of(trait), one.least(), duals, found, deadline));
        }
        return Line.of(least, found);
    }

    /**
     * The least over every number of machines that may be delivered. Several at a time take no less than as many by themselves but for what
     * they have in common, which says for most numbers that they need not be looked at.
     */
    private long together(int line, Set<Trait> traits, long one, Duals duals, List<Pricer.Best> found, Deadline deadline) {
        int machines = market.line(line).machines();
        long missing = missing(line, duals);
        long least = traits.isEmpty() ? machines * missing : NEVER;
        boolean mostFirst = one < missing;
        // What they have in common counts once, however many they are; and they may have in common what none has by itself.
        long[] common = duals.trait().entrySet().stream()
                .filter(trait -> trait.getKey() instanceof Trait.Takes takes && takes.line() == line)
                .mapToLong(Map.Entry::getValue).toArray();
        long costs = Arrays.stream(common).filter(takes -> takes > 0).sum();
        long gains = Arrays.stream(common).filter(takes -> takes < 0).sum();
        for (int i = 0; i < machines && one < NEVER; i++) {
            int some = mostFirst ? machines - i : i + 1;
            if (some * one - (some - 1) * costs + (some > 1 ? gains : 0) + (machines - some) * missing >= least) {
                break;
            }
            Pricer.Best alike = pricer.best(line, traits, most.get(line), some, duals, deadline);
            found.add(alike);
            least = alike.least() >= NEVER ? least : Math.min(least, alike.least() + (machines - some) * missing);
        }
        return least;
    }

    /** What a machine of a line that is not delivered counts. */
    private long missing(int line, Duals duals) {
        return penalty[line] - duals.missing() * market.line(line).priority();
    }

    private Line oneByOne(int line, Duals duals, Deadline deadline) {
        int machines = market.line(line).machines();
        Pricer.Best one = pricer.best(line, Set.of(), most.get(line), 1, duals, deadline);
        List<Pricer.Best> found = new ArrayList<>(List.of(one));
        long each = Math.min(one.least(), missing(line, duals));
        long least = machines * each;
        for (List<Trait> some : Shares.groups(wanted(line), machines)) {
            long[] bySet = new long[1 << some.size()];
            bySet[0] = each;
            for (int set = 1; set < bySet.length; set++) {
                int asked = set;
                Set<Trait> traits = IntStream.range(0, some.size()).filter(i -> (asked >> i & 1) == 1).mapToObj(some::get)
                        .collect(Collectors.toSet());
                Pricer.Best alike = pricer.best(line, traits, most.get(line), 1, duals, deadline);
                found.add(alike);
                bySet[set] = alike.least();
            }
            least = Math.max(least, new Shares(machines, some.stream().mapToInt(trait -> settled.of(trait).least()).toArray())
                    .least(bySet));
        }
        return Line.of(least, found);
    }

    /** What a given number of machines of a line must have, except for what others imply. */
    private List<Trait> wanted(int line) {
        List<Trait> wanted = settled.traits().entrySet().stream()
                .filter(trait -> trait.getKey().line() == line && trait.getValue().least() > 0)
                .map(Map.Entry::getKey).toList();
        return wanted.stream().filter(trait -> wanted.stream().noneMatch(other -> other != trait && other.implies(trait)
                && settled.of(other).least() >= settled.of(trait).least())).toList();
    }

    /**
     * What the master has not met is worth what it costs at least, so that the search does not take it for a gift; but what has to be
     * bought may be one.
     */
    private Duals defaulted(Duals duals) {
        long[][] parts = new long[duals.part().length][];
        for (int pool = 0; pool < parts.length; pool++) {
            parts[pool] = duals.part()[pool].clone();
            for (int part = 0; part < market.parts() && !free; part++) {
                // The lots of a part that the master has met set its worth at its cheapest or above, less what cuts give for them.
                parts[pool][part] = mustBeBought.contains(part) ? parts[pool][part]
                        : Math.max(parts[pool][part], cheapest(part, pool) - duals.given(part));
            }
        }
        long[] bay = duals.bay().clone();
        for (Bay some : market.bays()) {
            if (bay[some.id()] == 0 && duals.kilowatt()[some.id()] == 0 && settled.of(some).least() == 0) {
                bay[some.id()] = lower.takes(new Duals(parts, bay, duals.kilowatt(), duals.trait(), 0), some) / some.bays();
            }
        }
        return new Duals(parts, bay, duals.kilowatt(), duals.trait(), duals.missing(), duals.cut());
    }

    /** From those who may deliver, if anybody may. */
    private long cheapest(int part, int pool) {
        return settled.suppliers().isEmpty() ? market.cheapest(part, pool)
                : market.sources(part).stream().filter(source -> source.pools()[pool] && !settled.isClosed(source))
                .flatMap(source -> source.steps().stream()).mapToLong(OfferedLot.Step::price).min()
                .orElse(market.cheapest(part, pool));
    }

    /** By how much the master would better its mix with a column, for each time it is used; scaled. */
    private double saved(Column column) {
        return mix.filling(column) - mix.duals().of(column, market.poolOf(column.line()));
    }

    /** The reduced cost of a column: what it takes beyond what its machines are worth to the master, scaled. */
    private long reducedCost(Column column) {
        return center.of(column, market.poolOf(column.line())) - Math.round(mix.filling(column));
    }
}
