package sledwright.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import sledwright.domain.Energy;
import sledwright.domain.Request;
import sledwright.generator.Axis;
import sledwright.generator.Doubts;

/** What is read off a curve, with figures that can be checked by hand. */
class CurveTest {

    /** Points as cost, figure, cost, figure ... */
    private static Curve curve(Axis axis, int machines, double... points) {
        List<Point> all = new ArrayList<>();
        for (int i = 0; i < points.length; i += 2) {
            all.add(new Point(null, points[i + 1], (long) points[i], 0));
        }
        return new Curve(new CurveAxes(axis, Cost.PRICE, Optional.empty()), machines, all, all.size(), Doubts.NONE, OptionalDouble.empty());
    }

    private static final Curve RISING = curve(Axis.CORES, 1, 1000, 10, 1200, 20, 1500, 24, 3000, 30);

    @Test
    void stepsAndUnits() {
        assertThat(RISING.extraCost(1, 2)).isEqualTo(300);
        assertThat(RISING.extraFigure(1, 2)).isEqualTo(4);
        assertThat(RISING.costPerExtra(1, 2)).isEqualTo(75);
        assertThat(RISING.costPerUnit(0)).hasValue(100);
        assertThat(RISING.costPerUnit(1)).hasValue(60);
        assertThat(RISING.bestPerUnit()).hasValue(1);
    }

    /** Costs are of all machines, figures of one. */
    @Test
    void unitsOfSeveralMachines() {
        Curve two = curve(Axis.CORES, 2, 1000, 10, 1200, 20);
        assertThat(two.costPerUnit(0)).hasValue(50);
        assertThat(two.costPerExtra(0, 1)).isEqualTo(10);
    }

    /** Scaled: (0, 0), (0.1, 0.5), (0.25, 0.7), (1, 1): the second lies 0.4 beyond the line, the third 0.45. */
    @Test
    void kneeLiesFurthestBeyondTheLine() {
        assertThat(RISING.knee()).hasValue(2);
    }

    @Test
    void noKnee() {
        assertThat(curve(Axis.CORES, 1, 1000, 10, 2000, 20).knee()).as("two points").isEmpty();
        assertThat(curve(Axis.CORES, 1, 1000, 10, 2000, 20, 3000, 30).knee()).as("a straight line").isEmpty();
        assertThat(curve(Axis.CORES, 1, 1000, 10, 2900, 20, 3000, 30).knee()).as("bends the other way").isEmpty();
        assertThat(curve(Axis.CORES, 1).knee()).isEmpty();
        assertThat(curve(Axis.CORES, 1).bestPerUnit()).isEmpty();
    }

    /** Less is better: 1000 saves nothing, 1100 saves 20 W at 5 each, 1500 saves 50 W at 10 each. */
    @Test
    void ofTheLoadAUnitIsAWattSaved() {
        Curve falling = curve(Axis.LOAD, 1, 1000, 300, 1100, 280, 1500, 250);
        assertThat(falling.costPerUnit(0)).isEmpty();
        assertThat(falling.costPerUnit(1)).hasValue(5);
        assertThat(falling.costPerUnit(2)).hasValue(10);
        assertThat(falling.bestPerUnit()).hasValue(1);
        assertThat(falling.extraFigure(1, 2)).isEqualTo(30);
        assertThat(falling.knee()).as("scaled (0.2, 0.4)").hasValue(1);
    }

    @Test
    void ofEqualsTheCheaper() {
        assertThat(curve(Axis.CORES, 1, 1000, 10, 2000, 20, 3500, 30).bestPerUnit()).hasValue(0);
    }

    @Test
    void figureOfNothingHasNoPriceOfAUnit() {
        assertThat(curve(Axis.THROUGHPUT, 1, 1000, 0, 2000, 20).costPerUnit(0)).isEmpty();
        assertThat(curve(Axis.THROUGHPUT, 1, 1000, 0, 2000, 20).bestPerUnit()).isEqualTo(OptionalInt.of(1));
    }

    @Test
    void aheadIsWhatNoOtherCurveBeats() {
        Curve one = curve(Axis.CORES, 1, 1000, 10, 2000, 20, 3000, 25);
        Curve other = curve(Axis.CORES, 1, 900, 8, 1900, 20, 3000, 25);
        Comparison comparison = new Comparison(Request.named("a"), Optional.<Energy>empty(), true, List.of(one, other), Optional.empty());
        assertThat(one.points().stream().map(point -> comparison.isForemost(one, point))).containsExactly(true, false, true);
        assertThat(other.points().stream().map(point -> comparison.isForemost(other, point))).containsExactly(true, true, true);
    }
}
