package sledwright.planner.order;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import sledwright.domain.Catalog;
import sledwright.domain.FilledEnclosure;
import sledwright.domain.Objective;
import sledwright.domain.OrderRequest;
import sledwright.domain.Pick;
import sledwright.generator.Doubts;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.planner.DefectException;
import sledwright.planner.order.OrderOutcome.LineFill;
import sledwright.planner.order.OrderOutcome.Price;
import sledwright.planner.order.OrderOutcome.Scarce;
import sledwright.planner.order.OrderOutcome.Shortages;
import sledwright.planner.order.fill.Suppliers;
import sledwright.planner.order.fill.Tally;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.ScaledMoney;
import sledwright.planner.order.relax.Duals;
import sledwright.planner.order.relax.RestrictedMaster;
import sledwright.rules.Violation;

/** Fills orders of several lines from one stock, and lets none pass that breaks a rule. */
public final class OrderPlanner {

    /** What a machine takes once it is found: to put together, to judge, to write; very roughly. */
    private static final long NANOS_TO_FINISH = 300_000;

    private final Catalog catalog;
    private final Search search;
    private final long seed;

    /** A planner that decides the same way whenever the seed is the same and time does not run out. */
    public OrderPlanner(Catalog catalog, long seed) {
        this(catalog, new Search(catalog), seed);
    }

    /** The same, with a search of that catalogue that others may use, too. */
    public OrderPlanner(Catalog catalog, Search search, long seed) {
        this.catalog = catalog;
        this.search = search;
        this.seed = seed;
    }

    /** An order that is found at once, and always the same; how much less another takes is not asked. */
    public OrderOutcome first(OrderRequest order, Deadline deadline) {
        OrderSolver solver = new OrderSolver(catalog, order, search, seed, deadline, now -> { });
        return outcome(order, solver, solver.first(), Optional.empty());
    }

    /**
     * The cheapest way to fill an order, as far as it was found until the deadline, and what no order goes below.
     *
     * @param progress receives each better order and bound
     * @throws DefectException when what was found breaks a rule or is not priced as it was counted
     */
    public OrderOutcome plan(OrderRequest order, Deadline deadline, Consumer<OrderProgress> progress) {
        long start = System.nanoTime();
        // What is found has to be put together, judged and written within the time, too.
        Deadline solving = deadline.before(Duration.ofNanos(order.machines() * NANOS_TO_FINISH));
        OrderSolver solver = new OrderSolver(catalog, order, search, seed, solving, now -> progress.accept(new OrderProgress(
                (System.nanoTime() - start) / 1e9, ScaledMoney.minor(now.cost()), now.bound() == Long.MIN_VALUE ? Double.NaN
                : ScaledMoney.minor(now.bound()), now.missing())));
        return outcome(order, solver, solver.solve(0), Optional.of(solving));
    }

    /** @param lacking until when what is missing may be explained; empty: it is not */
    private OrderOutcome outcome(OrderRequest order, OrderSolver solver, Tally tally, Optional<Deadline> lacking) {
        Assembly assembly = new Assembly(tally);
        List<LineFill> lines = assembly.lines();
        List<FilledEnclosure> enclosures = assembly.enclosures();
        List<Pick> picks = assembly.picks();
        Set<Integer> suppliers = solver.suppliers().used(tally);
        Price price = assembly.price(lines, suppliers.size());
        boolean whole = tally.missing() == 0;
        OrderStatus status = whole ? solver.incumbent().isProved() ? OrderStatus.PROVED : OrderStatus.BEST_FOUND
                : tally.counts().isEmpty() ? OrderStatus.IMPOSSIBLE : OrderStatus.SHORT;
        double best = ScaledMoney.minor(tally.ofDelivered()) + order.deliveryCharge() * (order.deliveryCharge() > 0 ? suppliers.size() : 0);
        Shortages shortages = whole || lacking.isEmpty() ? Shortages.NONE
                : new Lacking(catalog, order, search, seed, lacking.get()).of(tally, solver.incumbent().isMost());
        OrderOutcome.End ended = tally.counts().isEmpty() && shortages.most() ? OrderOutcome.End.PROVED : solver.ended();
        OrderOutcome outcome = new OrderOutcome(order, catalog, status, new OrderOutcome.Proof(best, bound(solver.incumbent(), best), ended,
                ended == OrderOutcome.End.PROVED ? Doubts.NONE : solver.doubts()),
                new OrderOutcome.Filled(price, lines, enclosures, picks, names(solver, suppliers)),
                whole ? scarce(solver) : List.of(), shortages);
        require(outcome);
        return outcome;
    }

    /** What no order that delivers as much goes below, minor units; NaN where nothing is known. */
    private static double bound(Incumbent incumbent, double best) {
        if (incumbent.isProved()) {
            return best;
        }
        long scaled = incumbent.boundOfDelivered();
        double bound = scaled == Long.MIN_VALUE ? Double.NaN : ScaledMoney.minor(scaled);
        // A bound that leaves more than the whole figure open says nothing; what is printed as the best is one only where it is proved.
        return bound <= 0 && best > 0 ? Double.NaN : Math.min(bound, Math.round(best) - 1.0);
    }

    /** Suppliers as most of their lots spell them. */
    private static Set<String> names(OrderSolver solver, Set<Integer> suppliers) {
        return suppliers.stream().map(supplier -> solver.market().spelled(supplier)).collect(Collectors.toCollection(TreeSet::new));
    }

    /** Parts whose every lot the master takes up, by what it would give for one more. */
    private static List<Scarce> scarce(OrderSolver solver) {
        Market market = solver.market();
        Optional<Duals> duals = Optional.ofNullable(solver.generation().mix()).map(RestrictedMaster.Mix::duals);
        List<Scarce> scarce = new ArrayList<>();
        for (int part = 0; part < market.parts() && duals.isPresent(); part++) {
            long saves = 0;
            for (int pool = 0; pool < market.pools().size(); pool++) {
                int asked = pool;
                long last = market.sources(part).stream().filter(source -> source.pools()[asked])
                        .mapToLong(source -> source.steps().get(0).price()).max().orElse(Long.MAX_VALUE);
                saves = Math.max(saves, duals.get().part()[pool][part] - last);
            }
            if (saves > ScaledMoney.ONE / 2) {
                scarce.add(new Scarce(market.sku(part), Math.round(ScaledMoney.minor(saves))));
            }
        }
        scarce.sort(Comparator.comparingLong(Scarce::saves).reversed().thenComparing(Scarce::sku));
        return scarce;
    }

    private void require(OrderOutcome outcome) {
        List<Violation> broken = new OrderJudge(catalog).judge(outcome);
        if (!broken.isEmpty()) {
            throw new DefectException("An order that was found breaks the rules:\n" + broken.stream()
                    .map(one -> "  %s %s: %s".formatted(one.rule(), one.where(), one.message())).collect(Collectors.joining("\n")));
        }
        for (LineFill line : outcome.lines()) {
            if (line.line().uniform() && line.fills().stream().anyMatch(fill -> !fill.build().isAlike(line.fills().get(0).build()))) {
                throw new DefectException("Machines of line %s are not alike.".formatted(line.line().name()));
            }
        }
        boolean plain = outcome.order().modulePartCharge() == 0
                && outcome.order().lines().stream().allMatch(line -> line.request().objective() == Objective.CHEAPEST);
        if (plain && outcome.price().total() != Math.round(outcome.best())) {
            throw new DefectException("An order of %s minor units was counted as %s.".formatted(outcome.price().total(), outcome.best()));
        }
    }
}
