package sledwright.planner.order;

import java.util.List;
import java.util.function.DoublePredicate;
import sledwright.domain.Catalog;
import sledwright.domain.MemoryMode;
import sledwright.domain.Objective;
import sledwright.domain.OrderRequest;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Worth;
import sledwright.metrics.Throughput;

/**
 * Whether every order comes to whole minor units, so that one which is cheaper is cheaper by one at least. Prices are whole; what
 * surplus is worth
 * need not be.
 */
final class WholeCoins {

    private static final double NOTHING = 1e-9;

    private static final DoublePredicate WHOLE = worth -> Math.abs(worth - Math.rint(worth)) < NOTHING;

    private WholeCoins() {
    }

    static boolean in(OrderRequest order, Catalog catalog) {
        List<Double> throughputs = catalog.processors().stream().map(processor -> Throughput.of(processor, catalog.throughputFactors())
                .value()).distinct().toList();
        return order.lines().stream().allMatch(line -> line.request().objective() != Objective.BEST_VALUE || isWhole(line.request(),
                throughputs));
    }

    private static boolean isWhole(Request request, List<Double> throughputs) {
        Worth worth = request.worth();
        Requirements require = request.require();
        return WHOLE.test(worth.core())
                // Other modes may leave a fraction of a GB.
                && (worth.gb() == 0 || require.mode() == MemoryMode.INDEPENDENT && WHOLE.test(worth.gb())
                        && WHOLE.test(worth.gb() * require.memoryGb()))
                // Bandwidth and work come in fractions of all kinds.
                && worth.gbs() == 0 && worth.work() == 0
                && (worth.throughput() == 0 || WHOLE.test(worth.throughput() * require.throughput())
                        && throughputs.stream().allMatch(throughput -> WHOLE.test(worth.throughput() * throughput)));
    }
}
