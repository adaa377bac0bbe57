package sledwright.cli;

import java.io.PrintWriter;
import java.util.function.Consumer;
import java.util.function.DoubleFunction;
import sledwright.planner.order.OrderProgress;
import sledwright.rules.Numbers;

/** Tells a person who waits how far an order has come; keeps silent where it is quick. */
final class ProgressLine implements Consumer<OrderProgress> {

    private static final double FIRST_AFTER_S = 1;
    private static final double BETWEEN_S = 0.5;

    private final PrintWriter err;
    private final DoubleFunction<String> money;
    private double nextAtS = FIRST_AFTER_S;

    /** @param money an amount of minor units in words */
    ProgressLine(PrintWriter err, DoubleFunction<String> money) {
        this.err = err;
        this.money = money;
    }

    @Override
    public void accept(OrderProgress now) {
        if (now.seconds() >= nextAtS) {
            nextAtS = now.seconds() + BETWEEN_S;
            err.println("sledwright: %s s: %s".formatted(Numbers.plain(Math.rint(now.seconds() * 10) / 10), words(now)));
        }
    }

    private String words(OrderProgress now) {
        if (now.missing() > 0) {
            return Numbers.counted(now.missing(), "machine", "machines") + " missing so far";
        }
        if (Double.isNaN(now.bound())) {
            return "best %s, no bound yet".formatted(money.apply(now.best()));
        }
        double gap = (now.best() - now.bound()) / Math.abs(now.best());
        return "best %s, bound %s%s".formatted(money.apply(now.best()), money.apply(now.bound()),
                Double.isFinite(gap) ? " (gap %s %%)".formatted(Numbers.plain(100 * Math.max(0, gap))) : "");
    }
}
