package sledwright.planner.order;

import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntUnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sledwright.domain.MemoryModule;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.market.ScaledMoney;
import sledwright.planner.order.relax.Duals;
import sledwright.planner.order.relax.Pricer;
import sledwright.planner.order.relax.Restrictions;

/**
 * What holds of every order that lacks no machine: a line whose modules are all of one part number takes none of which there are too few
 * for all its machines.
 */
final class WholeOrders {

    private final Market market;
    private final Pricer free;
    private final Set<Integer> modules;
    private final Map<List<Integer>, Integer> least = new HashMap<>();

    /** @param free to which nothing costs but what the prices say */
    WholeOrders(Market market, Pricer free) {
        this.market = market;
        this.free = free;
        modules = IntStream.range(0, market.parts()).filter(market::isModule).boxed().collect(Collectors.toSet());
    }

    /** What is known without a search. */
    Restrictions rough() {
        Restrictions all = Restrictions.NONE;
        for (int line = 0; line < market.lines().size(); line++) {
            int of = line;
            all = barred(all, line, part -> rough(of, part));
        }
        return all;
    }

    /** The same of orders that are restricted further: fewer lots leave fewer parts. Each line and kind of module takes a search, once. */
    Restrictions of(Restrictions settled, Deadline deadline) {
        Restrictions all = settled;
        for (int line = 0; line < market.lines().size(); line++) {
            int of = line;
            all = barred(all, line, part -> least(of, part, deadline));
        }
        return all;
    }

    private Restrictions barred(Restrictions settled, int line, IntUnaryOperator least) {
        Set<Integer> few = new HashSet<>();
        long machines = market.line(line).machines();
        if (market.line(line).request().require().populated().onePart()) {
            modules.stream().filter(part -> machines * least.applyAsInt(part) > settled.available(market, part, market.poolOf(line)))
                    .forEach(few::add);
        }
        return few.isEmpty() ? settled : settled.withBarred(line, few);
    }

    /** Machines have a module at least, and no more usable memory than their modules hold. */
    private int rough(int line, int part) {
        Requirements require = market.line(line).request().require();
        return (int) Math.max(1, Math.ceil(require.memoryGb() / module(part).capacityGb()));
    }

    private MemoryModule module(int part) {
        return market.catalog().module(market.sku(part)).orElseThrow();
    }

    /** The fewest units of a part that are all modules of a machine; where that is not known, fewer. */
    private int least(int line, int part, Deadline deadline) {
        int rough = rough(line, part);
        long machines = market.line(line).machines();
        if (machines == 1 || rough * machines > market.available(part, market.poolOf(line))) {
            return rough;
        }
        Integer known = least.get(List.of(line, part));
        if (known == null && !deadline.isOver()) {
            Set<Integer> alike = alike(line, part);
            known = least(line, alike, deadline);
            for (int same : alike) {
                least.put(List.of(line, same), known);
            }
        }
        return known == null ? rough : Math.max(rough, known);
    }

    /** Of whichever of these parts there are most. */
    private int least(int line, Set<Integer> alike, Deadline deadline) {
        int asked = Collections.max(alike, Comparator.comparing((Integer part) -> market.available(part, market.poolOf(line))));
        Map<Integer, Integer> none = modules.stream().filter(part -> part != asked).collect(Collectors.toMap(part -> part, part -> 0));
        long[][] parts = new long[market.pools().size()][market.parts()];
        parts[market.poolOf(line)][asked] = ScaledMoney.ONE;
        long[] nothing = new long[market.bays().size()];
        Pricer.Best best = free.best(line, Set.of(), none, 1, new Duals(parts, nothing, nothing, Map.of(), 0), deadline);
        return (int) Math.min(Integer.MAX_VALUE / 4, best.least() / ScaledMoney.ONE);
    }

    /** Modules that differ in nothing but their part number, where the line names none. */
    private Set<Integer> alike(int line, int part) {
        Request request = market.line(line).request();
        boolean named = Stream.of(request.forbid(), request.use()).flatMap(Set::stream)
                .anyMatch(sku -> market.catalog().module(sku).isPresent());
        return named ? Set.of(part) : modules.stream().filter(other -> isAlike(module(part), module(other)))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static boolean isAlike(MemoryModule one, MemoryModule other) {
        return one.generation().equals(other.generation()) && one.kind().equals(other.kind()) && one.logicalRanks() == other.logicalRanks()
                && one.rating().equals(other.rating());
    }
}
