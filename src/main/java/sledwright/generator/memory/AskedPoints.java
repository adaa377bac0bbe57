package sledwright.generator.memory;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import sledwright.generator.keep.Kept;

/** The points of an option as one request asks for them, window by window; what it has had once is at hand. */
final class AskedPoints implements MemoryOption.Points {

    private final Kept kept;
    private final PointsKey.OfOption option;
    private final MemoryNeed need;
    private final Supplier<Pricing> prices;
    private final List<Known> known = new ArrayList<>();
    private Pricing pricing;

    private record Known(int mostSocketGb, MemoryWindow window, MemoryPoints points) {
    }

    /** @param prices works the points out, where nobody else has */
    AskedPoints(Kept kept, PointsKey.OfOption option, MemoryNeed need, Supplier<Pricing> prices) {
        this.kept = kept;
        this.option = option;
        this.need = need;
        this.prices = prices;
    }

    @Override
    public MemoryPoints within(int mostSocketGb, MemoryWindow window) {
        for (Known had : known) {
            if (had.mostSocketGb == mostSocketGb && had.window.holds(window)) {
                return had.points;
            }
        }
        MemoryWindow wide = window.widened();
        MemoryPoints points = kept.get(new PointsKey(option, need, mostSocketGb, wide), () -> pricing().points(mostSocketGb, wide));
        known.add(new Known(mostSocketGb, wide, points));
        return points;
    }

    private Pricing pricing() {
        if (pricing == null) {
            pricing = prices.get();
        }
        return pricing;
    }
}
