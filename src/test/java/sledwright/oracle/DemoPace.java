package sledwright.oracle;

import com.google.ortools.Loader;
import com.google.ortools.sat.SatParameters;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.LongFunction;
import java.util.stream.DoubleStream;
import sledwright.domain.Catalog;
import sledwright.domain.Expansion;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Shortlist;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;

/**
 * How long the outside solver and the search take to the proof of the cheapest machine on a whole catalogue without its sleds and what
 * platforms need beside their parts, by the processor's time. The solver's settings are tried on the first requests; those that took least,
 * and its own settings, are given all of them.
 */
public final class DemoPace {

    /** Requests that every setting is tried on. */
    private static final int TRIED_ON = 2;

    /** Settings that are kept after that, beside the solver's own. */
    private static final int KEPT = 1;

    /** Runs of a search, of which the middle one counts. */
    private static final int RUNS = 9;

    private record Setting(String name, Consumer<SatParameters.Builder> set) {
    }

    private static final List<Setting> SETTINGS = List.of(
            new Setting("its own", parameters -> { }),
            new Setting("linearization 0", parameters -> parameters.setLinearizationLevel(0)),
            new Setting("linearization 2", parameters -> parameters.setLinearizationLevel(2)),
            new Setting("no symmetry", parameters -> parameters.setSymmetryLevel(0)),
            new Setting("symmetry 2", parameters -> parameters.setSymmetryLevel(2)),
            new Setting("no probing", parameters -> parameters.setCpModelProbingLevel(0)),
            new Setting("by cores", parameters -> parameters.setOptimizeWithCore(true)),
            new Setting("pseudo costs", parameters -> parameters.setSearchBranching(SatParameters.SearchBranching.PSEUDO_COST_SEARCH)),
            new Setting("by the linear program", parameters -> parameters.setSearchBranching(SatParameters.SearchBranching.LP_SEARCH)));

    /** @param ms until the proof or, undecided, until the time was over */
    private record Run(double ms, boolean decided) {
    }

    private final PrintStream out;
    private final Catalog catalog;
    private final int seconds;
    private final Search warm;

    private DemoPace(PrintStream out, Catalog catalog, int seconds) {
        this.out = out;
        this.catalog = catalog;
        this.seconds = seconds;
        warm = new Search(catalog);
    }

    /**
     * Prints a row for each request.
     *
     * @param requests by seed; those for one machine that can be met are taken
     * @param seconds  that the solver has for each, very roughly: it counts them in units of its own
     */
    public static void print(PrintStream out, Catalog catalog, LongFunction<Request> requests, int count, int seconds) {
        Loader.loadNativeLibraries();
        // The solver's model of a machine knows neither enclosures nor what has to be bought with a platform.
        RandomCase all = new RandomCase(0, catalog, Request.named("all"));
        Catalog bare = all.with(catalog.platforms().stream().filter(platform -> !catalog.isSled(platform)).map(DemoPace::bare).toList(),
                catalog.processors(), catalog.modules(), all.lots()).catalog();
        new DemoPace(out, bare, seconds).print(requests, count);
    }

    private static Platform bare(Platform from) {
        return new Platform(from.sku(), from.name(), from.processors(), from.memory(), from.board(), from.coolingAndPower(),
                Expansion.NONE);
    }

    private void print(LongFunction<Request> requests, int count) {
        List<RandomCase> cases = new ArrayList<>();
        for (long seed = 0; cases.size() < count; seed++) {
            Request request = requests.apply(seed).withAlternatives(1, Shortlist.PLAIN.step());
            if (request.machines() == 1 && !warm.run(request, Deadline.never()).ranked().isEmpty()) {
                cases.add(new RandomCase(seed, catalog, request));
            }
        }
        List<Setting> settings = new ArrayList<>(SETTINGS);
        List<double[]> took = new ArrayList<>();
        SETTINGS.forEach(setting -> took.add(new double[1]));
        List<Double> ratios = new ArrayList<>();
        for (int i = 0; i < cases.size(); i++) {
            ratios.add(row(cases.get(i), settings, took));
            if (i + 1 == TRIED_ON) {
                List<Setting> best = SETTINGS.subList(1, SETTINGS.size()).stream()
                        .sorted(Comparator.comparingDouble(setting -> took.get(SETTINGS.indexOf(setting))[0])).limit(KEPT).toList();
                settings.retainAll(best);
                settings.add(0, SETTINGS.get(0));
            }
        }
        out.printf(Locale.ROOT, "the solver's least / warm search, pair by pair: median %.0f, least %.0f, most %.0f%n",
                ratios.stream().sorted().skip(ratios.size() / 2).findFirst().orElse(Double.NaN),
                ratios.stream().mapToDouble(Double::doubleValue).min().orElse(Double.NaN),
                ratios.stream().mapToDouble(Double::doubleValue).max().orElse(Double.NaN));
    }

    private double row(RandomCase that, List<Setting> settings, List<double[]> took) {
        long best = price(warm, that);
        double kept = searching(() -> price(warm, that));
        double cold = searching(() -> price(new Search(catalog), that));
        out.printf(Locale.ROOT, "request %d: search warm %.2f ms, a new one %.1f ms; solver", that.seed(), kept, cold);
        double least = Double.POSITIVE_INFINITY;
        for (Setting setting : settings) {
            Run run = solve(that, setting, best);
            took.get(SETTINGS.indexOf(setting))[0] += run.ms;
            least = Math.min(least, run.ms);
            out.printf(Locale.ROOT, ", %s %s%.0f ms", setting.name, run.decided ? "" : "more than ", run.ms);
        }
        out.printf(Locale.ROOT, "; %.0f times%n", least / kept);
        return least / kept;
    }

    private static long price(Search search, RandomCase that) {
        Findings found = search.run(that.request(), Deadline.never());
        return Math.round(found.best());
    }

    private Run solve(RandomCase that, Setting setting, long best) {
        long start = processNanos();
        boolean[] decided = {true};
        double ms = millis(() -> {
            try {
                Optional<CpSatOracle.Best> found = CpSatOracle.better(that, null, parameters -> setting.set.accept(
                        parameters.setNumWorkers(1).setRandomSeed(1)
                                .setMaxDeterministicTime(Math.max(0.01, seconds - (processNanos() - start) / 1e9))));
                long price = found.map(CpSatOracle.Best::price).orElse(Long.MAX_VALUE);
                if (price < best) {
                    throw new IllegalStateException("request %d: the search finds %d, the solver %d".formatted(that.seed(), best, price));
                }
                // Where it has the right answer by then, its time is taken to have sufficed for the proof too.
                decided[0] = price == best;
            } catch (CpSatOracle.UndecidedException late) {
                decided[0] = false;
            }
        });
        return new Run(ms, decided[0]);
    }

    /** Of the thread, the middle of a few runs. */
    private static double searching(Runnable work) {
        return DoubleStream.generate(() -> {
            long start = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            work.run();
            return (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - start) / 1e6;
        }).limit(RUNS).sorted().skip(RUNS / 2).findFirst().orElseThrow();
    }

    /** Of the whole process, since the solver has threads of its own. */
    private static double millis(Runnable work) {
        long start = processNanos();
        work.run();
        return (processNanos() - start) / 1e6;
    }

    private static long processNanos() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime();
    }
}
