package sledwright.restock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.ortools.Loader;
import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPVariable;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import sledwright.restock.PackingProgram.Column;

class PackingProgramTest {

    private static final int MOST_CHANGES = 10_000;

    /** Many limits are 0 and many columns alike, which is where a simplex method goes round in circles. */
    @Test
    void pricesAreThoseOfAnotherSolver() {
        Loader.loadNativeLibraries();
        for (long seed = 0; seed < 300; seed++) {
            Random random = new Random(seed);
            double[] limits = random.ints(2 + random.nextInt(30), 0, 12).mapToDouble(limit -> Math.max(0, limit - 4)).toArray();
            Column[] columns = new Column[1 + random.nextInt(60)];
            Arrays.setAll(columns, c -> column(random, limits.length));
            double[] prices = new PackingProgram(limits).prices(worth -> best(columns, worth), MOST_CHANGES);
            double least = 0;
            for (int i = 0; i < limits.length; i++) {
                assertThat(prices[i]).isNotNegative();
                least += prices[i] * limits[i];
            }
            assertThat(best(columns, prices)).as("seed %s", seed).isNull();
            assertThat(least).as("seed %s", seed).isCloseTo(most(limits, columns), within(1e-2 + 1e-6 * least));
        }
    }

    /** The first row takes a unit of all, so that nothing is without limit, although a column may give back units of another. */
    private static Column column(Random random, int rows) {
        int[] drawn = random.ints(1 + random.nextInt(8), 1, rows).distinct().toArray();
        int[] all = new int[drawn.length + 1];
        System.arraycopy(drawn, 0, all, 1, drawn.length);
        double[] units = new double[all.length];
        Arrays.setAll(units, i -> i == 0 ? 1 : random.nextInt(10) == 0 ? -1 : 1 + random.nextInt(4));
        return new Column(100 * random.nextInt(100), all, units);
    }

    private static Column best(Column[] columns, double[] prices) {
        Column best = null;
        for (Column column : columns) {
            if (column.beyond(prices) > (best == null ? PackingProgram.NOTHING : best.beyond(prices))) {
                best = column;
            }
        }
        return best;
    }

    private static double most(double[] limits, Column[] columns) {
        MPSolver solver = MPSolver.createSolver("GLOP");
        MPObjective aim = solver.objective();
        aim.setMaximization();
        MPConstraint[] rows = Arrays.stream(limits).mapToObj(limit -> solver.makeConstraint(Double.NEGATIVE_INFINITY, limit)).toArray(MPConstraint[]::new);
        for (Column column : columns) {
            MPVariable taken = solver.makeNumVar(0, Double.POSITIVE_INFINITY, "");
            aim.setCoefficient(taken, column.gain());
            for (int i = 0; i < column.rows().length; i++) {
                rows[column.rows()[i]].setCoefficient(taken, column.units()[i]);
            }
        }
        assertThat(solver.solve()).isEqualTo(MPSolver.ResultStatus.OPTIMAL);
        return aim.value();
    }
}
