package sledwright.generator;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

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
        Set<Doubts.Cause> causes = EnumSet.noneOf(Doubts.Cause.class);
        aims.forEach((cause, aim) -> {
            if (aim <= best) {
                causes.add(cause);
            }
        });
        TreeSet<String> platforms = new TreeSet<>();
        tooLarge.forEach((platform, aim) -> {
            if (aim <= best) {
                platforms.add(platform);
            }
        });
        return new Doubts(causes, platforms);
    }
}
