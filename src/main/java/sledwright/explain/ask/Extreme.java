package sledwright.explain.ask;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.Function;

/** Finds how far a figure goes by asking for more and more of it. */
public final class Extreme {

    private Extreme() {
    }

    /**
     * The greatest figure that is possible.
     *
     * @param reached is possible
     * @param asked   is not possible
     * @param step    figures differ by this at least; only {@code reached} and multiples of it above are asked for
     * @param atLeast the figure of something that has at least so much; empty where nothing has
     */
    public static double greatest(double reached, double asked, double step, DoubleFunction<OptionalDouble> atLeast) {
        double had = reached;
        double notHad = asked;
        boolean nextUp = true;
        while (had + step < notHad) {
            // Figures come in few values: what was just reached is often the last of them.
            double probe = had + step * (nextUp ? 1 : Math.max(1, Math.floor((notHad - had) / step / 2)));
            OptionalDouble found = atLeast.apply(probe);
            if (found.isPresent()) {
                had = Math.max(probe, found.getAsDouble());
                nextUp = !nextUp;
            } else if (probe <= had + step) {
                break;
            } else {
                notHad = probe;
                nextUp = true;
            }
        }
        return had;
    }

    /** The first of some values that is possible, where all behind it are, too; the last where none before it is. */
    public static <T, R> Optional<R> first(List<T> values, Function<T, Optional<R>> had) {
        int from = 0;
        int to = values.size() - 1;
        Optional<R> best = Optional.empty();
        while (from <= to) {
            int middle = (from + to) / 2;
            Optional<R> found = had.apply(values.get(middle));
            if (found.isPresent()) {
                best = found;
                to = middle - 1;
            } else {
                from = middle + 1;
            }
        }
        return best;
    }
}
