package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.OptionalInt;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.LongFunction;
import org.junit.jupiter.api.Test;
import sledwright.domain.Catalog;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Request;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.relax.Duals;
import sledwright.planner.order.relax.Pricer;

/** What an order's questions were answered is kept from one set of prices to the next: only where a search that keeps nothing says the same. */
class KeptAnswersTest {

    private static final int SEEDS = 8;
    private static final int STEPS = 25;

    @Test
    void aKeptAnswerIsThatOfASearch() {
        Seeds.chosen(SEEDS).forEach(seed -> {
            compare(seed, RandomStorage::of);
            compare(seed, some -> RandomCase.of(some, RandomCase.Size.LISTABLE));
        });
    }

    /** One price after the other changes. */
    private static void compare(long seed, LongFunction<RandomCase> cases) {
        SplittableRandom random = new SplittableRandom(seed);
        RandomCase that = cases.apply(seed);
        Catalog catalog = that.catalog();
        Request one = that.request().withMachines(1).withOnHand(Map.of());
        Market market = new Market(catalog, new OrderRequest("kept", List.of(new OrderLine("one", one, 1, false)), OptionalInt.empty(), 0, 0, Map.of()));
        Pricer keeping = new Pricer(market, new Search(catalog));
        long[] worth = new long[market.parts()];
        for (int part = 0; part < worth.length; part++) {
            worth[part] = market.cheapest(part, 0);
        }
        for (int step = 0; step < STEPS; step++) {
            long[] bays = new long[market.bays().size()];
            long[][] parts = new long[market.pools().size()][];
            for (int pool = 0; pool < parts.length; pool++) {
                parts[pool] = worth;
            }
            Duals duals = new Duals(parts, bays, bays, Map.of(), 0);
            assertThat(keeping.best(0, Set.of(), Map.of(), 1, duals, Deadline.never()).least()).as("seed %d, step %d: %s", seed, step, that.request())
                    .isEqualTo(new Pricer(market, new Search(catalog)).best(0, Set.of(), Map.of(), 1, duals, Deadline.never()).least());
            worth = worth.clone();
            int changed = random.nextInt(worth.length);
            worth[changed] = Math.round(worth[changed] * (0.3 + random.nextDouble()));
        }
    }
}
