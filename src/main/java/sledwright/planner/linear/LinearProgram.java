package sledwright.planner.linear;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.linear.LinearSolver;
import org.ojalgo.structure.Mutate1D;
import sledwright.generator.time.Deadline;

/**
 * A linear program: what costs least within some rows. It goes to the library as rows of numbers, since a model of named expressions turns
 * each number into a decimal and back, and simplifies rows away whose dual values are wanted.
 */
public final class LinearProgram {

    private final List<Variable> variables = new ArrayList<>();
    private final List<Row> inequalities = new ArrayList<>();
    private final List<Row> equalities = new ArrayList<>();

    /** Something whose amount is sought. */
    public static final class Variable {
        private final int index;
        private final double most;
        private final double cost;
        private double least;

        private Variable(int index, double most, double cost) {
            this.index = index;
            this.most = most;
            this.cost = cost;
        }

        /** Holds it to at least so much. */
        public Variable from(double least) {
            this.least = least;
            return this;
        }
    }

    /** A sum of variables that is held to a limit. */
    public static final class Row {
        private final int number;
        private final double limit;
        /** -1 for what is at least its limit: the library knows only what is at most that. */
        private final int sign;
        private final boolean exact;
        private int[] variables = new int[4];
        private double[] factors = new double[4];
        private int size;

        private Row(int number, double limit, int sign, boolean exact) {
            this.number = number;
            this.limit = limit;
            this.sign = sign;
            this.exact = exact;
        }

        /** Counts each unit of a variable so many times. Each variable once. */
        public Row add(Variable variable, double factor) {
            if (size == variables.length) {
                variables = Arrays.copyOf(variables, 2 * size);
                factors = Arrays.copyOf(factors, 2 * size);
            }
            variables[size] = variable.index;
            factors[size++] = factor;
            return this;
        }

        private void write(Mutate1D row) {
            for (int i = 0; i < size; i++) {
                row.set(variables[i], sign * factors[i]);
            }
        }
    }

    /** What is best. */
    public final class Answer {
        private final Optimisation.Result result;
        private final LinearSolver solver;

        private Answer(Optimisation.Result result, LinearSolver solver) {
            this.result = result;
            this.solver = solver;
        }

        public double cost() {
            return result.getValue();
        }

        public double of(Variable variable) {
            return result.doubleValue(variable.index);
        }

        /** What one more unit of a row's limit adds to the cost: 0 or more for at least, 0 or less for at most. */
        public double dual(Row row) {
            return -row.sign * solver.getDualMultiplier(row.number + (row.exact ? inequalities.size() : 0));
        }
    }

    /** A variable of 0 or more, at any amount. */
    public Variable variable(double cost) {
        return variable(Double.POSITIVE_INFINITY, cost);
    }

    /** A variable of 0 or more, up to an amount. */
    public Variable variable(double most, double cost) {
        variables.add(new Variable(variables.size(), most, cost));
        return variables.get(variables.size() - 1);
    }

    public Row atMost(double limit) {
        return row(inequalities, limit, 1, false);
    }

    public Row atLeast(double limit) {
        return row(inequalities, limit, -1, false);
    }

    public Row exactly(double limit) {
        return row(equalities, limit, 1, true);
    }

    private static Row row(List<Row> rows, double limit, int sign, boolean exact) {
        rows.add(new Row(rows.size(), limit, sign, exact));
        return rows.get(rows.size() - 1);
    }

    /** The best of all; empty where the program is not solved before the deadline, or has no answer. */
    public Optional<Answer> solve(Deadline deadline) {
        if (deadline.isOver()) {
            return Optional.empty();
        }
        LinearSolver.Builder builder = LinearSolver.newBuilder(variables.stream().mapToDouble(variable -> variable.cost).toArray())
                .lower(variables.stream().mapToDouble(variable -> variable.least).toArray())
                .upper(variables.stream().mapToDouble(variable -> variable.most).toArray());
        inequalities.forEach(row -> row.write(builder.inequality(row.sign * row.limit)));
        equalities.forEach(row -> row.write(builder.equality(row.limit)));
        Optimisation.Options options = new Optimisation.Options();
        options.time_abort = Math.max(1, deadline.leftMillis());
        options.time_suffice = options.time_abort;
        LinearSolver solver = builder.build(options);
        Optimisation.Result result = solver.solve();
        return result.getState().isOptimal() ? Optional.of(new Answer(result, solver)) : Optional.empty();
    }
}
