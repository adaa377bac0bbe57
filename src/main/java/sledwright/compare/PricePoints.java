package sledwright.compare;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.IntStream;

/** Few points of a curve that stand for all: the cheapest, the best price of a unit, the knee. */
public final class PricePoints {

    /** More are not chosen. */
    public static final int MOST = 3;

    /** What a point is chosen for. */
    public enum Mark {
        CHEAPEST,
        /** The best price of a unit. */
        UNIT,
        KNEE,
        /** Nothing of its own: it stands in where a mark is missing, or on a point that has one. */
        NEXT;

        /** The word of JSON. */
        public String label() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * @param point its place on the curve, from 0
     */
    public record Marked(int point, Mark mark) {
    }

    private PricePoints() {
    }

    /**
     * The marks of a curve, settled in their order and listed by price. In the place of a mark that is missing or stands on a point that is
     * taken comes the next dearer point that is not, where there is none the nearest cheaper one; a curve of fewer points gives all.
     */
    public static List<Marked> of(Curve curve, int wanted) {
        Map<Integer, Mark> taken = new TreeMap<>();
        Map<Mark, OptionalInt> places = Map.of(Mark.CHEAPEST, OptionalInt.of(0), Mark.UNIT, curve.bestPerUnit(), Mark.KNEE, curve.knee());
        int last = 0;
        for (Mark mark : List.of(Mark.CHEAPEST, Mark.UNIT, Mark.KNEE).subList(0, Math.min(wanted, MOST))) {
            if (taken.size() == curve.points().size()) {
                break;
            }
            int place = places.get(mark).orElse(last);
            boolean own = places.get(mark).isPresent() && !taken.containsKey(place);
            last = own ? place : free(place, taken, curve.points().size());
            taken.put(last, own ? mark : Mark.NEXT);
        }
        return taken.entrySet().stream().map(entry -> new Marked(entry.getKey(), entry.getValue())).toList();
    }

    private static int free(int place, Map<Integer, Mark> taken, int points) {
        return IntStream.range(0, points).filter(point -> !taken.containsKey(point)).boxed()
                .min(Comparator.<Integer, Boolean>comparing(point -> point < place).thenComparing(point -> Math.abs(point - place)))
                .orElseThrow();
    }
}
