package sledwright.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Request;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.planner.order.OrderOutcome;
import sledwright.planner.order.OrderPlanner;
import sledwright.planner.order.OrderStatus;

/**
 * Orders with drives, cards and extras against the quote of the same machines, which {@code FitoutsAgainstCpSatTest} holds to CP-SAT: alike machines of one line cost what
 * the quote says; unlike ones, and those of several lines, cost no more, and no bound is above them. More seeds by {@code -Dsledwright.seeds=200}.
 */
class EquippedOrdersAgainstQuotesTest {

    private static final int SEEDS = 10;
    private static final Duration LIMIT = Duration.ofSeconds(3);
    private static final double CLOSE = 0.01;

    @Test
    void ordersCostNoMoreThanQuotes() {
        List<String> wrong = new ArrayList<>();
        int[] proved = new int[1];
        Seeds.chosen(SEEDS).forEach(seed -> {
            RandomCase that = RandomStorage.of(seed);
            Request asked = that.request();
            Findings quote = new Search(that.catalog()).run(asked, Deadline.never());
            OrderOutcome alike = order(that, asked, 1, true);
            if (quote.status() == Status.IMPOSSIBLE) {
                wrong.addAll(alike.missing() > 0 ? List.of() : List.of("seed %d: all machines where the quote has none".formatted(seed)));
                return;
            }
            proved[0] += alike.status() == OrderStatus.PROVED ? 1 : 0;
            double price = quote.ranked().get(0).price().total();
            wrong.addAll(wrong(seed + " alike", alike, price, true));
            wrong.addAll(wrong(seed + " unlike", order(that, asked, 1, false), price, asked.machines() == 1));
            wrong.addAll(wrong(seed + " one by one", order(that, asked, asked.machines(), false), price, asked.machines() == 1));
        });
        assertThat(wrong).isEmpty();
        assertThat(proved[0]).isGreaterThan((int) Seeds.chosen(SEEDS).count() / 4);
    }

    private static OrderOutcome order(RandomCase that, Request asked, int lines, boolean uniform) {
        List<OrderLine> all = IntStream.range(0, lines)
                .mapToObj(line -> new OrderLine("line " + line, asked.withMachines(asked.machines() / lines).withOnHand(Map.of()), 1, uniform)).toList();
        return new OrderPlanner(that.catalog(), 1).plan(new OrderRequest("equipped", all, OptionalInt.empty(), 0, 0, asked.onHand()), Deadline.in(LIMIT), progress -> { });
    }

    /** @param same whether no order of them can be cheaper than the quote */
    private static List<String> wrong(String which, OrderOutcome outcome, double price, boolean same) {
        List<String> wrong = new ArrayList<>();
        if (outcome.missing() > 0) {
            wrong.add(outcome.shortages().most() ? "seed %s: %d machines are missing, as the most".formatted(which, outcome.missing()) : "");
        } else if (outcome.bound() > price + CLOSE) {
            wrong.add("seed %s: bound %s above the quote's %s".formatted(which, outcome.bound(), price));
        } else if (same && outcome.best() < price - CLOSE) {
            wrong.add("seed %s: %s below the quote's %s".formatted(which, outcome.best(), price));
        }
        wrong.removeIf(String::isEmpty);
        return wrong;
    }
}
