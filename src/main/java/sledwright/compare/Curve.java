package sledwright.compare;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import sledwright.generator.Doubts;
import sledwright.generator.Status;
import sledwright.metrics.Quantity;

/**
 * One figure over one cost: the builds than which none costs no more and gives more of the figure, nor costs less and gives as much.
 *
 * @param machines how many machines a cost is for
 * @param points   the cheapest first
 * @param proved   how many of the first points are proved
 * @param doubts   why not every point is, or one is missing
 * @param bound    where not proved: what a build costs at least that gives more than the last proved point, minor units; empty where that
 *                 is not known
 */
public record Curve(CurveAxes axes, int machines, List<Point> points, int proved, Doubts doubts, OptionalDouble bound) {

    public Curve {
        points = List.copyOf(points);
    }

    /** Proved where every point is proved and none is missing. */
    public Status status() {
        return !doubts.none() ? Status.BEST_FOUND : points.isEmpty() ? Status.IMPOSSIBLE : Status.PROVED;
    }

    /** What a point costs, minor units. */
    public long cost(int point) {
        return points.get(point).cost(axes.cost());
    }

    /** What a point costs more than one before it, minor units. */
    public long extraCost(int before, int point) {
        return cost(point) - cost(before);
    }

    /** How much more of the figure a point gives than one before it; of the load how much less. */
    public double extraFigure(int before, int point) {
        double more = points.get(point).figure() - points.get(before).figure();
        return Quantity.rounded(axes.figure().lessIsBetter() ? -more : more);
    }

    /** What each further unit of the figure costs on the way from a point before, minor units for one machine. */
    public double costPerExtra(int before, int point) {
        return extraCost(before, point) / (extraFigure(before, point) * machines);
    }

    /**
     * What each unit of the figure costs, minor units for one machine. Of the load, each watt saved against the first point, at what the
     * saving costs; empty for that point.
     */
    public OptionalDouble costPerUnit(int point) {
        if (axes.figure().lessIsBetter()) {
            return point == 0 ? OptionalDouble.empty() : OptionalDouble.of(costPerExtra(0, point));
        }
        double figure = points.get(point).figure();
        return figure > 0 ? OptionalDouble.of(cost(point) / (figure * machines)) : OptionalDouble.empty();
    }

    /** The point whose unit costs least; of equals the cheaper. Empty where no point has such a cost. */
    public OptionalInt bestPerUnit() {
        return best(IntStream.range(0, points.size()).mapToDouble(i -> -costPerUnit(i).orElse(Double.POSITIVE_INFINITY)).toArray(),
                Double.NEGATIVE_INFINITY);
    }

    /**
     * The point at which the curve bends most: with cost and figure each scaled from 0 at the first point to 1 at the last, the one that
     * lies furthest beyond the straight line between these two, on the side of more for less. Empty where none lies on that side.
     */
    public OptionalInt knee() {
        if (points.size() < 3) {
            return OptionalInt.empty();
        }
        int last = points.size() - 1;
        double cost = extraCost(0, last);
        double figure = extraFigure(0, last);
        return best(IntStream.rangeClosed(0, last).mapToDouble(i -> extraFigure(0, i) / figure - extraCost(0, i) / cost).toArray(), 1e-9);
    }

    private static OptionalInt best(double[] values, double above) {
        int best = -1;
        for (int i = 0; i < values.length; i++) {
            if (values[i] > (best < 0 ? above : values[best])) {
                best = i;
            }
        }
        return best < 0 ? OptionalInt.empty() : OptionalInt.of(best);
    }

    /** Whether another curve has a build that costs no more and gives more than a point, or costs less and gives as much. */
    boolean isBeaten(Point point, Curve other) {
        return other.points.stream().anyMatch(rival -> {
            double ahead = axes.figure().lessIsBetter() ? point.figure() - rival.figure() : rival.figure() - point.figure();
            long dearer = rival.cost(axes.cost()) - point.cost(axes.cost());
            return ahead >= 0 && dearer <= 0 && (ahead > 0 || dearer < 0);
        });
    }
}
