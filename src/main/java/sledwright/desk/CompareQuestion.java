package sledwright.desk;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import sledwright.compare.Cost;
import sledwright.generator.Axis;

/**
 * What is asked of a request of kind {@code quote} for what money buys.
 *
 * @param sets       keys to answer with in place of the request's own, as {@code path=value}
 * @param figures    what to compare, of {@link #FIGURES}; none: all
 * @param over       the costs to weigh, of {@link #COSTS}; none: both, so far as known
 * @param platforms  part numbers of the platforms to compare builds on; none: those of the request
 * @param byPlatform whether each platform has a curve of its own
 * @param together   the share by which each build beats every cheaper one in some figure, if such builds are to be listed, too
 */
public record CompareQuestion(List<String> sets, List<String> figures, List<String> over, List<String> platforms, boolean byPlatform,
                              OptionalDouble together) {

    /** The words for figures, in their order. */
    public static final List<String> FIGURES = Arrays.stream(Axis.values()).map(Axis::label).toList();

    /** The words for costs, in their order. */
    public static final List<String> COSTS = Arrays.stream(Cost.values()).map(Cost::label).toList();

    public CompareQuestion {
        sets = List.copyOf(sets);
        figures = List.copyOf(figures);
        over = List.copyOf(over);
        platforms = List.copyOf(platforms);
    }

    /** The request as it stands: all figures over all costs that are known. */
    public static CompareQuestion plain() {
        return new CompareQuestion(List.of(), List.of(), List.of(), List.of(), false, OptionalDouble.empty());
    }
}
