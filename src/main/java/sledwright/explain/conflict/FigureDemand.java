package sledwright.explain.conflict;

import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import sledwright.domain.Catalog;
import sledwright.domain.Objective;
import sledwright.domain.Processor;
import sledwright.domain.Requirements;
import sledwright.explain.ask.Changes;
import sledwright.explain.ask.Extreme;
import sledwright.explain.ask.Oracle;
import sledwright.explain.ask.WhatIf;
import sledwright.rules.Order;
import sledwright.rules.target.Target;
import sledwright.words.Numbers;

/** A figure of one machine that must reach {@code least}. */
public record FigureDemand(Target target, double least) implements Demand {

    private static final String NUMBER_OF = "number of ";
    private static final double MILLIONTH = 1e-6;

    /** Each figure with its key, those first that the search itself can make most of. */
    public static final Map<Target, String> KEYS = keys();

    private static final Map<Target, Objective> OBJECTIVES = Map.of(Target.MEMORY_CAPACITY, Objective.MOST_MEMORY,
            Target.BANDWIDTH, Objective.MOST_BANDWIDTH, Target.THROUGHPUT, Objective.MOST_THROUGHPUT);

    private static Map<Target, String> keys() {
        Map<Target, String> keys = new LinkedHashMap<>();
        keys.put(Target.MEMORY_CAPACITY, "require.memory_gb");
        keys.put(Target.BANDWIDTH, "require.bandwidth_gbs");
        keys.put(Target.THROUGHPUT, "require.throughput");
        keys.put(Target.CORES, "require.cores");
        keys.put(Target.BASE_CLOCK, "require.base_ghz");
        keys.put(Target.ALL_CORE_CLOCK, "require.all_core_ghz");
        keys.put(Target.MEMORY_PER_CORE, "require.gb_per_core");
        keys.put(Target.BANDWIDTH_PER_CORE, "require.gbs_per_core");
        keys.put(Target.SPARE_SLOTS, "require.spare_slots");
        return Collections.unmodifiableMap(keys);
    }

    /** The objective that makes most of a figure, where there is one. */
    public static Optional<Objective> objective(Target target) {
        return Optional.ofNullable(OBJECTIVES.get(target));
    }

    /** By how much two different figures of a target differ at least. */
    public static double grain(Target target) {
        return target == Target.CORES || target == Target.SPARE_SLOTS ? 1 : MILLIONTH;
    }

    @Override
    public String key() {
        return KEYS.get(target);
    }

    @Override
    public String rule() {
        return target.id();
    }

    @Override
    public String asked() {
        return Numbers.exact(least);
    }

    @Override
    public String words() {
        return target.noun().startsWith(NUMBER_OF)
                ? "at least %s %s".formatted(Numbers.floor(least), target.noun().substring(NUMBER_OF.length()))
                : "%s of at least %s%s".formatted(target.noun(), Numbers.floor(least), target.unit());
    }

    @Override
    public WhatIf without(WhatIf terms) {
        return asking(terms, 0);
    }

    private WhatIf asking(WhatIf terms, double figure) {
        return terms.with(Changes.least(terms.request().require(), target, figure));
    }

    @Override
    public Concession nearest(Oracle oracle, WhatIf terms) {
        double most = most(oracle, terms);
        String reached = Numbers.floor(most) + target.unit();
        Requirements require = Changes.least(terms.request().require(), target, most);
        return new Concession(terms.with(require), Numbers.exact(most), "the %s reaches %s at most".formatted(target.noun(), reached),
                "lower the %s from %s%s to %s".formatted(target.noun(), Numbers.floor(least), target.unit(), reached));
    }

    private double most(Oracle oracle, WhatIf terms) {
        Objective objective = OBJECTIVES.get(target);
        if (objective != null) {
            return figure(oracle.best(terms, objective).orElseThrow());
        }
        List<Double> possible = figures(oracle.catalog());
        if (!possible.isEmpty()) {
            return Extreme.first(possible, figure -> oracle.cheapest(asking(terms, figure)).map(order -> figure)).orElse(0.0);
        }
        return Extreme.greatest(figure(oracle.cheapest(terms).orElseThrow()), least, grain(target),
                figure -> found(oracle.cheapest(asking(terms, figure))));
    }

    /** The figures below what is asked that processors alone can give, the greatest first; empty where it takes more to tell. */
    private List<Double> figures(Catalog catalog) {
        Stream<Double> figures = Stream.of();
        if (target == Target.CORES) {
            List<Integer> counts = catalog.platforms().stream().flatMap(platform -> platform.processors().counts().stream())
                    .distinct().toList();
            figures = catalog.processors().stream().flatMap(processor -> counts.stream().map(count -> (double) count * processor.cores()));
        } else if (target == Target.BASE_CLOCK) {
            figures = catalog.processors().stream().map(Processor::baseGhz);
        } else if (target == Target.ALL_CORE_CLOCK) {
            figures = catalog.processors().stream().map(Processor::allCoreGhz);
        }
        return figures.filter(figure -> figure < least).distinct().sorted(Comparator.reverseOrder()).toList();
    }

    private OptionalDouble found(Optional<Order> order) {
        return order.map(build -> OptionalDouble.of(figure(build))).orElse(OptionalDouble.empty());
    }

    private double figure(Order order) {
        return target.figure(order.figures());
    }
}
