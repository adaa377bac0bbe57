package sledwright.explain.conflict;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sledwright.domain.Lot;
import sledwright.domain.MemoryMode;
import sledwright.domain.Pick;
import sledwright.domain.Stock;
import sledwright.explain.ask.Changes;
import sledwright.explain.ask.Extreme;
import sledwright.explain.ask.Oracle;
import sledwright.explain.ask.WhatIf;
import sledwright.metrics.CheapestDraw;
import sledwright.rules.Order;
import sledwright.rules.choice.AskedPlatform;
import sledwright.rules.choice.ForbiddenPart;
import sledwright.rules.choice.RequiredPart;
import sledwright.rules.memory.ModeSupported;
import sledwright.rules.stock.AcceptedCondition;
import sledwright.rules.stock.InStock;
import sledwright.rules.stock.LeadTime;
import sledwright.rules.target.ProcessorCount;
import sledwright.words.Numbers;
import sledwright.words.Sentences;

/** What a request chooses, and the stock that it meets, as demands. */
public final class ChoiceDemands {

    private ChoiceDemands() {
    }

    private static String list(Set<String> skus) {
        return new TreeSet<>(skus).stream().collect(Collectors.joining(", ", "[", "]"));
    }

    private static Set<String> without(Set<String> skus, String sku) {
        return skus.stream().filter(other -> !other.equals(sku)).collect(Collectors.toSet());
    }

    /** So many identical machines. */
    record Machines(int count) implements Demand {

        /** Packs can make a larger number possible where a smaller is not; so far above the greatest that was found it is looked for. */
        private static final int LOOK_AHEAD = 16;

        @Override
        public String key() {
            return "machines";
        }

        @Override
        public String rule() {
            return "";
        }

        @Override
        public String asked() {
            return String.valueOf(count);
        }

        @Override
        public String words() {
            return count + " identical machines";
        }

        @Override
        public WhatIf without(WhatIf terms) {
            return terms.withFewerMachines();
        }

        @Override
        public Concession nearest(Oracle oracle, WhatIf terms) {
            int some = oracle.cheapest(terms).orElseThrow().machines().size();
            List<Integer> more = IntStream.range(some, count).boxed().sorted(Comparator.reverseOrder()).toList();
            int most = Extreme.first(more, number -> oracle.cheapest(terms.withMachines(number)).map(order -> number)).orElse(some);
            int farthest = Math.min(count, most + LOOK_AHEAD);
            for (int number = most + 1; number < farthest && oracle.canBeHadOneByOne(terms.withMachines(number)); number++) {
                most = oracle.cheapest(terms.withMachines(number)).isPresent() ? number : most;
            }
            return new Concession(terms.withMachines(most), String.valueOf(most), "the most is " + Numbers.counted(most, "machine"),
                    "order %s instead of %d".formatted(Numbers.counted(most, "machine"), count));
        }
    }

    /** An exact number of processors. */
    record Processors(int count) implements Demand {

        @Override
        public String key() {
            return "require.processors";
        }

        @Override
        public String rule() {
            return ProcessorCount.ID;
        }

        @Override
        public String asked() {
            return String.valueOf(count);
        }

        @Override
        public String words() {
            return "exactly " + Numbers.counted(count, "processor");
        }

        @Override
        public WhatIf without(WhatIf terms) {
            return exactly(terms, 0);
        }

        private static WhatIf exactly(WhatIf terms, int number) {
            return terms.with(Changes.processors(terms.request().require(), number));
        }

        @Override
        public Concession nearest(Oracle oracle, WhatIf terms) {
            int nearest = oracle.catalog().platforms().stream().flatMap(platform -> platform.processors().counts().stream()).distinct()
                    .sorted(Comparator.<Integer>comparingInt(number -> Math.abs(number - count)).thenComparing(Comparator.naturalOrder()))
                    .filter(number -> oracle.cheapest(exactly(terms, number)).isPresent()).findFirst().orElseThrow();
            String number = Numbers.counted(nearest, "processor");
            return new Concession(exactly(terms, nearest), String.valueOf(nearest), "a build needs " + number,
                    "take %s instead of %d".formatted(number, count));
        }
    }

    /** A memory mode that is not independent. */
    record Mode(MemoryMode mode) implements Demand {

        @Override
        public String key() {
            return "require.memory_mode";
        }

        @Override
        public String rule() {
            return ModeSupported.ID;
        }

        @Override
        public String asked() {
            return mode.label();
        }

        @Override
        public String words() {
            return mode.label() + " memory";
        }

        @Override
        public WhatIf without(WhatIf terms) {
            return terms.with(Changes.mode(terms.request().require(), MemoryMode.INDEPENDENT));
        }

        @Override
        public Concession nearest(Oracle oracle, WhatIf terms) {
            return new Concession(terms, MemoryMode.INDEPENDENT.label(), "no build has such memory", "take independent memory");
        }
    }

    /** Some platforms and no others. */
    record Platforms(Set<String> skus) implements Demand {

        @Override
        public String key() {
            return "platforms";
        }

        @Override
        public String rule() {
            return AskedPlatform.ID;
        }

        @Override
        public String asked() {
            return list(skus);
        }

        @Override
        public String words() {
            return (skus.size() == 1 ? "the platform " : "one of the platforms ") + String.join(", ", new TreeSet<>(skus));
        }

        @Override
        public WhatIf without(WhatIf terms) {
            return terms.with(terms.request().withPlatforms(Set.of()));
        }

        @Override
        public Concession nearest(Oracle oracle, WhatIf terms) {
            String other = oracle.cheapest(terms).orElseThrow().machines().get(0).platform().sku();
            Set<String> more = new TreeSet<>(skus);
            more.add(other);
            return new Concession(terms.with(terms.request().withPlatforms(more)), list(more),
                    "a build needs another platform, such as " + other, "take the platform " + other);
        }
    }

    /**
     * A part that must not be there.
     *
     * @param all every such part of the request
     */
    record Forbidden(String part, Set<String> all) implements Demand {

        @Override
        public String key() {
            return "forbid";
        }

        @Override
        public Optional<String> sku() {
            return Optional.of(part);
        }

        @Override
        public String rule() {
            return ForbiddenPart.ID;
        }

        @Override
        public String asked() {
            return list(all);
        }

        @Override
        public String words() {
            return "no " + part;
        }

        @Override
        public WhatIf without(WhatIf terms) {
            return terms.with(terms.request().withForbid(ChoiceDemands.without(terms.request().forbid(), part)));
        }

        @Override
        public Concession nearest(Oracle oracle, WhatIf terms) {
            return new Concession(terms, list(terms.request().forbid()), "a build needs " + part, "allow " + part);
        }
    }

    /**
     * A part that must be in every machine.
     *
     * @param all every such part of the request
     */
    record Used(String part, Set<String> all) implements Demand {

        @Override
        public String key() {
            return "use";
        }

        @Override
        public Optional<String> sku() {
            return Optional.of(part);
        }

        @Override
        public String rule() {
            return RequiredPart.ID;
        }

        @Override
        public String asked() {
            return list(all);
        }

        @Override
        public String words() {
            return part + " in every machine";
        }

        @Override
        public WhatIf without(WhatIf terms) {
            return terms.with(terms.request().withUse(ChoiceDemands.without(terms.request().use(), part)));
        }

        @Override
        public Concession nearest(Oracle oracle, WhatIf terms) {
            return new Concession(terms, list(terms.request().use()), "no build holds " + part, "do without " + part);
        }
    }

    /** No more units than the lots hold. */
    public record InTheLots() implements Demand {

        public static final String KEY = "stock";

        @Override
        public String key() {
            return KEY;
        }

        @Override
        public String rule() {
            return InStock.ID;
        }

        @Override
        public String asked() {
            return "";
        }

        @Override
        public String words() {
            return "what is in stock";
        }

        @Override
        public WhatIf without(WhatIf terms) {
            return terms.withoutStock();
        }

        @Override
        public Concession nearest(Oracle oracle, WhatIf terms) {
            Order order = oracle.cheapest(terms).orElseThrow();
            Stock stock = Stock.of(oracle.catalog(), terms.request());
            Map<String, int[]> missing = shortages(order, stock);
            if (missing.isEmpty()) {
                return cheapLots(terms, order, stock);
            }
            String reach = "a build needs " + Sentences.list(missing.entrySet().stream().map(entry -> "%s of %s (%d in stock)".formatted(
                    Numbers.counted(entry.getValue()[0], "unit"), entry.getKey(), entry.getValue()[1])).toList());
            String advice = "get " + Sentences.list(missing.entrySet().stream().map(entry -> "%s of %s".formatted(
                    Numbers.counted(entry.getValue()[0] - entry.getValue()[1], "more unit"), entry.getKey())).toList());
            return new Concession(terms, "", reach, advice);
        }

        /** The stock has units enough, but not at the price: what the lots lack that the order takes. */
        private static Concession cheapLots(WhatIf terms, Order order, Stock stock) {
            List<String> reach = new ArrayList<>();
            List<String> advice = new ArrayList<>();
            for (Pick pick : order.picks()) {
                int given = stock.lots(pick.sku()).stream()
                        .filter(lot -> lot.lot().equals(pick.lot().lot()) && lot.onHand() == pick.lot().onHand())
                        .mapToInt(Lot::available).sum();
                if (given < pick.quantity()) {
                    reach.add("%s of %s from lot %s (%d there)"
                            .formatted(Numbers.counted(pick.quantity(), "unit"), pick.sku(), pick.lot().lot(), given));
                    advice.add("%s of %s at the price of lot %s".formatted(
                            Numbers.counted(pick.quantity() - given, "more unit"), pick.sku(), pick.lot().lot()));
                }
            }
            return new Concession(terms, "", "a build needs " + Sentences.list(reach), "get " + Sentences.list(advice));
        }

        /** Sku -> units needed, units that the real lots give. */
        private static Map<String, int[]> shortages(Order order, Stock stock) {
            Map<String, int[]> missing = new TreeMap<>();
            order.needed().forEach((sku, units) -> {
                List<Lot> lots = stock.lots(sku).stream().filter(lot -> LeadTime.allows(lot, order.request().limit())
                        && AcceptedCondition.allows(lot, order.request().limit())).toList();
                long[] prices = CheapestDraw.prices(lots, units);
                int given = units;
                while (prices[given] >= CheapestDraw.IMPOSSIBLE) {
                    given--;
                }
                if (given < units) {
                    missing.put(sku, new int[] {units, given});
                }
            });
            return missing;
        }
    }
}
