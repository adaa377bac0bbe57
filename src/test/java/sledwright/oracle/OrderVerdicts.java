package sledwright.oracle;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.LongFunction;
import sledwright.oracle.OrderAgainstCpSatTest.Verdict;
import sledwright.planner.order.OrderStatus;

/** How random orders compare with what CP-SAT finds, counted. */
final class OrderVerdicts {

    /** That many wrong ones are shown whole. */
    private static final int SHOWN = 2;

    final Map<OrderStatus, Integer> statuses = new EnumMap<>(OrderStatus.class);
    final List<Long> undecided = new ArrayList<>();
    final List<String> missed = new ArrayList<>();
    final List<String> wrong = new ArrayList<>();
    final long seeds;
    int proved;

    /** @param shown a wrong order, in words */
    OrderVerdicts(int count, LongFunction<RandomOrder> orders, Function<RandomOrder, String> shown) {
        seeds = Seeds.chosen(count).count();
        Seeds.chosen(count).forEach(seed -> {
            try {
                RandomOrder that = orders.apply(seed);
                note(seed, that, OrderAgainstCpSatTest.judge(that), shown);
            } catch (OrderAgainstCpSatTest.UndecidedException | EveryMachine.TooManyException tooHard) {
                undecided.add(seed);
            }
        });
        if (Boolean.getBoolean("sledwright.tell")) {
            System.err.println(this);
            missed.forEach(System.err::println);
        }
    }

    private void note(long seed, RandomOrder that, Verdict verdict, Function<RandomOrder, String> shown) {
        proved += verdict.proved() ? 1 : 0;
        if (verdict.status() != null) {
            statuses.merge(verdict.status(), 1, Integer::sum);
        }
        if (!verdict.missed().isEmpty()) {
            missed.add("seed %d: %s".formatted(seed, verdict.missed()));
        }
        if (!verdict.wrong().isEmpty()) {
            wrong.add("seed %d: %s".formatted(seed, verdict.wrong()) + (wrong.size() < SHOWN ? "%n%s".formatted(shown.apply(that)) : ""));
        }
    }

    @Override
    public String toString() {
        return "%s, %d proved, could be better: %s, undecided %s".formatted(statuses, proved, missed, undecided);
    }
}
