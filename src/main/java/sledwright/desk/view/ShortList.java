package sledwright.desk.view;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import sledwright.compare.Curve;
import sledwright.generator.Axis;
import sledwright.metrics.Quantity;

/**
 * Which points of a curve a page has room for: the first, the last, the marked, and each that is better by a share than the one before.
 *
 * @param points their indexes
 * @param share  the least of a request's step and its doubles that leaves few enough; 0 where all points are there
 */
record ShortList(List<Integer> points, double share) {

    private static final int MOST = 12;
    private static final double LEAST_SHARE = 0.01;

    static ShortList of(Curve curve, double step) {
        if (curve.points().size() <= MOST) {
            return new ShortList(IntStream.range(0, curve.points().size()).boxed().toList(), 0);
        }
        double share = Math.max(LEAST_SHARE, step);
        List<Integer> points = points(curve, share);
        while (points.size() > MOST && share < 1) {
            share *= 2;
            points = points(curve, share);
        }
        return new ShortList(points, share);
    }

    private static List<Integer> points(Curve curve, double share) {
        List<Integer> kept = new ArrayList<>();
        for (int i = 0; i < curve.points().size(); i++) {
            boolean marked = curve.knee().equals(OptionalInt.of(i)) || curve.bestPerUnit().equals(OptionalInt.of(i));
            if (i == 0 || i == curve.points().size() - 1 || marked || isBetter(curve, i, kept.get(kept.size() - 1), share)) {
                kept.add(i);
            }
        }
        return kept;
    }

    private static boolean isBetter(Curve curve, int point, int before, double share) {
        Axis axis = curve.axes().figure();
        double figure = curve.points().get(point).figure();
        double other = curve.points().get(before).figure();
        return axis.lessIsBetter() ? figure <= Quantity.lessThan(other, share) : figure >= Quantity.betterThan(other, share);
    }
}
