package sledwright.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import sledwright.domain.Build;
import sledwright.domain.MemoryModule;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.WorkWish;
import sledwright.explain.ask.Oracle;
import sledwright.explain.ask.WhatIf;
import sledwright.metrics.Figures;
import sledwright.metrics.PowerDraw;
import sledwright.metrics.WorkDone;
import sledwright.rules.Order;
import sledwright.rules.stock.Budget;

/**
 * What one step of work costs: the cheapest valid build that does more work than another by the step of alternatives, whatever it costs.
 *
 * @param order  that build
 * @param share  how much more work it does, as a share of the other's
 * @param within whether it keeps the limit of the price
 * @param freed  whether cores that wait for memory in the other no longer do
 * @param swaps  what it has in the place of what the other has
 */
public record WorkStep(Order order, double share, boolean within, boolean freed, List<Swap> swaps) {

    private static final double MILLIONTH = 1e-6;

    /** One exchange, in words of part numbers and counts. */
    public record Swap(String from, String to) {
    }

    public WorkStep {
        swaps = List.copyOf(swaps);
    }

    /**
     * The step from a build; empty where none does more.
     *
     * @throws sledwright.explain.ask.UnsettledException when time runs out
     */
    static Optional<WorkStep> from(Order best, Oracle oracle) {
        Request request = best.request();
        Requirements require = request.require();
        Figures figures = best.figures();
        // Requirements are reached to half a millionth.
        double least = Math.max(figures.work() * (1 + request.step()), figures.work() + MILLIONTH);
        WorkWish more = new WorkWish(least, require.work().workload());
        Request asked = request.withRequire(require.withWork(more));
        WhatIf whatever = WhatIf.of(asked, Optional.empty()).with(asked.limit().withPrice(OptionalLong.empty()));
        return oracle.cheapest(whatever).map(order -> of(order, best));
    }

    private static WorkStep of(Order order, Order best) {
        Figures reached = order.figures();
        Figures before = best.figures();
        Build one = PowerDraw.heaviest(order.machines());
        Build other = PowerDraw.heaviest(best.machines());
        List<Swap> swaps = new ArrayList<>();
        swap(swaps, build -> build.platform().sku(), one, other);
        swap(swaps, build -> "%s x %s".formatted(build.processors().size(), build.processor().sku()), one, other);
        swap(swaps, WorkStep::memory, one, other);
        if (memory(one).equals(memory(other)) && reached.speed().mts() != before.speed().mts()) {
            swaps.add(new Swap(before.speed().mts() + " MT/s", reached.speed().mts() + " MT/s"));
        }
        boolean freed = before.workHeldBy() == WorkDone.Held.MEMORY && reached.workHeldBy() != WorkDone.Held.MEMORY;
        return new WorkStep(order, reached.work() / before.work() - 1, Budget.allows(best.request().limit(), order.price().total()), freed,
                swaps);
    }

    private static void swap(List<Swap> swaps, Function<Build, String> words, Build one, Build other) {
        if (!words.apply(one).equals(words.apply(other))) {
            swaps.add(new Swap(words.apply(other), words.apply(one)));
        }
    }

    /** Such as {@code 4 x 16 GB + 4 x 8 GB}. */
    private static String memory(Build build) {
        Map<Integer, Long> groups = build.modules().values().stream()
                .collect(Collectors.groupingBy(MemoryModule::capacityGb, () -> new TreeMap<>(Comparator.reverseOrder()),
                        Collectors.counting()));
        return groups.entrySet().stream().map(group -> "%s x %s GB".formatted(group.getValue(), group.getKey()))
                .collect(Collectors.joining(" + "));
    }
}
