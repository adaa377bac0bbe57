package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Fitout;
import sledwright.domain.Pick;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Supply;
import sledwright.generator.draw.Shelf;
import sledwright.generator.fitout.Completion;
import sledwright.generator.fitout.Fittings;
import sledwright.generator.fitout.Fitted;
import sledwright.generator.fitout.Housings;
import sledwright.generator.fitout.Outfitter;
import sledwright.generator.keep.Kept;
import sledwright.generator.time.Deadline;
import sledwright.metrics.PowerDraw;
import sledwright.samples.Samples;

/**
 * Sets of drives, cards and extras, and the enclosures around them, without the rest of the search: against the list of every set, for every
 * platform of a case, every number of processors and loads of all sizes. More seeds by {@code -Dsledwright.seeds=5000}.
 */
class CompletionsAgainstEveryFitoutTest {

    private static final int SEEDS = 250;
    private static final int LOADS = 12;

    @Test
    void nothingCompletesAMachineForLess() {
        Disagreement.none(SEEDS, CompletionsAgainstEveryFitoutTest::random, CompletionsAgainstEveryFitoutTest::judge);
    }

    /** A controller that is sold in pairs alone: the second one has to drive, though cheaper drives hang on their bays. */
    @Test
    void aControllerThatComesWithAnotherHasSomethingToDrive() {
        assertThat(judge(random(5815))).isEmpty();
    }

    private static RandomCase random(long seed) {
        return wanting(RandomEquipment.on(RandomCase.of(seed, RandomCase.Size.LISTABLE), seed));
    }

    /** Four requests in ten want some part used. */
    private static RandomCase wanting(RandomCase that) {
        SplittableRandom random = new SplittableRandom(that.seed() * 6_700_417);
        Catalog catalog = that.catalog();
        List<String> skus = Stream.of(catalog.drives(), catalog.cards(), catalog.extras()).flatMap(List::stream).map(part -> part.sku()).toList();
        Set<String> use = that.request().use().stream().filter(sku -> skus.contains(sku) || catalog.isOfEnclosuresAlone(sku))
                .collect(Collectors.toSet());
        if (random.nextDouble() < 0.4) {
            use.add(skus.get(random.nextInt(skus.size())));
        }
        return that.with(that.request().withUse(use));
    }

    private static String judge(RandomCase that) {
        List<String> wrong = new ArrayList<>();
        for (Platform platform : that.catalog().platforms()) {
            for (int fitted : platform.processors().counts()) {
                new Judging(that, platform, fitted, wrong).run();
            }
        }
        return String.join("\n", wrong);
    }

    /** One platform with some number of processors. */
    private static final class Judging {

        private final RandomCase that;
        private final Catalog catalog;
        private final Request request;
        private final Platform platform;
        private final int fitted;
        private final List<String> wrong;
        private final Shelf shelf;
        private final Set<String> wanted;
        private final List<EveryFitout.Fit> every;

        Judging(RandomCase that, Platform platform, int fitted, List<String> wrong) {
            this.that = that;
            catalog = that.catalog();
            request = that.request();
            this.platform = platform;
            this.fitted = fitted;
            this.wrong = wrong;
            shelf = new Shelf(catalog, request);
            wanted = request.use().stream().filter(sku -> !catalog.isOfEnclosuresAlone(sku)).collect(Collectors.toSet());
            every = EveryFitout.of(platform, fitted, catalog, request, Set.of(), Set.of(), BruteForce.prices(that));
        }

        void run() {
            Map<String, Integer> units = new HashMap<>();
            wanted.forEach(sku -> units.put(sku, request.machines()));
            Fittings fittings = new Fittings(catalog, request, shelf, Deadline.never(), new Kept(1_000_000), units);
            Housings housings = new Housings(catalog, request, shelf,
                    request.use().stream().filter(catalog::isOfEnclosuresAlone).collect(Collectors.toSet()));
            List<Fitted> worthwhile = fittings.of(new Fittings.Chassis(platform, fitted, false));
            List<Fitted> ofEveryWeight = fittings.of(new Fittings.Chassis(platform, fitted, true));
            TreeMap<Long, Long> cheapest = new TreeMap<>();
            every.stream().filter(fit -> fit.skus().containsAll(wanted))
                    .forEach(fit -> cheapest.merge(Math.round(fit.watts() * 1e6), fit.price(), Math::min));
            compare("of every weight", cheapest, ofEveryWeight);
            compare("worthwhile", front(cheapest), worthwhile);
            Stream.concat(worthwhile.stream(), ofEveryWeight.stream())
                    .forEach(set -> sound(new Completion(-1, Completion.ANY_LOAD, set.price(), set, Optional.empty())));
            // That a machine which sits in no enclosure holds no wanted part of one is seen elsewhere.
            if (housings.needs(platform) || request.use().equals(wanted)) {
                complete(housings.needs(platform) && !housings.rises(platform) ? ofEveryWeight : worthwhile, housings);
            }
        }

        /** What is cheaper than all that is as light. */
        private static TreeMap<Long, Long> front(TreeMap<Long, Long> cheapest) {
            TreeMap<Long, Long> front = new TreeMap<>();
            long least = Long.MAX_VALUE;
            for (Map.Entry<Long, Long> one : cheapest.entrySet()) {
                if (one.getValue() < least) {
                    front.put(one.getKey(), one.getValue());
                    least = one.getValue();
                }
            }
            return front;
        }

        private void compare(String what, TreeMap<Long, Long> expected, List<Fitted> sets) {
            TreeMap<Long, Long> found = new TreeMap<>();
            sets.forEach(set -> found.merge(set.microwatts(), set.price(), Math::min));
            if (!found.equals(expected) || sets.size() != found.size()) {
                wrong.add("%s, %d processors, price by microwatts, %s: %s of %d sets, every set gives %s".formatted(platform.sku(), fitted, what,
                        found, sets.size(), expected));
            }
        }

        /** What stands in the machines breaks no rule, costs what it says, loads what it says, and holds what is wanted. */
        private void sound(Completion completion) {
            Fitted set = completion.fitted();
            List<Pick> picks = new ArrayList<>();
            List<Fitout> fitouts = new Outfitter(catalog, shelf, request.machines()).fitouts(completion, picks);
            Map<String, Integer> held = new TreeMap<>();
            completion.housed().ifPresent(housed -> {
                held.merge(housed.enclosure().sku(), housed.count(), Integer::sum);
                held.merge(housed.supply().sku(), housed.count() * housed.supply().count(), Integer::sum);
            });
            long price = 0;
            double heaviestW = 0;
            for (Fitout fitout : fitouts) {
                Build build = new Build(platform, Collections.nCopies(fitted, Samples.P10), platform.cooling().get(0),
                        Optional.empty(), new TreeMap<>(), fitout);
                Set<String> broken = FitoutReading.broken(build, request);
                if (!broken.isEmpty() || !fitout.partCounts().keySet().containsAll(wanted)) {
                    wrong.add("%s with %s breaks %s".formatted(platform.sku(), fitout, broken));
                }
                fitout.partCounts().forEach((sku, units) -> held.merge(sku, units, Integer::sum));
                price += catalog.labour().perDrive() * fitout.drives().size() + catalog.labour().perCard() * fitout.cards().size();
                heaviestW = Math.max(heaviestW, fitout.powerW());
            }
            Map<String, Integer> drawn = new TreeMap<>();
            for (Pick pick : picks) {
                drawn.merge(pick.sku(), pick.quantity(), Integer::sum);
                price += ExhaustiveDraw.unitPrice(pick.lot(), pick.quantity()) * pick.quantity();
            }
            if (fitouts.size() != request.machines() || price != completion.price() || !drawn.equals(held)
                    || Math.round(heaviestW * 1e6) != set.microwatts()) {
                wrong.add("%s with %s: %d at %s W, said %d at %d, holds %s, drawn %s".formatted(platform.sku(), fitouts, price, heaviestW,
                        completion.price(), set.microwatts(), held, drawn));
            }
        }

        private void complete(List<Fitted> sets, Housings housings) {
            Optional<Supply> supply = platform.power().supplies().stream().findFirst();
            double mostW = Math.min(request.limit().powerW().orElse(Double.POSITIVE_INFINITY), Math.min(
                    platform.power().budgetW().orElse(Double.POSITIVE_INFINITY),
                    supply.map(option -> PowerDraw.deliverableW(option, request.limit())).orElse(Double.POSITIVE_INFINITY)));
            long most = mostW == Double.POSITIVE_INFINITY ? Completion.ANY_LOAD : Math.round(mostW * 1e6);
            List<Completion> completions = Completion.of(platform, sets, housings, most);
            completions.forEach(this::sound);
            for (long load : loads(completions, most)) {
                BruteForce.Whole expected = BruteForce.completing(that, platform, supply.orElse(null), Set.of(), load / 1e6, every);
                List<Completion> found = completions.stream().filter(one -> load > one.heavierThan() && load <= one.atMost()).toList();
                if (expected == null && !housings.needs(platform) && sets.size() == 1) {
                    continue; // nothing to choose: whether the machine is too heavy is seen elsewhere
                }
                boolean agrees = expected == null ? found.isEmpty() : found.size() == 1 && found.get(0).price() == expected.price()
                        && found.get(0).fitted().microwatts() == Math.round(expected.loadW() * 1e6) - load;
                if (!agrees) {
                    wrong.add("%s, %d processors, others load %d: %s, every set gives %s".formatted(platform.sku(), fitted, load,
                            found.stream().map(one -> one.price() + " and " + one.fitted().microwatts()).toList(), expected));
                }
            }
        }

        /** Loads at which something else may be the best, some beside them, and others. */
        private Set<Long> loads(List<Completion> completions, long most) {
            SplittableRandom random = new SplittableRandom(that.seed());
            Set<Long> loads = new TreeSet<>();
            for (int i = 0; i < LOADS; i++) {
                loads.add(random.nextInt(900) * 1_000_000L / 2);
            }
            for (Completion completion : completions) {
                loads.addAll(List.of(completion.atMost(), completion.atMost() + 1, Math.max(0, completion.atMost() - 1)));
            }
            Set<Long> near = new HashSet<>();
            every.forEach(fit -> near.add(most - Math.round(fit.watts() * 1e6)));
            near.stream().filter(load -> load >= 0).limit(LOADS).forEach(load -> loads.addAll(List.of(load, load + 1)));
            loads.removeIf(load -> load >= Completion.ANY_LOAD / 2);
            return loads;
        }
    }
}
