package sledwright.report;

import java.util.ArrayList;
import java.util.List;
import sledwright.generator.Axis;
import sledwright.metrics.Quantity;
import sledwright.report.CompareView.CurveView;
import sledwright.report.CompareView.PointView;

/**
 * The rows of a curve that a page has room for: the first, the last, the marked, and each that is better by a share than the row before.
 *
 * @param share the least of the request's own step and its doubles that leaves few enough; 0 where all rows are there
 * @param left  how many points are left out
 */
record Shortened(List<PointView> points, double share, int left) {

    private static final int MOST = 12;
    private static final double LEAST_SHARE = 0.01;

    static Shortened of(CurveView curve, double step) {
        List<PointView> all = curve.points();
        if (all.size() <= MOST) {
            return new Shortened(all, 0, 0);
        }
        double share = Math.max(LEAST_SHARE, step);
        List<PointView> rows = rows(curve, share);
        while (rows.size() > MOST) {
            double next = share * 2;
            List<PointView> fewer = rows(curve, next);
            if (fewer.size() == rows.size() && next > 1) {
                break;
            }
            share = next;
            rows = fewer;
        }
        return new Shortened(rows, share, all.size() - rows.size());
    }

    private static List<PointView> rows(CurveView curve, double share) {
        List<PointView> all = curve.points();
        List<PointView> rows = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            PointView point = all.get(i);
            if (i == 0 || i == all.size() - 1 || point.knee() || point.bestPerUnit()
                    || isBetter(curve.axis(), point.figure(), rows.get(rows.size() - 1).figure(), share)) {
                rows.add(point);
            }
        }
        return rows;
    }

    private static boolean isBetter(Axis axis, double figure, double before, double share) {
        return axis.lessIsBetter() ? figure <= Quantity.lessThan(before, share) : figure >= Quantity.betterThan(before, share);
    }
}
