package sledwright.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import sledwright.compare.PricePoints.Mark;
import sledwright.compare.PricePoints.Marked;
import sledwright.generator.Axis;
import sledwright.generator.Doubts;

/** Which points of a curve are offered. */
class PricePointsTest {

    /** Points as cost, figure, cost, figure ... */
    private static Curve curve(double... points) {
        List<Point> all = new ArrayList<>();
        for (int i = 0; i < points.length; i += 2) {
            all.add(new Point(null, points[i + 1], (long) points[i], 0));
        }
        return new Curve(new CurveAxes(Axis.CORES, Cost.PRICE, Optional.empty()), 1, all, all.size(), Doubts.NONE, OptionalDouble.empty());
    }

    /** 100, 60, 62.5 and 100 a core; the third lies furthest beyond the line from first to last. */
    private static final Curve APART = curve(1000, 10, 1200, 20, 1500, 24, 3000, 30);

    @Test
    void eachMarkHasAPointOfItsOwn() {
        // Scaled: (0, 0), (0.1, 0.5), (0.25, 0.7), (1, 1): 0.4 and 0.45 beyond the line.
        assertThat(PricePoints.of(APART, 3)).containsExactly(new Marked(0, Mark.CHEAPEST), new Marked(1, Mark.UNIT), new Marked(2, Mark.KNEE));
        assertThat(PricePoints.of(APART, 2)).containsExactly(new Marked(0, Mark.CHEAPEST), new Marked(1, Mark.UNIT));
        assertThat(PricePoints.of(APART, 1)).containsExactly(new Marked(0, Mark.CHEAPEST));
    }

    @Test
    void aPointThatIsTakenGivesWayToTheNextDearer() {
        // The cheapest has the best price of a unit, too; no point lies beyond the line, so the knee is missing.
        Curve falling = curve(1000, 20, 2000, 21, 3000, 23, 4000, 26);
        assertThat(PricePoints.of(falling, 3)).containsExactly(new Marked(0, Mark.CHEAPEST), new Marked(1, Mark.NEXT), new Marked(2, Mark.NEXT));
    }

    @Test
    void whereNoneIsDearerTheNearestCheaperStandsIn() {
        // 100, 90 and 50 a core: the last has the best price of a unit, and there is no knee.
        Curve rising = curve(1000, 10, 1800, 20, 2000, 40);
        assertThat(PricePoints.of(rising, 3)).containsExactly(new Marked(0, Mark.CHEAPEST), new Marked(1, Mark.NEXT), new Marked(2, Mark.UNIT));
    }

    @Test
    void aShortCurveGivesAllItHas() {
        assertThat(PricePoints.of(curve(1000, 10), 3)).containsExactly(new Marked(0, Mark.CHEAPEST));
        assertThat(PricePoints.of(curve(1000, 10, 1500, 30), 3)).containsExactly(new Marked(0, Mark.CHEAPEST), new Marked(1, Mark.UNIT));
    }
}
