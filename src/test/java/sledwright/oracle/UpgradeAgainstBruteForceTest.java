package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.LongFunction;
import org.junit.jupiter.api.Test;
import sledwright.domain.Board;
import sledwright.domain.Build;
import sledwright.domain.DriveInterface;
import sledwright.domain.Limits;
import sledwright.domain.MemoryMode;
import sledwright.domain.MemoryModule;
import sledwright.domain.Request;
import sledwright.domain.Slot;
import sledwright.generator.Findings;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.planner.upgrade.BenchStep;
import sledwright.planner.upgrade.Plan;
import sledwright.planner.upgrade.Refit;
import sledwright.planner.upgrade.Spend;
import sledwright.planner.upgrade.Upgrade;
import sledwright.planner.upgrade.Upgrader;

/** Upgrades of small machines against every set of parts that answers the request, and done step by step. */
class UpgradeAgainstBruteForceTest {

    private static final int SEEDS = 400;
    private static final int EQUIPPED_SEEDS = 60;

    private final Map<BenchStep.Part, Integer> steps = new EnumMap<>(BenchStep.Part.class);

    @Test
    void theLeastSpendIsFoundAndDoneAtTheBench() {
        int[] found = judge(SEEDS, UpgradeCase::random);
        // Each kind of answer comes up: impossible, nothing to do, one machine, several.
        for (int times : found) {
            assertThat(times).as(Arrays.toString(found)).isGreaterThan(SEEDS / 100);
        }
    }

    @Test
    void theLeastSpendIsFoundWithDrivesCardsAndExtras() {
        int[] found = judge(EQUIPPED_SEEDS, UpgradeCase::equipped);
        for (int times : found) {
            assertThat(times).as(Arrays.toString(found)).isGreaterThan(EQUIPPED_SEEDS / 100);
        }
        assertThat(steps).as("what was done").containsKeys(BenchStep.Part.DRIVE, BenchStep.Part.CARD, BenchStep.Part.EXTRA);
    }

    private int[] judge(int seeds, LongFunction<Optional<UpgradeCase>> random) {
        int[] found = new int[4];
        Seeds.chosen(seeds).mapToObj(random).flatMap(Optional::stream).forEach(one -> {
            Upgrader upgrader = new Upgrader(one.catalog(), one.request(), one.installed());
            Findings findings = upgrader.findings(Deadline.never());
            Upgrade upgrade = upgrader.answer(findings, Deadline.never());
            OptionalLong listed = one.least();
            if (listed.isEmpty() || findings.status() == Status.BEST_FOUND) {
                return;
            }
            long least = listed.getAsLong();
            String about = "least %d, found %s%n%s".formatted(least, upgrade.plan().map(Plan::spend), one.text());
            found[upgrade.plan().isEmpty() ? 0 : upgrade.plan().get().changesAnything() ? one.machines() > 1 ? 3 : 2 : 1]++;
            assertThat(upgrade.plan().isPresent()).as(about).isEqualTo(least != Long.MAX_VALUE);
            assertThat(upgrade.proof().status()).as(about).isEqualTo(least == Long.MAX_VALUE ? Status.IMPOSSIBLE : Status.PROVED);
            upgrade.plan().ifPresent(plan -> {
                assertThat(plan.spend().total()).as(about).isEqualTo(least);
                check(one, plan, about);
            });
            checkWhole(one, upgrade, about);
        });
        return found;
    }

    private void check(UpgradeCase one, Plan plan, String about) {
        Build before = one.build();
        Request asked = one.request().withPlatforms(Set.of(before.platform().sku()));
        Map<String, Integer> then = new TreeMap<>();
        assertThat(plan.refits().stream().mapToInt(Refit::machines).sum()).as(about).isEqualTo(one.machines());
        for (Refit refit : plan.refits()) {
            assertThat(Reading.machine(refit.after(), asked, one.catalog().throughputFactors())).as(about).isEmpty();
            assertThat(done(before, refit.steps())).as(about + refit).isEqualTo(places(refit.after()));
            assertThat(extras(before, refit.steps())).as(about + refit).isEqualTo(refit.after().fitout().extrasBySku());
            assertThat(connected(before, refit)).as(about + refit).isEqualTo(hanging(refit.after()));
            refit.steps().forEach(step -> steps.merge(step.part(), 1, Integer::sum));
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
        assertThat(spend.credit()).as(about).isEqualTo(plan.pulled().entrySet().stream().mapToLong(part -> one.credit(part.getKey()) * part.getValue()).sum());
        assertThat(spend.licence()).as(about).isEqualTo(one.licence(plan.order().machines().get(0).cores(), plan.order().machines().get(0).processors().size()));
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
        build.fitout().seats().forEach(seat -> places.put("drive " + seat.bay(), seat.drive().sku()));
        build.fitout().cards().forEach((slot, card) -> places.put("card " + slot, card.sku()));
        return places;
    }

    /** Drives that hang on the machine's driver, by part number. */
    private static Map<String, Integer> hanging(Build build) {
        Map<String, Integer> units = new TreeMap<>();
        build.fitout().drives().stream().filter(drive -> drive.link() != DriveInterface.NVME).forEach(drive -> units.merge(drive.sku(), 1, Integer::sum));
        return units;
    }

    private static String driver(Build build, String place) {
        return build.fitout().cards().containsKey(place) ? build.fitout().cards().get(place).sku() : place;
    }

    /** Those that hung on the driver before and stay, and those that the steps connect to it. */
    private static Map<String, Integer> connected(Build before, Refit refit) {
        Map<String, Integer> units = new TreeMap<>();
        Build after = refit.after();
        if (before.fitout().driver().isPresent() && after.fitout().driver().isPresent()
                && driver(before, before.fitout().driver().get()).equals(driver(after, after.fitout().driver().get()))) {
            hanging(after).forEach((sku, count) -> units.put(sku, Math.min(count, hanging(before).getOrDefault(sku, 0))));
        }
        for (BenchStep step : refit.steps()) {
            if (step.part() == BenchStep.Part.CABLE) {
                assertThat(step.to()).isEqualTo(after.fitout().driver());
                assertThat(step.from()).isEqualTo(step.action() == BenchStep.Action.MOVE ? before.fitout().driver() : Optional.empty());
                units.merge(step.sku(), 1, Integer::sum);
            }
        }
        units.values().removeIf(count -> count == 0);
        return units;
    }

    private static Map<String, Integer> extras(Build before, List<BenchStep> steps) {
        Map<String, Integer> units = new TreeMap<>(before.fitout().extrasBySku());
        steps.stream().filter(step -> step.part() == BenchStep.Part.EXTRA)
                .forEach(step -> units.merge(step.sku(), step.action() == BenchStep.Action.PUT_IN ? 1 : -1, Integer::sum));
        units.values().removeIf(count -> count == 0);
        return units;
    }

    /** Does the steps by the book: nothing is taken from where it is not, nothing goes where something is, no processor moves below a heat sink. */
    private static Map<String, String> done(Build before, List<BenchStep> steps) {
        Map<String, String> places = places(before);
        List<String> aside = new ArrayList<>();
        for (BenchStep step : steps.stream().filter(step -> step.part() != BenchStep.Part.EXTRA && step.part() != BenchStep.Part.CABLE).toList()) {
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
    private static int mostInPlace(UpgradeCase one, Build before, Build after) {
        Board board = after.platform().board();
        Request asked = one.request().withPlatforms(Set.of(before.platform().sku()));
        int most = 0;
        for (int[] order : orders(board.channels())) {
            TreeMap<Slot, MemoryModule> modules = new TreeMap<>();
            after.modules().forEach((slot, module) -> modules.put(board.slot(slot.socket(), order[slot.channel()], slot.position()), module));
            Build exchanged = new Build(after.platform(), after.processors(), after.cooling(), after.supply(), modules, after.fitout());
            if (Reading.machine(exchanged, asked, one.catalog().throughputFactors()).isEmpty()
                    && (one.request().require().mode() != MemoryMode.MIRRORED || pairsStay(order))) {
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
    private static void checkWhole(UpgradeCase one, Upgrade upgrade, String about) {
        long credit = one.machines() * one.build().partCounts().entrySet().stream().mapToLong(part -> one.credit(part.getKey()) * part.getValue()).sum();
        Limits l = one.request().limit();
        Limits more = l.price().isPresent() ? l.withPrice(OptionalLong.of(l.price().getAsLong() + credit)) : l;
        Optional<Long> price = BruteForce.all(one.that().with(one.request().withLimit(more))).stream().map(Candidate::price).min(Long::compare);
        if (upgrade.proof().wholeDoubts().none()) {
            assertThat(upgrade.whole().map(whole -> whole.spend() + credit)).as(about).isEqualTo(price);
        }
    }
}
