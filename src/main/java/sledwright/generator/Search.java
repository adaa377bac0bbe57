package sledwright.generator;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import sledwright.domain.Catalog;
import sledwright.domain.Objective;
import sledwright.domain.Request;
import sledwright.generator.draw.Draw;
import sledwright.generator.memory.Level;
import sledwright.generator.memory.MemoryMarket;
import sledwright.generator.shape.ShapeKey;
import sledwright.generator.shape.Shapes;
import sledwright.generator.time.Deadline;
import sledwright.rules.Order;

/**
 * The exact search over the builds of one machine, or of several identical ones.
 *
 * <p>One instance serves many requests on one catalogue, one at a time; what serves several it keeps between them.
 */
public final class Search implements Exact {

    /** Markets kept from request to request; each may hold thousands of priced populations. */
    private static final int MOST_MARKETS = 24;

    /** Lists of modules whose levels are kept from request to request. */
    private static final int MOST_LEVELS = 1000;

    /** Groups of modules whose draws are kept from request to request. */
    private static final int MOST_DRAWS = 1000;

    private final Catalog catalog;
    private final Map<ShapeKey, Shapes> shapes;
    private final Map<Wanted, MemoryMarket> markets = new Recent<>(MOST_MARKETS);
    private final Map<List<Object>, List<Level>> levels;
    private final Map<List<Object>, List<List<Draw>>> draws;

    public Search(Catalog catalog) {
        this(catalog, new ConcurrentHashMap<>(), Collections.synchronizedMap(new Recent<>(MOST_LEVELS)),
                Collections.synchronizedMap(new Recent<>(MOST_DRAWS)));
    }

    private Search(Catalog catalog, Map<ShapeKey, Shapes> shapes, Map<List<Object>, List<Level>> levels,
            Map<List<Object>, List<List<Draw>>> draws) {
        this.catalog = catalog;
        this.shapes = shapes;
        this.levels = levels;
        this.draws = draws;
    }

    @Override
    public Search on(Catalog other) {
        return new Search(other, shapes, levels, draws);
    }

    @Override
    public Findings run(Request request, Deadline deadline) {
        return run(request, Set.of(), deadline);
    }

    @Override
    public Findings runHolding(String sku, Request request, Deadline deadline) {
        if (request.machines() > 1 && catalog.module(sku).isPresent() && !request.use().contains(sku)) {
            return run(request, Set.of(sku), deadline);
        }
        return run(request.using(sku), deadline);
    }

    private Findings run(Request request, Set<String> somewhere, Deadline deadline) {
        Ranking ranking = new Ranking(request);
        List<Family> families = Families.of(catalog, request, everyWeight ->
                market(request, somewhere, everyWeight).until(deadline), ranking, deadline);
        Walk.Path path = new Walk(request, new Query(request, families, ranking, deadline), ranking).walk();
        Assembler assembler = new Assembler(catalog, request, market(request, somewhere, false).shelf(), shapes);
        List<Order> ranked = path.builds().stream().map(assembler::assemble).toList();
        return findings(request, ranking, path, ranked);
    }

    /** The staircases of a request, which ask for its figures one by one; its objective does not matter to them. */
    public Staircases staircases(Request request) {
        Request cheapest = request.withObjective(Objective.CHEAPEST);
        return new Staircases(catalog, cheapest, everyWeight -> market(cheapest, Set.of(), everyWeight), shapes);
    }

    /** What a market is of: requests alike in that share it. */
    private record Wanted(Request request, Set<String> somewhere, boolean everyWeight) {
    }

    private MemoryMarket market(Request request, Set<String> somewhere, boolean everyWeight) {
        return markets.computeIfAbsent(new Wanted(MemoryMarket.concerning(request), somewhere, everyWeight),
                wanted -> new MemoryMarket(catalog, wanted.request, wanted.somewhere, shapes, levels, draws, wanted.everyWeight));
    }

    private static Findings findings(Request request, Ranking ranking, Walk.Path path, List<Order> ranked) {
        Query.Answer first = path.first();
        if (first.best() == null && first.isProved()) {
            return new Findings(request, Status.IMPOSSIBLE, Double.NaN, Double.NaN, ranked, Doubts.NONE);
        }
        double best = first.best() == null ? Double.NaN : ranking.reported(first.best().aim());
        // Where a figure is the aim, a build of the same figure may still be cheaper.
        if (ranking.isPriceNext() ? first.isFirst() : first.isProved()) {
            return new Findings(request, Status.PROVED, best, best, ranked, path.doubts());
        }
        return new Findings(request, Status.BEST_FOUND, best, ranking.reported(first.openAim()), ranked, path.doubts());
    }
}
