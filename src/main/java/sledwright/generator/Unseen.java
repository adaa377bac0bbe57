package sledwright.generator;

import java.util.EnumMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The least aims of builds that a query did not look at, by what kept it from them. */
final class Unseen {

    private final Map<Doubts.Cause, Double> aims = new EnumMap<>(Doubts.Cause.class);
    private final Map<String, Double> tooLarge = new TreeMap<>();

    /** No build that was not looked at for that cause has a lesser aim; infinite: none was missed. */
    void note(Doubts.Cause cause, double aim) {
        if (aim < Double.POSITIVE_INFINITY) {
            aims.merge(cause, aim, Math::min);
        }
    }

    /** The same, because a platform takes more populations than are listed. */
    void noteTooLarge(String platform, double aim) {
        note(Doubts.Cause.SIZE, aim);
        tooLarge.merge(platform, aim, Math::min);
    }

    /** No build that was not looked at has a lesser aim; infinite when all were. */
    double openAim() {
        return aims.values().stream().mapToDouble(Double::doubleValue).min().orElse(Double.POSITIVE_INFINITY);
    }

    /** What leaves it open whether a build of that aim comes first; infinite where there is none. */
    Doubts doubts(double best) {
        return new Doubts(within(best, aims).collect(Collectors.toSet()),
                within(best, tooLarge).collect(Collectors.toCollection(TreeSet::new)));
    }

    private static <K> Stream<K> within(double best, Map<K, Double> aims) {
        return aims.entrySet().stream().filter(aim -> aim.getValue() <= best).map(Map.Entry::getKey);
    }
}
