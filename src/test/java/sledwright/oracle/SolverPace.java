package sledwright.oracle;

import com.google.ortools.Loader;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import sledwright.domain.Objective;
import sledwright.domain.Request;
import sledwright.domain.Shortlist;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;

/** How long the outside solver and the search take to the proof of the cheapest build, on the same random cases. */
public final class SolverPace {

    private SolverPace() {
    }

    /** Prints medians and the ratio, pair by pair; cases that the solver cannot decide in its time are counted apart. */
    public static void print(PrintStream out, int count) {
        Loader.loadNativeLibraries();
        List<Double> searches = new ArrayList<>();
        List<Double> solvers = new ArrayList<>();
        List<Double> ratios = new ArrayList<>();
        int undecided = 0;
        for (long seed = 0; seed < count; seed++) {
            RandomCase drawn = RandomCase.of(seed, RandomCase.Size.SOLVABLE);
            Request request = drawn.request().withObjective(Objective.CHEAPEST).withAlternatives(1, Shortlist.PLAIN.step());
            RandomCase that = drawn.with(request);
            new Search(that.catalog()).run(request, Deadline.never());
            long start = System.nanoTime();
            new Search(that.catalog()).run(request, Deadline.never());
            double search = (System.nanoTime() - start) / 1e6;
            start = System.nanoTime();
            try {
                CpSatOracle.better(that, null);
                double solver = (System.nanoTime() - start) / 1e6;
                searches.add(search);
                solvers.add(solver);
                ratios.add(solver / search);
            } catch (CpSatOracle.UndecidedException tooHard) {
                undecided++;
            }
        }
        out.printf(Locale.ROOT, "%d cases, %d undecided by the solver in its time%n", count, undecided);
        out.printf(Locale.ROOT, "medians: search %.2f ms, solver %.1f ms; solver / search, pair by pair: %.0f%n",
                median(searches), median(solvers), median(ratios));
    }

    private static double median(List<Double> values) {
        return values.stream().sorted().skip(values.size() / 2).findFirst().orElse(Double.NaN);
    }
}
