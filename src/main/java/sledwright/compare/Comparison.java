package sledwright.compare;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import sledwright.domain.Energy;
import sledwright.domain.Request;
import sledwright.generator.Doubts;
import sledwright.generator.Status;

/**
 * What money buys for one request.
 *
 * @param energy     what electricity is counted; empty: none
 * @param byPlatform whether each curve is of one platform
 * @param curves     by platform, cost and figure; where no build is valid each is without points
 * @param together   all figures at once; empty where nobody asked
 */
public record Comparison(Request request, Optional<Energy> energy, boolean byPlatform, List<Curve> curves, Optional<Together> together) {

    public Comparison {
        curves = List.copyOf(curves);
    }

    /** The same with all figures at once. */
    public Comparison with(Together all) {
        return new Comparison(request, energy, byPlatform, curves, Optional.of(all));
    }

    /** Proved where every curve is; impossible where no build is valid. */
    public Status status() {
        if (curves.stream().anyMatch(curve -> curve.status() == Status.BEST_FOUND)
                || together.isPresent() && !together.get().complete() && together.get().builds().size() < Together.MOST) {
            return Status.BEST_FOUND;
        }
        return curves.stream().allMatch(curve -> curve.status() == Status.IMPOSSIBLE) ? Status.IMPOSSIBLE : Status.PROVED;
    }

    /** What keeps it from being proved. */
    public Doubts doubts() {
        return Doubts.ofAll(Stream.concat(curves.stream().map(Curve::doubts), together.stream().map(Together::doubts)).toList());
    }

    /** Whether no build of any curve beats a point of one of them; always so where all platforms share a curve. */
    public boolean isForemost(Curve curve, Point point) {
        return curves.stream().filter(other -> other.axes().figure() == curve.axes().figure() && other.axes().cost() == curve.axes().cost())
                .noneMatch(other -> curve.isBeaten(point, other));
    }
}
