package sledwright.report.chart;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What a chart shows: lines over an axis that runs across, each with its spots.
 *
 * @param title       a heading
 * @param description one or two sentences that say what can be seen, for whoever does not see it
 * @param across      title of the axis that runs across, with its unit
 * @param up          title of the axis that runs up, with its unit
 * @param locale      how ticks are written
 * @param falling     whether lower is better, so that staircases run down
 */
public record Chart(String title, String description, String across, String up, Locale locale, boolean falling, List<Line> lines) {

    public Chart {
        lines = List.copyOf(lines);
        if (lines.stream().allMatch(line -> line.spots().isEmpty())) {
            throw new IllegalArgumentException("a chart needs a spot");
        }
    }

    /**
     * A staircase; or, where spots are known no better than within some range, straight from spot to spot.
     *
     * @param name   stands in the legend, which is drawn where there are several lines
     * @param spots  from left to right
     * @param ranges of the spots, drawn as a band with a bar at each; empty: a staircase
     */
    public record Line(String name, List<Spot> spots, List<Range> ranges) {

        public Line {
            spots = List.copyOf(spots);
            ranges = List.copyOf(ranges);
            if (!ranges.isEmpty() && ranges.size() != spots.size()) {
                throw new IllegalArgumentException("%s spots and %s ranges".formatted(spots.size(), ranges.size()));
            }
        }

        /** A staircase. */
        public Line(String name, List<Spot> spots) {
            this(name, spots, List.of());
        }
    }

    /** What lies between two heights. */
    public record Range(double least, double most) {
    }

    /**
     * A point.
     *
     * @param words all that is to say of it
     * @param link  what a page knows it by; empty: nothing
     * @param mark  what makes it stand out
     * @param call  words that stand beside it; empty: none
     * @param ahead whether it is drawn filled; others are hollow
     */
    public record Spot(double across, double up, String words, Optional<String> link, Mark mark, Optional<String> call, boolean ahead) {

        public static Spot of(double across, double up, String words) {
            return new Spot(across, up, words, Optional.empty(), Mark.NONE, Optional.empty(), true);
        }
    }

    /** The shape that makes a spot stand out. */
    public enum Mark {
        NONE, DIAMOND, TRIANGLE, STAR
    }
}
