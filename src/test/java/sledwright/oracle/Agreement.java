package sledwright.oracle;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.MemoryModule;
import sledwright.domain.Objective;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.generator.Existence;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.rules.Machine;
import sledwright.rules.Order;
import sledwright.rules.Rulebook;

/** Holds what the search finds against what a judge says; every answer is words, empty where they agree. */
final class Agreement {

    private Agreement() {
    }

    /** What the search answers on a case. */
    static Findings search(RandomCase that) {
        return search(that, Deadline.never());
    }

    static Findings search(RandomCase that, Deadline deadline) {
        return new Search(that.catalog()).run(that.request(), deadline);
    }

    /** What stands between the search and the list of every build. */
    static String withEveryBuild(RandomCase that) {
        return withEveryBuild(that, everyBuild(that), Deadline.never(), isTangled(that));
    }

    /**
     * The same, and what stands between the list and a search that is cut off at once: that may leave anything open, but what it says must hold,
     * and its bound too.
     */
    static String withEveryBuildInTimeAndCutOff(RandomCase that) {
        List<Candidate> expected = everyBuild(that);
        String cutOff = withEveryBuild(that, expected, Deadline.in(Duration.ZERO), true);
        return withEveryBuild(that, expected, Deadline.never(), isTangled(that)) + (cutOff.isEmpty() ? "" : "cut off: " + cutOff);
    }

    private static List<Candidate> everyBuild(RandomCase that) {
        return Candidate.walk(BruteForce.all(that), that.request());
    }

    private static String withEveryBuild(RandomCase that, List<Candidate> expected, Deadline deadline, boolean mayStayOpen) {
        Findings findings;
        try {
            findings = search(that, deadline);
        } catch (RuntimeException | StackOverflowError defect) {
            return "the search failed with %s at %s".formatted(defect, defect.getStackTrace().length > 0 ? defect.getStackTrace()[0] : "?");
        }
        StringBuilder words = new StringBuilder(soundness(findings, that, mayStayOpen)).append(existence(that, expected, deadline));
        if (!expected.isEmpty()) {
            words.append(bound(findings, expected.get(0).aim(that.request()), that.request()));
        }
        // What is called proved must be right, and all of it where it is called complete; what may stay open, soundness decides.
        List<String> wanted = expected.stream().map(Candidate::figures).toList();
        List<String> given = findings.ranked().stream().map(order -> candidate(order).figures()).toList();
        boolean bestIsRight = findings.status() == Status.BEST_FOUND
                || (expected.isEmpty() ? given.isEmpty() : Math.abs(expected.get(0).aim(that.request()) - findings.best()) <= 1e-5);
        if (!bestIsRight || findings.complete() && !wanted.equals(given)) {
            words.append("every build gives\n");
            expected.forEach(one -> words.append("  ").append(one.figures()).append("  ").append(one.what()).append('\n'));
            words.append("the search gives\n");
            findings.ranked().forEach(order -> words.append("  ").append(candidate(order).figures()).append("  ")
                    .append(order.needed()).append('\n'));
        }
        return words.toString();
    }

    /**
     * Whether alike modules show the controller different ranks while some module is wanted in every machine: then the
     * search may leave its best unproved.
     */
    static boolean isTangled(RandomCase that) {
        Collection<MemoryModule> modules = that.catalog().modules();
        return modules.stream().anyMatch(one -> that.request().use().contains(one.sku())) && modules.stream().anyMatch(one -> modules.stream()
                .anyMatch(other -> SlotView.alike(one, other) && one.logicalRanks() != other.logicalRanks()));
    }

    /** What is wrong with the bound beside the objective's figure of some valid build. */
    static String bound(Findings findings, double aim, Request request) {
        boolean lessIsBetter = Set.of(Objective.CHEAPEST, Objective.BEST_VALUE, Objective.LEAST_TOTAL).contains(request.objective());
        boolean holds = lessIsBetter ? findings.bound() <= aim + 1e-5 : findings.bound() >= aim - 1e-5;
        return holds ? "" : "the bound is %s and a build reaches %s%n".formatted(findings.bound(), aim);
    }

    /** What is wrong with what is said of whether there is any build. */
    private static String existence(RandomCase that, List<Candidate> expected, Deadline deadline) {
        Existence any = new Search(that.catalog()).any(that.request(), deadline);
        boolean right = any.order().map(order -> !expected.isEmpty() && soundness(order, that).isEmpty())
                .orElse(expected.isEmpty() || !any.settled());
        return right ? "" : "whether there is any: %s of %d builds%n".formatted(any.order().isPresent(), expected.size());
    }

    /** What is wrong with an answer in itself: a broken rule, picks that aren't the parts, a price that isn't the picks'. */
    static String soundness(Findings findings, RandomCase that) {
        return soundness(findings, that, isTangled(that));
    }

    private static String soundness(Findings findings, RandomCase that, boolean mayStayOpen) {
        List<String> wrong = new ArrayList<>();
        boolean none = findings.ranked().isEmpty();
        if (!mayStayOpen && (findings.status() == Status.BEST_FOUND || !findings.complete())) {
            wrong.add("%s and complete is %s, with nothing in the way".formatted(findings.status(), findings.complete()));
        }
        if (findings.status() != Status.BEST_FOUND && none != (findings.status() == Status.IMPOSSIBLE)) {
            wrong.add("%s with %d builds".formatted(findings.status(), findings.ranked().size()));
        }
        if (none != Double.isNaN(findings.best()) || Double.isNaN(findings.bound()) != (findings.status() == Status.IMPOSSIBLE)) {
            wrong.add("%s with %d builds, best %s and bound %s".formatted(findings.status(), findings.ranked().size(), findings.best(), findings.bound()));
        }
        if (!none) {
            double aim = candidate(findings.ranked().get(0)).aim(that.request());
            if (Math.abs(findings.best() - aim) > 1e-5 || findings.status() == Status.PROVED && findings.bound() != findings.best()) {
                wrong.add("best %s and bound %s where the first build gives %s".formatted(findings.best(), findings.bound(), aim));
            }
            wrong.add(bound(findings, aim, that.request()));
        }
        findings.ranked().forEach(order -> wrong.addAll(soundness(order, that)));
        wrong.removeIf(String::isEmpty);
        return wrong.isEmpty() ? "" : String.join("\n", wrong) + "\n";
    }

    /** What is wrong with an order in itself. */
    static List<String> soundness(Order order, RandomCase that) {
        List<String> wrong = new ArrayList<>();
        Request request = that.request();
        Catalog catalog = that.catalog();
        Rulebook.judge(order).forEach(violation -> wrong.add(violation.toString()));
        Reading.order(order.machines(), order.picks(), request, order.price().total()).forEach(id -> wrong.add("second reading: " + id));
        for (Build build : order.machines()) {
            Rulebook.judge(Machine.of(build, request, catalog.throughputFactors())).forEach(violation -> wrong.add(violation.toString()));
            Reading.machine(build, request, catalog.throughputFactors()).forEach(id -> wrong.add("second reading: " + id));
        }
        order.housings().forEach(housing -> {
            Rulebook.judge(housing).forEach(violation -> wrong.add(violation.toString()));
            Reading.enclosure(housing.filled(), request.limit(), catalog.throughputFactors()).forEach(id -> wrong.add("second reading: " + id));
        });
        if (order.housings().stream().mapToInt(housing -> housing.filled().sleds().size()).sum() != (order.housed().isPresent() ? request.machines() : 0)) {
            wrong.add("%d machines are not in %s".formatted(request.machines(), order.housings()));
        }
        if (order.machines().size() != request.machines()) {
            wrong.add("%d machines for %d".formatted(order.machines().size(), request.machines()));
        }
        differing(order.machines(), build -> build.platform().sku(), "platforms", wrong);
        differing(order.machines(), build -> build.processors().get(0).sku() + build.processors().size(), "processors", wrong);
        differing(order.machines(), build -> build.cooling().sku(), "kits", wrong);
        differing(order.machines(), build -> build.supply().map(supply -> supply.sku() + supply.count()).orElse(""), "supplies", wrong);
        Build first = order.machines().get(0);
        for (Build build : order.machines()) {
            for (int socket = 0; socket < build.platform().board().sockets(); socket++) {
                if (!SlotView.alike(SlotView.memory(first)[socket], SlotView.memory(build)[socket])) {
                    wrong.add("the memory of two machines is not alike");
                }
            }
        }
        Map<String, Integer> drawn = new TreeMap<>();
        order.picks().forEach(pick -> drawn.merge(pick.sku(), pick.quantity(), Integer::sum));
        if (!drawn.equals(order.needed())) {
            wrong.add("drawn %s, needed %s".formatted(drawn, order.needed()));
        }
        if (order.picks().stream().map(Pick::lot).distinct().count() != order.picks().size()) {
            wrong.add("two picks from one lot");
        }
        long price = 0;
        for (Pick pick : order.picks()) {
            price += ExhaustiveDraw.unitPrice(pick.lot(), pick.quantity()) * pick.quantity();
        }
        for (Build build : order.machines()) {
            price += catalog.labour().perMachine() + catalog.labour().perModule() * build.modules().size()
                    + request.licence().perCore() * build.cores() + request.licence().perProcessor() * build.processors().size()
                    + catalog.labour().perDrive() * build.fitout().drives().size() + catalog.labour().perCard() * build.fitout().cards().size();
        }
        if (price != order.price().total()) {
            wrong.add("price %d, by its picks %d".formatted(order.price().total(), price));
        }
        return wrong;
    }

    private static void differing(List<Build> machines, Function<Build, String> part, String what, List<String> wrong) {
        if (machines.stream().map(part).distinct().count() > 1) {
            wrong.add("the machines differ in their " + what);
        }
    }

    /** An order as the objective sees it: the figures of its slowest and heaviest machine. */
    static Candidate candidate(Order order) {
        Candidate worst = null;
        for (Build build : order.machines()) {
            NaiveFigures figures = NaiveFigures.of(build, order.request(), order.catalog().throughputFactors());
            Candidate one = Candidate.of(order.price().total(), NaiveFigures.energyCost(order.request(), figures.loadW(), build.supply().orElse(null)),
                    figures, "");
            worst = worst == null ? one : new Candidate(one.price(), Math.max(one.energy(), worst.energy()), Math.min(one.throughput(), worst.throughput()), Math.min(one.cores(), worst.cores()),
                    Math.min(one.bandwidth(), worst.bandwidth()), Math.min(one.usable(), worst.usable()), Math.max(one.load(), worst.load()),
                    Math.min(one.work(), worst.work()), "");
        }
        return worst;
    }
}
