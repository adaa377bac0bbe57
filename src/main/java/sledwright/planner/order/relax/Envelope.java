package sledwright.planner.order.relax;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sledwright.planner.order.market.OfferedLot;
import sledwright.planner.order.market.Range;

/**
 * What a lot's units cost at least where they may be taken in fractions: the lower convex envelope of its price list over the numbers of
 * units that it may give. Pieces get dearer, so a linear program takes them in turn of itself.
 *
 * @param least units that it gives in any case; the first piece, where not 0
 */
record Envelope(int least, List<Piece> pieces) {

    /** Fractions of a scaled minor unit that do not count. */
    private static final double NOTHING = 1e-3;

    /**
     * Units at one price.
     *
     * @param price of one, scaled
     */
    record Piece(int units, double price) {
    }

    /** A number of units and the price of all of them, scaled. */
    private record Point(int units, long price) {
    }

    /** The envelope over a range; null where the lot gives no such number of units. */
    static Envelope of(OfferedLot source, Range range) {
        List<Point> points = new ArrayList<>();
        if (range.least() <= 0) {
            points.add(new Point(0, 0));
        }
        for (OfferedLot.Step step : source.steps()) {
            int from = Math.max(step.least(), range.least());
            int to = Math.min(step.most(), range.most());
            if (from <= to) {
                points.add(new Point(from, from * step.price()));
                points.add(new Point(to, to * step.price()));
            }
        }
        if (points.isEmpty()) {
            return null;
        }
        points.sort(Comparator.comparingInt(Point::units));
        List<Piece> pieces = new ArrayList<>();
        Point at = points.get(0);
        int least = at.units;
        if (least > 0) {
            pieces.add(new Piece(least, at.price / (double) least));
        }
        for (Point next = following(points, at); next != null; next = following(points, at)) {
            pieces.add(new Piece(next.units - at.units, slope(at, next)));
            at = next;
        }
        return new Envelope(least, pieces);
    }

    /** The next corner: the point that rises least, of equals the farthest. */
    private static Point following(List<Point> points, Point at) {
        return points.stream().filter(point -> point.units > at.units)
                .min(Comparator.comparingDouble((Point point) -> slope(at, point))
                .thenComparing(Comparator.comparingInt(Point::units).reversed())).orElse(null);
    }

    private static double slope(Point from, Point to) {
        return (to.price - from.price) / (double) (to.units - from.units);
    }

    /**
     * The number of units at which the price list leaves the envelope for a number of units: with that many or more, or with fewer, the
     * envelope is another. 0 where units cost what the envelope says.
     */
    int parting(OfferedLot source, double units) {
        double price = 0;
        double left = units;
        int corner = 0;
        for (Piece piece : pieces) {
            if (left <= 0) {
                break;
            }
            price += Math.min(left, piece.units) * piece.price;
            left -= piece.units;
            corner += piece.units;
        }
        int right = corner;
        double asked = price;
        boolean kept = source.steps().stream()
                .anyMatch(step -> step.least() <= units + 1e-6 && units <= step.most() + 1e-6
                && Math.abs(step.price() * units - asked) <= NOTHING * Math.max(1, units));
        return kept ? 0 : source.steps().stream().filter(step -> step.least() <= right && right <= step.most())
                .mapToInt(OfferedLot.Step::least).findFirst().orElse(0);
    }
}
