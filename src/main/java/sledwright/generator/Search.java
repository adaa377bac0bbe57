package sledwright.generator;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import sledwright.domain.Catalog;
import sledwright.domain.Objective;
import sledwright.domain.Request;
import sledwright.generator.draw.Shelf;
import sledwright.generator.keep.Kept;
import sledwright.generator.memory.MemoryMarket;
import sledwright.generator.memory.MemoryStock;
import sledwright.generator.time.Deadline;
import sledwright.metrics.EnergyCost;
import sledwright.rules.Order;

/**
 * The exact search over the builds of one machine, or of several identical ones.
 *
 * <p>One instance serves many requests on one catalogue, from as many threads as like; what serves several it keeps between them.
 */
public final class Search implements Exact {

    /** Markets kept from request to request. */
    private static final int MOST_MARKETS = 100;

    /** Choices of lots, by what requests accept and have on hand, that are kept from request to request. */
    private static final int MOST_SHELVES = 48;

    /** What is kept from request to request takes this share of the memory that there is at most, and at most a fixed number of bytes. */
    private static final int SHARE_OF_MEMORY = 5;
    private static final long MOST_BYTES = 200L << 20;

    /** What serves one search alone goes with it. */
    private static final long MOST_BYTES_OF_ONE = 50L << 20;

    /** Changed stocks that are kept: plenty of everything for some numbers of machines, everything sold one by one. */
    private static final int MOST_CHANGED = 6;

    private final Catalog catalog;
    private final Kept kept;
    private final Kept ofMarkets;
    private final Map<List<Object>, MemoryStock> shelves = Collections.synchronizedMap(new Recent<>(MOST_SHELVES));
    private final Map<Object, Search> changed = Collections.synchronizedMap(new Recent<>(MOST_CHANGED));
    private final Map<List<Object>, MemoryMarket> markets = Collections.synchronizedMap(new Recent<>(MOST_MARKETS));

    public Search(Catalog catalog) {
        this(catalog, new Kept(Math.min(MOST_BYTES, Runtime.getRuntime().maxMemory() / SHARE_OF_MEMORY)));
    }

    /** A search that keeps what serves several requests where others may find it. */
    public Search(Catalog catalog, Kept kept) {
        this(catalog, kept, kept);
    }

    private Search(Catalog catalog, Kept kept, Kept ofMarkets) {
        this.catalog = catalog;
        this.kept = kept;
        this.ofMarkets = ofMarkets;
    }

    @Override
    public Search on(Catalog other) {
        return new Search(other, kept, new Kept(MOST_BYTES_OF_ONE));
    }

    @Override
    public Search on(Object change, Supplier<Catalog> other) {
        return changed.computeIfAbsent(change, same -> new Search(other.get(), kept));
    }

    @Override
    public Findings run(Request request, Deadline deadline) {
        return run(request, Set.of(), deadline);
    }

    @Override
    public Findings runHolding(String sku, Request request, Deadline deadline) {
        return runHolding(Set.of(sku), request, deadline);
    }

    /** The same of several parts, each of which one machine at least holds. */
    public Findings runHolding(Set<String> skus, Request request, Deadline deadline) {
        Request asked = request;
        Set<String> somewhere = new TreeSet<>();
        for (String sku : skus) {
            boolean mayDiffer = catalog.module(sku).isPresent() || catalog.drive(sku).isPresent();
            if (request.machines() > 1 && mayDiffer && !request.use().contains(sku)) {
                somewhere.add(sku);
            } else {
                asked = asked.using(sku);
            }
        }
        return run(asked, somewhere, deadline);
    }

    @Override
    public Existence any(Request asked, Deadline deadline) {
        Request request = asked.withObjective(Objective.CHEAPEST);
        Ranking ranking = new Ranking(request);
        MemoryMarket market = market(request, Set.of());
        Query.Answer unknown = new Query.Answer(null, new Unseen());
        Query.Answer found = Families.first(catalog, request, market, ranking, deadline, family -> {
            Query.Answer answer = new Query(request, FamilyChoice.of(List.of(family)), ranking, deadline).any();
            return answer.best() == null && answer.isProved() ? null : answer.best() == null ? unknown : answer;
        }, unknown);
        return new Existence(found == null || found == unknown ? Optional.empty()
                : Optional.of(new Assembler(catalog, request, market.shelf()).assemble(found.best())), found == null);
    }

    private Findings run(Request request, Set<String> somewhere, Deadline deadline) {
        Ranking ranking = new Ranking(request);
        Set<String> modules = somewhere.stream().filter(sku -> catalog.module(sku).isPresent()).collect(Collectors.toSet());
        FamilyChoice families = Families.of(catalog, request, somewhere, market(request, modules), ranking,
                deadline);
        Walk.Path path = new Walk(request, new Query(request, families, ranking, deadline), ranking).walk();
        Assembler assembler = new Assembler(catalog, request, market(request, modules).shelf());
        List<Order> ranked = path.builds().stream().map(assembler::assemble).toList();
        return findings(request, ranking, path, ranked);
    }

    /** The staircases of a request, which ask for its figures one by one; its objective does not matter to them. */
    public Staircases staircases(Request request) {
        Request cheapest = request.withObjective(Objective.CHEAPEST);
        return new Staircases(catalog, cheapest, market(cheapest, Set.of()));
    }

    private MemoryMarket market(Request request, Set<String> somewhere) {
        Request part = MemoryMarket.concerning(request);
        List<Object> accepted = MemoryMarket.accepted(part);
        return markets.computeIfAbsent(List.of(accepted, MemoryMarket.beside(part), somewhere),
                wanted -> new MemoryMarket(shelves.computeIfAbsent(accepted,
                        same -> new MemoryStock(catalog, new Shelf(catalog, part), kept)), part, somewhere, ofMarkets));
    }

    /** Whether more load never takes less from the wall, whichever supply feeds it. */
    static boolean runsDearerUnderLoad(Catalog catalog) {
        return catalog.platforms().stream().flatMap(platform -> platform.power().supplies().stream()).allMatch(EnergyCost::risesWithLoad);
    }

    private Findings findings(Request request, Ranking ranking, Walk.Path path, List<Order> ranked) {
        Query.Answer first = path.first();
        if (first.best() == null && first.isProved()) {
            return new Findings(request, Status.IMPOSSIBLE, Double.NaN, Double.NaN, ranked, Doubts.NONE);
        }
        double best = first.best() == null ? Double.NaN : ranking.reported(first.best().aim());
        // Where more load may run cheaper, what was dropped as heavier and no cheaper may have been the one, and bounds do not hold.
        if (ranking.countsEnergy() && !runsDearerUnderLoad(catalog)) {
            return new Findings(request, Status.BEST_FOUND, best, Double.NEGATIVE_INFINITY, ranked,
                    Doubts.ofAll(List.of(path.doubts(), Doubts.of(Doubts.Cause.EFFICIENCY))));
        }
        // Where a figure is the aim, a build of the same figure may still be cheaper.
        if (ranking.isFigureAim() ? first.isFirst() : first.isProved()) {
            return new Findings(request, Status.PROVED, best, best, ranked, path.doubts());
        }
        return new Findings(request, Status.BEST_FOUND, best, ranking.reported(first.openAim()), ranked, path.doubts());
    }
}
