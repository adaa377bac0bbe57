package sledwright.explain.conflict;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import sledwright.domain.Catalog;
import sledwright.domain.Objective;
import sledwright.domain.Processor;
import sledwright.domain.Requirements;
import sledwright.explain.ask.Extreme;
import sledwright.explain.ask.Oracle;
import sledwright.explain.ask.WhatIf;
import sledwright.rules.Order;
import sledwright.rules.target.Target;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/** The figures that a request asks of one machine. */
public final class FigureDemands {

    private static final String NUMBER_OF = "number of ";

    private static final Map<Target, Objective> OBJECTIVES = Map.of(Target.MEMORY_CAPACITY, Objective.MOST_MEMORY,
            Target.BANDWIDTH, Objective.MOST_BANDWIDTH, Target.THROUGHPUT, Objective.MOST_THROUGHPUT, Target.WORK, Objective.MOST_WORK,
            Target.CORES, Objective.MOST_CORES);

    private FigureDemands() {
    }

    /** Those first that the search itself can make most of. */
    static Stream<Demand> of(Requirements require) {
        return Target.ALL.stream().sorted(Comparator.comparing(target -> !OBJECTIVES.containsKey(target)))
                .filter(target -> target.least(require) > 0).map(target -> of(target, target.least(require)));
    }

    /** The objective that makes most of a figure, where there is one. */
    public static Optional<Objective> objective(Target target) {
        return Optional.ofNullable(OBJECTIVES.get(target));
    }

    private static Demand of(Target target, double least) {
        Sentence noun = Sentence.plain(target.noun());
        Sentence words = target.noun().startsWith(NUMBER_OF)
                ? Sentence.of("at least %s %s", Numbers.floor(least), Sentence.plain(target.noun().substring(NUMBER_OF.length())))
                : Sentence.of("%s of at least %s%s", noun, Numbers.floor(least), target.unit());
        return Demand.of(target.key(), Numbers.exact(least), words, terms -> asking(terms, target, 0), (terms, oracle) -> {
            double most = most(target, least, terms, oracle);
            Sentence reached = Sentence.of("%s%s", Numbers.floor(most), target.unit());
            return new Concession(asking(terms, target, most), Numbers.exact(most),
                    Sentence.of("the %s reaches %s at most", noun, reached),
                    Sentence.of("lower the %s from %s%s to %s", noun, Numbers.floor(least), target.unit(), reached));
        });
    }

    private static WhatIf asking(WhatIf terms, Target target, double figure) {
        return terms.with(target.asking(terms.request().require(), figure));
    }

    private static double most(Target target, double least, WhatIf terms, Oracle oracle) {
        Objective objective = OBJECTIVES.get(target);
        // Of cores there are few numbers: whether each can be had is known sooner than the build of the most.
        if (objective != null && target != Target.CORES) {
            return target.figure(oracle.best(terms, objective).orElseThrow().figures());
        }
        List<Double> possible = figures(target, oracle.catalog()).filter(figure -> figure < least).distinct()
                .sorted(Comparator.reverseOrder()).toList();
        if (!possible.isEmpty()) {
            return Extreme.first(possible, figure -> oracle.isPossible(asking(terms, target, figure)) ? Optional.of(figure)
                    : Optional.empty()).orElse(0.0);
        }
        return Extreme.greatest(target.figure(oracle.cheapest(terms).orElseThrow().figures()), least, target.grain(), figure -> {
            Optional<Order> found = oracle.cheapest(asking(terms, target, figure));
            return found.isPresent() ? OptionalDouble.of(target.figure(found.get().figures())) : OptionalDouble.empty();
        });
    }

    /** The figures that processors alone can give; empty where it takes more to decide. */
    private static Stream<Double> figures(Target target, Catalog catalog) {
        if (target == Target.CORES) {
            return catalog.platforms().stream().flatMap(platform -> platform.processors().counts().stream()).distinct()
                    .flatMap(count -> catalog.processors().stream().map(processor -> (double) count * processor.cores()));
        }
        return target == Target.BASE_CLOCK ? catalog.processors().stream().map(Processor::baseGhz)
                : target == Target.ALL_CORE_CLOCK ? catalog.processors().stream().map(Processor::allCoreGhz) : Stream.empty();
    }
}
