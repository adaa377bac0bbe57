package sledwright.explain.conflict;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryWish;
import sledwright.explain.ask.Extreme;
import sledwright.explain.ask.WhatIf;
import sledwright.rules.memory.BalancedChannels;
import sledwright.rules.memory.OneModulePart;
import sledwright.words.Sentence;

/** What a request chooses. */
final class ChoiceDemands {

    static final String MACHINES = "machines";
    static final String PLATFORMS = "platforms";
    static final String FORBID = "forbid";
    static final String USE = "use";

    /** Packs can make a larger number of machines possible where a smaller is not; it is looked for so far above the greatest found. */
    private static final int LOOK_AHEAD = 16;

    private ChoiceDemands() {
    }

    /** A number of identical machines. */
    static Stream<Demand> machines(int count) {
        return count == 1 ? Stream.empty() : Stream.of(Demand.of(MACHINES, String.valueOf(count),
                Sentence.of("%s identical machines", count), WhatIf::withFewerMachines, (terms, oracle) -> {
                    int some = oracle.cheapest(terms).orElseThrow().machines().size();
                    List<Integer> more = IntStream.range(some, count).boxed().sorted(Comparator.reverseOrder()).toList();
                    int most = Extreme.first(more, number -> oracle.isPossible(terms.withMachines(number)) ? Optional.of(number)
                            : Optional.empty()).orElse(some);
                    int farthest = Math.min(count, most + LOOK_AHEAD);
                    for (int number = most + 1; number < farthest && oracle.canBeHadOneByOne(terms.withMachines(number)); number++) {
                        most = oracle.isPossible(terms.withMachines(number)) ? number : most;
                    }
                    return new Concession(terms.withMachines(most), String.valueOf(most),
                            Sentence.of(most == 1 ? "the most is %s machine" : "the most is %s machines", most),
                            Sentence.of(most == 1 ? "order %s machine instead of %s" : "order %s machines instead of %s", most, count));
                }));
    }

    /** An exact number of processors. */
    static Stream<Demand> processors(int count) {
        BiFunction<WhatIf, Integer, WhatIf> exactly = (terms, number) -> terms.with(terms.request().require().withProcessors(number));
        return count == 0 ? Stream.empty() : Stream.of(Demand.of("require.processors", String.valueOf(count),
                Sentence.of("exactly %s", processorsOf(count)), terms -> exactly.apply(terms, 0), (terms, oracle) -> {
                    Comparator<Integer> nearestFirst = Comparator.comparingInt(number -> Math.abs(number - count));
                    int nearest = oracle.catalog().platforms().stream().flatMap(platform -> platform.processors().counts().stream())
                            .distinct().sorted(nearestFirst.thenComparing(Comparator.naturalOrder()))
                            .filter(number -> oracle.isPossible(exactly.apply(terms, number))).findFirst().orElseThrow();
                    Sentence number = processorsOf(nearest);
                    return new Concession(exactly.apply(terms, nearest), String.valueOf(nearest),
                            Sentence.of("the nearest that can be had is %s", number), Sentence.of("take %s instead of %s", number, count));
                }));
    }

    private static Sentence processorsOf(int count) {
        return Sentence.of(count == 1 ? "%s processor" : "%s processors", count);
    }

    /** A memory mode that is not independent. */
    static Stream<Demand> mode(MemoryMode mode) {
        String plain = MemoryMode.INDEPENDENT.label();
        return mode == MemoryMode.INDEPENDENT ? Stream.empty()
                : Stream.of(Demand.of("require.memory_mode", mode.label(), Sentence.of("%s memory", Sentence.plain(mode.label())),
                        terms -> terms.with(terms.request().require().withMode(MemoryMode.INDEPENDENT)),
                        (terms, oracle) -> new Concession(terms, plain, "no build has such memory", "take independent memory")));
    }

    /** Memory populated as it is sold, whether the request says so or the shop. */
    static Stream<Demand> populated(MemoryWish wish) {
        Demand balanced = Demand.of(BalancedChannels.KEY, "true", "the same memory on every channel",
                terms -> populated(terms, terms.request().require().populated().withBalanced(false)),
                (terms, oracle) -> new Concession(terms, "false", "no build has the same memory on every channel",
                        "allow channels that differ in memory"));
        Demand onePart = Demand.of(OneModulePart.KEY, "true", "memory modules of one part number",
                terms -> populated(terms, terms.request().require().populated().withOnePart(false)),
                (terms, oracle) -> new Concession(terms, "false", "a build needs modules of more than one part number",
                        "allow modules of several part numbers"));
        return Stream.concat(wish.balanced() ? Stream.of(balanced) : Stream.empty(), wish.onePart() ? Stream.of(onePart) : Stream.empty());
    }

    private static WhatIf populated(WhatIf terms, MemoryWish wish) {
        return terms.with(terms.request().require().withPopulated(wish));
    }

    /** Some platforms and no others. */
    static Stream<Demand> platforms(Set<String> skus) {
        return skus.isEmpty() ? Stream.empty() : Stream.of(Demand.of(PLATFORMS, list(skus),
                Sentence.of(skus.size() == 1 ? "the platform %s" : "one of the platforms %s", String.join(", ", new TreeSet<>(skus))),
                terms -> terms.with(terms.request().withPlatforms(Set.of())), (terms, oracle) -> {
                    String other = oracle.cheapest(terms).orElseThrow().machines().get(0).platform().sku();
                    Set<String> more = new TreeSet<>(skus);
                    more.add(other);
                    return new Concession(terms.with(terms.request().withPlatforms(more)), list(more),
                            Sentence.of("a build needs another platform, such as %s", other), Sentence.of("take the platform %s", other));
                }));
    }

    /** Parts that must not be there. */
    static Stream<Demand> forbidden(Set<String> skus) {
        return skus.stream().sorted().map(part -> new Demand(FORBID, Optional.of(part), list(skus), Sentence.of("no %s", part),
                terms -> terms.with(terms.request().withForbid(without(terms.request().forbid(), part))),
                (terms, oracle) -> new Concession(terms, list(terms.request().forbid()), Sentence.of("a build needs %s", part),
                        Sentence.of("allow %s", part))));
    }

    /** Parts that must be in every machine. */
    static Stream<Demand> used(Set<String> skus) {
        return skus.stream().sorted()
                .map(part -> new Demand(USE, Optional.of(part), list(skus), Sentence.of("%s in every machine", part),
                terms -> terms.with(terms.request().withUse(without(terms.request().use(), part))),
                (terms, oracle) -> new Concession(terms, list(terms.request().use()), Sentence.of("no build holds %s", part),
                        Sentence.of("do without %s", part))));
    }

    /** The terms with a demand for a part in every machine; empty where it is none. */
    static Optional<WhatIf> using(Demand demand, WhatIf terms) {
        return demand.isOf(USE) ? demand.sku().map(part -> {
            Set<String> more = new TreeSet<>(terms.request().use());
            more.add(part);
            return terms.with(terms.request().withUse(more));
        }) : Optional.empty();
    }

    static String list(Set<String> skus) {
        return new TreeSet<>(skus).stream().collect(Collectors.joining(", ", "[", "]"));
    }

    private static Set<String> without(Set<String> skus, String sku) {
        return skus.stream().filter(other -> !other.equals(sku)).collect(Collectors.toSet());
    }
}
