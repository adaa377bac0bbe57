package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sledwright.domain.Board;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Labour;
import sledwright.domain.Licence;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.domain.Objective;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Slot;
import sledwright.domain.Supply;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.planner.upgrade.BenchStep;
import sledwright.planner.upgrade.Installed;
import sledwright.planner.upgrade.Plan;
import sledwright.planner.upgrade.Refit;
import sledwright.planner.upgrade.Spend;
import sledwright.planner.upgrade.Upgrade;
import sledwright.planner.upgrade.Upgrader;

/**
 * Upgrades of small machines against every set of parts that answers the request. The list of every build tells the sets apart by
 * prices that are codes of how many units of each part there are; what each set comes to is then reckoned part by part.
 */
class UpgradeAgainstBruteForceTest {

    private static final int SEEDS = 400;
    private static final int MOST_BITS = 56;

    private record Case(long seed, RandomCase that, Request request, Installed installed, double tradeIn) {

        String text() {
            return "trade-in %s of %s%n%s".formatted(tradeIn, installed, that.with(request).text());
        }

        int machines() {
            return request.machines();
        }
    }

    @Test
    void theLeastSpendIsFoundAndDoneAtTheBench() {
        int[] found = new int[4];
        Seeds.chosen(SEEDS).mapToObj(UpgradeAgainstBruteForceTest::random).flatMap(Optional::stream).forEach(one -> {
            Upgrader upgrader = new Upgrader(one.that.catalog(), one.request, one.installed, 0);
            Findings findings = upgrader.findings(Deadline.never());
            Upgrade upgrade = upgrader.answer(findings, Deadline.never());
            Optional<Map<String, Integer>> codes = bits(one);
            if (codes.isEmpty() || findings.status() == Status.BEST_FOUND) {
                return;
            }
            long least = least(one, codes.get());
            String about = "least %d, found %s%n%s".formatted(least, upgrade.plan().map(Plan::spend), one.text());
            found[upgrade.plan().isEmpty() ? 0 : upgrade.plan().get().changesAnything() ? one.machines() > 1 ? 3 : 2 : 1]++;
            assertThat(upgrade.plan().isPresent()).as(about).isEqualTo(least != Long.MAX_VALUE);
            assertThat(upgrade.status()).as(about).isEqualTo(least == Long.MAX_VALUE ? Status.IMPOSSIBLE : Status.PROVED);
            upgrade.plan().ifPresent(plan -> {
                assertThat(plan.spend().total()).as(about).isEqualTo(least);
                check(one, plan, about);
            });
            checkWhole(one, upgrade, about);
        });
        // Each kind of answer comes up: impossible, nothing to do, one machine, several.
        for (int times : found) {
            assertThat(times).as(Arrays.toString(found)).isGreaterThan(SEEDS / 100);
        }
    }

    private static Optional<Case> random(long seed) {
        RandomCase that = RandomCase.of(seed, RandomCase.Size.LISTABLE);
        SplittableRandom random = new SplittableRandom(seed);
        Search search = new Search(that.catalog());
        Request any = Request.named("installed").withMachines(1).withAlternatives(6, 0)
                .withObjective(random.nextBoolean() ? Objective.CHEAPEST : Objective.MOST_MEMORY);
        List<Build> builds = search.run(any, Deadline.never()).ranked().stream().map(order -> order.machines().get(0)).toList();
        if (builds.isEmpty()) {
            return Optional.empty();
        }
        Build build = builds.get(random.nextInt(builds.size()));
        double chance = random.nextDouble();
        if (chance < 0.3) {
            build = disturbed(build, random, chance < 0.1);
        }
        double tradeIn = List.of(0.0, 0.0, 0.3, 0.77, 1.0).get(random.nextInt(5));
        Request request = that.request().withObjective(Objective.CHEAPEST);
        return Optional.of(new Case(seed, that, request, Installed.of(build, request.machines(), tradeIn, request.limit(), that.catalog()), tradeIn));
    }

    /** The same machine with its modules in other slots, or one of them gone. */
    private static Build disturbed(Build build, SplittableRandom random, boolean fewer) {
        List<Slot> slots = new ArrayList<>(build.platform().board().slots());
        Collections.shuffle(slots, new Random(random.nextLong()));
        List<MemoryModule> modules = new ArrayList<>(build.modules().values());
        if (fewer) {
            modules.remove(0);
        }
        TreeMap<Slot, MemoryModule> places = new TreeMap<>();
        for (int i = 0; i < modules.size(); i++) {
            places.put(slots.get(i), modules.get(i));
        }
        return new Build(build.platform(), build.processors(), build.cooling(), build.supply(), places);
    }

    private static List<String> skus(Case one) {
        Platform platform = one.installed.build().platform();
        List<String> skus = new ArrayList<>();
        one.that.catalog().processors().forEach(processor -> skus.add(processor.sku()));
        platform.cooling().forEach(kit -> skus.add(kit.sku()));
        platform.power().supplies().stream().map(Supply::sku).distinct().forEach(skus::add);
        one.that.catalog().modules().forEach(module -> skus.add(module.sku()));
        return skus.stream().distinct().toList();
    }

    /** The units of a part that the machines could take and that there are, from wherever. */
    private static int most(Case one, String sku) {
        Platform platform = one.installed.build().platform();
        int sockets = platform.board().sockets();
        int takes = one.that.catalog().module(sku).isPresent() ? platform.board().slots().size()
                : Math.max(sockets, platform.power().supplies().stream().filter(supply -> supply.sku().equals(sku)).mapToInt(Supply::count).max().orElse(0));
        int there = one.installed.units(sku) + one.request.onHand().getOrDefault(sku, 0)
                + sold(one, sku).stream().mapToInt(Lot::available).sum();
        return Math.min(takes * one.machines(), there);
    }

    private static List<Lot> sold(Case one, String sku) {
        return one.that.catalog().lots(sku).stream().filter(lot -> Reading.lot(lot, one.request.limit()).isEmpty()).toList();
    }

    /** For each part where its count begins in the code; empty where a code would not hold them all. */
    private static Optional<Map<String, Integer>> bits(Case one) {
        Map<String, Integer> shifts = new LinkedHashMap<>();
        int bits = 0;
        for (String sku : skus(one)) {
            shifts.put(sku, bits);
            bits += Integer.SIZE - Integer.numberOfLeadingZeros(most(one, sku));
        }
        return bits <= MOST_BITS ? Optional.of(shifts) : Optional.empty();
    }

    private static long least(Case one, Map<String, Integer> shifts) {
        Catalog catalog = one.that.catalog();
        Platform platform = one.installed.build().platform();
        Map<String, List<Lot>> lots = new HashMap<>();
        shifts.forEach((sku, shift) -> {
            if (most(one, sku) > 0) {
                lots.put(sku, List.of(Lot.own(sku, "code", most(one, sku), 1L << shift)));
            }
        });
        lots.put(platform.sku(), List.of(Lot.own(platform.sku(), "code", one.machines(), 0)));
        Catalog coded = new Catalog("coded", catalog.currency(), catalog.pricedOn(), new Labour(0, 0), catalog.throughputFactors(), List.of(platform),
                List.copyOf(catalog.processors()), List.copyOf(catalog.modules()), lots);
        Request r = one.request;
        Limits l = r.limit();
        Request plain = new Request(r.name(), r.machines(), Set.of(platform.sku()), r.require(), new Limits(OptionalLong.empty(), l.powerW(),
                l.leadDays(), l.inletC(), l.altitudeM(), l.mainsV(), l.conditions()), Objective.CHEAPEST, r.worth(), Licence.NONE, 1, 0,
                r.forbid(), r.use(), Map.of());
        long most = l.price().orElse(Long.MAX_VALUE - 1);
        long least = BruteForce.all(new RandomCase(one.seed, coded, plain)).stream().map(Candidate::price).distinct()
                .mapToLong(code -> spend(one, shifts, code)).filter(spend -> spend <= most).min().orElse(Long.MAX_VALUE);
        Build build = one.installed.build();
        long licence = licence(one, build.cores(), build.processors().size());
        boolean stands = Reading.machine(build, plain, catalog.throughputFactors()).isEmpty();
        return stands && licence <= most ? Math.min(least, licence) : least;
    }

    private static long licence(Case one, int cores, int processors) {
        return one.machines() * (one.request.licence().perCore() * cores + one.request.licence().perProcessor() * processors);
    }

    /** What a set of parts comes to when something is changed; too much to count where the shop does not sell it. */
    private static long spend(Case one, Map<String, Integer> shifts, long code) {
        Catalog catalog = one.that.catalog();
        List<String> skus = List.copyOf(shifts.keySet());
        long spend = one.machines() * catalog.labour().perMachine();
        for (int i = 0; i < skus.size(); i++) {
            String sku = skus.get(i);
            int end = i + 1 < skus.size() ? shifts.get(skus.get(i + 1)) : Long.SIZE - 1;
            int units = (int) (code >>> shifts.get(sku) & (1L << end - shifts.get(sku)) - 1);
            long least = Long.MAX_VALUE;
            long[] prices = ExhaustiveDraw.prices(sold(one, sku));
            int installed = one.installed.units(sku);
            int drawer = one.request.onHand().getOrDefault(sku, 0);
            for (int kept = 0; kept <= Math.min(units, installed); kept++) {
                for (int own = 0; own <= Math.min(units - kept, drawer); own++) {
                    int bought = units - kept - own;
                    if (bought < prices.length && prices[bought] < ExhaustiveDraw.NONE) {
                        long work = catalog.module(sku).isPresent() ? catalog.labour().perModule() * (units - kept) : 0;
                        least = Math.min(least, prices[bought] + work - (installed - kept) * credit(one, sku));
                    }
                }
            }
            if (least == Long.MAX_VALUE) {
                return Long.MAX_VALUE;
            }
            spend += least;
            int processors = units;
            if (catalog.processor(sku).isPresent()) {
                spend += one.request.licence().perCore() * processors * catalog.processor(sku).get().cores()
                        + one.request.licence().perProcessor() * processors;
            }
        }
        return spend;
    }

    /** A share of the least price, cut off to whole minor units. */
    private static long credit(Case one, String sku) {
        long least = Long.MAX_VALUE;
        for (Lot lot : sold(one, sku)) {
            for (Lot.PriceBreak step : lot.breaks()) {
                least = lot.available() > 0 ? Math.min(least, step.unitPrice()) : least;
            }
        }
        return least == Long.MAX_VALUE ? 0 : least * Math.round(one.tradeIn * 100) / 100;
    }

    private static void check(Case one, Plan plan, String about) {
        Build before = one.installed.build();
        Request asked = one.request.withPlatforms(Set.of(before.platform().sku()));
        Map<String, Integer> then = new TreeMap<>();
        assertThat(plan.refits().stream().mapToInt(Refit::machines).sum()).as(about).isEqualTo(one.machines());
        for (Refit refit : plan.refits()) {
            assertThat(Reading.machine(refit.after(), asked, one.that.catalog().throughputFactors())).as(about).isEmpty();
            assertThat(done(before, refit.steps())).as(about + refit).isEqualTo(places(refit.after()));
            refit.after().partCounts().forEach((sku, units) -> then.merge(sku, units * refit.machines(), Integer::sum));
            assertThat(inPlace(before, refit.after())).as("modules in place " + about + refit).isGreaterThanOrEqualTo(mostInPlace(one, before, refit.after()));
        }
        // Parts go nowhere and come from nowhere: what stood, less what is pulled, and what is added.
        Map<String, Integer> reckoned = new TreeMap<>();
        before.partCounts().forEach((sku, units) -> reckoned.merge(sku, units * one.machines(), Integer::sum));
        plan.pulled().forEach((sku, units) -> reckoned.merge(sku, -units, Integer::sum));
        plan.added().forEach(pick -> reckoned.merge(pick.sku(), pick.quantity(), Integer::sum));
        reckoned.values().removeIf(units -> units == 0);
        assertThat(reckoned).as(about).isEqualTo(then);
        Spend spend = plan.spend();
        assertThat(spend.parts()).as(about).isEqualTo(plan.added().stream().filter(pick -> !pick.lot().onHand()).mapToLong(pick ->
                ExhaustiveDraw.unitPrice(pick.lot(), pick.quantity()) * pick.quantity()).sum());
        assertThat(spend.credit()).as(about).isEqualTo(plan.pulled().entrySet().stream().mapToLong(part -> credit(one, part.getKey()) * part.getValue()).sum());
        assertThat(spend.licence()).as(about).isEqualTo(licence(one, plan.order().machines().get(0).cores(), plan.order().machines().get(0).processors().size()));
    }

    /** What stands where, by places as the bench calls them. */
    private static Map<String, String> places(Build build) {
        Map<String, String> places = new TreeMap<>();
        for (int i = 0; i < build.processors().size(); i++) {
            places.put("processor socket " + (i + 1), build.processors().get(i).sku());
            places.put("heat sink socket " + (i + 1), build.cooling().sku());
        }
        build.supply().ifPresent(supply -> {
            for (int i = 1; i <= supply.count(); i++) {
                places.put("supply supply " + i, supply.sku());
            }
        });
        build.modules().forEach((slot, module) -> places.put("module " + slot.name(), module.sku()));
        return places;
    }

    /** Does the steps by the book: nothing is taken from where it is not, nothing goes where something is, no processor moves below a heat sink. */
    private static Map<String, String> done(Build before, List<BenchStep> steps) {
        Map<String, String> places = places(before);
        List<String> aside = new ArrayList<>();
        for (BenchStep step : steps) {
            String kind = step.part().label() + " ";
            step.from().ifPresent(from -> assertThat(places.remove(kind + from)).as(step.toString()).isEqualTo(step.sku()));
            if (step.part() == BenchStep.Part.PROCESSOR) {
                step.from().ifPresent(from -> assertThat(places).as(step.toString()).doesNotContainKey("heat sink " + from));
                step.to().ifPresent(to -> assertThat(places).as(step.toString()).doesNotContainKey("heat sink " + to));
            }
            if (step.part() == BenchStep.Part.HEAT_SINK && step.to().isPresent()) {
                assertThat(places).as(step.toString()).containsKey("processor " + step.to().get());
            }
            step.to().ifPresent(to -> assertThat(places.put(kind + to, step.sku())).as(step.toString()).isNull());
            boolean wellFormed = switch (step.action()) {
                case TAKE_OUT -> step.from().isPresent() && step.to().isEmpty();
                case LAY_ASIDE -> step.from().isPresent() && step.to().isEmpty() && aside.add(step.part() + step.sku());
                case MOVE -> step.from().isPresent() && step.to().isPresent();
                case PUT_IN -> step.from().isEmpty() && step.to().isPresent() && (aside.remove(step.part() + step.sku()) || true);
            };
            assertThat(wellFormed).as(step.toString()).isTrue();
        }
        assertThat(aside).isEmpty();
        return places;
    }

    private static int inPlace(Build before, Build after) {
        return (int) after.modules().entrySet().stream()
                .filter(entry -> before.modules().containsKey(entry.getKey()) && before.modules().get(entry.getKey()).sku().equals(entry.getValue().sku())).count();
    }

    /** The most modules that stay where they stand over every exchange of whole channels that keeps every rule. */
    private static int mostInPlace(Case one, Build before, Build after) {
        Board board = after.platform().board();
        Request asked = one.request.withPlatforms(Set.of(before.platform().sku()));
        int most = 0;
        for (int[] order : orders(board.channels())) {
            TreeMap<Slot, MemoryModule> modules = new TreeMap<>();
            after.modules().forEach((slot, module) -> modules.put(board.slot(slot.socket(), order[slot.channel()], slot.position()), module));
            Build exchanged = new Build(after.platform(), after.processors(), after.cooling(), after.supply(), modules);
            if (Reading.machine(exchanged, asked, one.that.catalog().throughputFactors()).isEmpty()
                    && (one.request.require().mode() != MemoryMode.MIRRORED || pairsStay(order))) {
                Map<String, Integer> standing = new HashMap<>();
                modules.forEach((slot, module) -> {
                    MemoryModule there = before.modules().get(slot);
                    if (there != null && SlotView.alike(there, module) && there.logicalRanks() == module.logicalRanks()) {
                        standing.merge(there.sku(), 1, Integer::sum);
                    }
                });
                most = Math.max(most, standing.entrySet().stream().mapToInt(entry ->
                        Math.min(entry.getValue(), after.partCounts().getOrDefault(entry.getKey(), 0))).sum());
            }
        }
        return most;
    }

    private static boolean pairsStay(int[] order) {
        for (int first = 0; first + 1 < order.length; first += 2) {
            if (order[first] % 2 != 0 || order[first + 1] != order[first] + 1) {
                return false;
            }
        }
        return true;
    }

    private static List<int[]> orders(int channels) {
        List<int[]> orders = new ArrayList<>();
        permute(new int[channels], 0, 0, orders);
        return orders;
    }

    private static void permute(int[] order, int at, int used, List<int[]> orders) {
        if (at == order.length) {
            orders.add(order.clone());
            return;
        }
        for (int channel = 0; channel < order.length; channel++) {
            if ((used >> channel & 1) == 0) {
                order[at] = channel;
                permute(order, at + 1, used | 1 << channel, orders);
            }
        }
    }

    /** Whole machines cost what the shop's own quote says. */
    private static void checkWhole(Case one, Upgrade upgrade, String about) {
        long credit = one.machines() * one.installed.build().partCounts().entrySet().stream().mapToLong(part -> credit(one, part.getKey()) * part.getValue()).sum();
        Limits l = one.request.limit();
        Limits more = new Limits(l.price().isPresent() ? OptionalLong.of(l.price().getAsLong() + credit) : l.price(), l.powerW(), l.leadDays(),
                l.inletC(), l.altitudeM(), l.mainsV(), l.conditions());
        Optional<Long> price = BruteForce.all(one.that.with(one.request.withLimit(more))).stream().map(Candidate::price).min(Long::compare);
        if (upgrade.wholeProved()) {
            assertThat(upgrade.whole().map(whole -> whole.spend() + credit)).as(about).isEqualTo(price);
        }
    }
}
