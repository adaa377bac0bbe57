package sledwright.explain.conflict;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sledwright.domain.Equipment;
import sledwright.domain.Lot;
import sledwright.domain.Pick;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Stock;
import sledwright.explain.ask.Oracle;
import sledwright.explain.ask.UnsettledException;
import sledwright.explain.ask.WhatIf;
import sledwright.rules.Machine;
import sledwright.rules.Order;
import sledwright.rules.Rule;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;
import sledwright.rules.enclosure.EnclosurePower;

/** Whether some of a request's demands can be met together, by the search where the answers so far do not decide. */
public final class Feasibility implements Predicate<Set<Demand>> {

    private final WhatIf asked;
    private final List<Demand> demands;
    private final Oracle oracle;
    private final Stock stock;
    /** The rules by whose breaches one sees which demands are kept. */
    private final Set<Rule<?>> telling;
    private final List<Set<Demand>> met = new ArrayList<>();
    private final List<Set<Demand>> unmet = new ArrayList<>();
    /** Whether what a platform cannot meet is taken as known of it for more demands, too. */
    private final boolean narrows;
    /** Platform -> sets of demands that no build on it meets. */
    private final Map<String, List<Set<Demand>>> unmetOn = new HashMap<>();
    /** Where something was found last. */
    private String likely;

    public Feasibility(WhatIf asked, List<Demand> demands, Oracle oracle) {
        this(asked, demands, oracle, asked.held().isEmpty() && asked.request().use().isEmpty());
    }

    /** @param narrows whether platforms are looked at one after the other; what must be held may need what another demand brings */
    Feasibility(WhatIf asked, List<Demand> demands, Oracle oracle, boolean narrows) {
        this.narrows = narrows;
        this.asked = asked;
        this.demands = demands;
        this.oracle = oracle;
        stock = Stock.of(oracle.catalog(), asked.request());
        telling = demands.stream().flatMap(demand -> Rulebook.answeringTo(demand.key()).stream()).collect(Collectors.toSet());
    }

    /**
     * Whether fewer demands are surely never harder to meet. Drives, cards, extras and enclosures may not be had in smaller numbers,
     * and what must be held may need what another demand brings.
     */
    boolean isEven() {
        Equipment equipment = asked.request().equipment();
        return narrows && equipment.volumes().isEmpty() && equipment.cards().isEmpty() && equipment.extras().isEmpty()
                && oracle.catalog().enclosures().isEmpty();
    }

    /** The terms on which only these count. A part that must be there counts no more once nothing is asked for that may bring it. */
    public WhatIf terms(Set<Demand> kept) {
        WhatIf terms = asked;
        for (Demand demand : demands) {
            terms = kept.contains(demand) ? terms : demand.without().apply(terms);
        }
        Equipment left = terms.request().equipment();
        Set<String> use = terms.request().use().stream().filter(sku -> EquipmentDemands.mayBring(sku, left, oracle.catalog())
                || !EquipmentDemands.mayBring(sku, asked.request().equipment(), oracle.catalog())).collect(Collectors.toSet());
        return terms.with(terms.request().withUse(use));
    }

    /** The same without platforms on which these demands are known not to be met. */
    WhatIf narrowed(Set<Demand> kept) {
        WhatIf terms = terms(kept);
        List<String> open = open(kept, terms);
        if (open.isEmpty() || open.size() == oracle.catalog().platforms().size()) {
            return terms;
        }
        WhatIf narrowed = terms.withAmong(Set.copyOf(open));
        return isEven() || oracle.isPossible(narrowed) ? narrowed : terms;
    }

    /** The platforms that may meet some demands, those first that were asked for; all of them where none is left out. */
    private List<String> open(Set<Demand> kept, WhatIf terms) {
        Set<String> allowed = terms.request().platforms();
        return oracle.catalog().platforms().stream().map(Platform::sku).filter(sku -> allowed.isEmpty() || allowed.contains(sku))
                .filter(sku -> unmetOn.getOrDefault(sku, List.of()).stream().noneMatch(kept::containsAll))
                .sorted(Comparator.comparing(sku -> !asked.request().platforms().contains(sku))).toList();
    }

    /** @throws UnsettledException when time runs out */
    @Override
    public boolean test(Set<Demand> kept) {
        if (met.stream().anyMatch(larger -> larger.containsAll(kept))) {
            return true;
        }
        if (unmet.stream().anyMatch(kept::containsAll)) {
            return false;
        }
        Optional<Order> order = order(kept);
        if (order.isEmpty()) {
            unmet.add(Set.copyOf(kept));
            return false;
        }
        met.add(Set.copyOf(kept));
        met.add(metBy(order.get()));
        return true;
    }

    /** An order that meets the demands. Without a limit the least price is found, and it decides every limit. */
    private Optional<Order> order(Set<Demand> kept) {
        WhatIf terms = terms(kept);
        if (narrows) {
            return order(kept, terms);
        }
        if (terms.everyMachine()) {
            oracle.cheapest(terms.with(terms.request().limit().withPrice(OptionalLong.empty())));
        }
        return oracle.cheapest(terms);
    }

    /** An order on the platform where something was found last, else on any other that may have one. */
    private Optional<Order> order(Set<Demand> kept, WhatIf terms) {
        List<String> open = open(kept, terms);
        if (open.isEmpty()) {
            return Optional.empty();
        }
        String first = open.contains(likely) ? likely : open.get(0);
        Optional<Order> found = order(kept, terms, Set.of(first));
        Set<String> others = new HashSet<>(open);
        others.remove(first);
        return found.isPresent() || others.isEmpty() ? found : order(kept, terms, others);
    }

    private Optional<Order> order(Set<Demand> kept, WhatIf terms, Set<String> platforms) {
        Optional<Order> found = oracle.some(terms.withAmong(platforms));
        found.ifPresentOrElse(order -> likely = order.machines().get(0).platform().sku(), () -> platforms.forEach(sku ->
                unmetOn.computeIfAbsent(sku, same -> new ArrayList<>()).add(Set.copyOf(kept))));
        return found;
    }

    /**
     * The demands that an order meets together, asked of it or not. They may lack some that were asked: a memory mode that was not asked
     * changes what the memory is worth.
     */
    private Set<Demand> metBy(Order order) {
        Request request = asked.request();
        List<Pick> picks = order.picks().stream().map(this::fromTheRealLot).toList();
        Order real = Order.of(order.machines(), picks, request, oracle.catalog());
        List<Violation> broken = Stream.concat(
                order.kinds().stream().map(build -> Machine.of(build, request, oracle.catalog().throughputFactors()))
                        .flatMap(machine -> Rulebook.ofMachine().stream().filter(telling::contains)
                                .flatMap(rule -> rule.judge(machine).stream())),
                Rulebook.ofOrder().stream().filter(telling::contains).flatMap(rule -> rule.judge(real).stream())).toList();
        List<Violation> brokenAround = real.housings().stream().flatMap(housing -> Rulebook.judge(housing).stream()).toList();
        return demands.stream().filter(demand -> demand.isKeptBeside(broken) && demand.isKeptBeside(brokenAround))
                .filter(demand -> !demand.isOf(LimitDemands.MAINS) || brokenAround.isEmpty())
                .filter(demand -> !demand.isOf(ChoiceDemands.MACHINES) || order.machines().size() == request.machines())
                .filter(demand -> !demand.isOf(EnclosurePower.KEY) || isHoused(order))
                .collect(Collectors.toSet());
    }

    /** Whether machines that stand in an enclosure are bought with it. */
    private boolean isHoused(Order order) {
        return order.housed().isPresent() || order.machines().stream().noneMatch(build -> oracle.catalog().isSled(build.platform()));
    }

    private Pick fromTheRealLot(Pick pick) {
        Lot real = stock.lots(pick.sku()).stream().filter(lot -> lot.lot().equals(pick.lot().lot()) && lot.onHand() == pick.lot().onHand())
                .findFirst().orElseThrow();
        return new Pick(real, pick.quantity());
    }
}
