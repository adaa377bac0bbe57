package sledwright.compare;

import java.util.Optional;
import sledwright.generator.Axis;

/**
 * What a curve is of: one figure over one cost.
 *
 * @param platform the one that all builds stand on; empty: whatever the request allows
 */
public record CurveAxes(Axis figure, Cost cost, Optional<String> platform) {
}
