package sledwright.cli;

import java.io.PrintWriter;
import java.math.BigDecimal;
import java.util.function.Consumer;
import sledwright.desk.Progress;
import sledwright.words.Numbers;

/** Shows a person who waits the progress of an answer; nothing where it is quick. */
final class ProgressLine implements Consumer<Progress> {

    private static final double FIRST_AFTER_S = 1;
    private static final double BETWEEN_S = 0.5;

    private final PrintWriter err;
    private double nextAtS = FIRST_AFTER_S;

    ProgressLine(PrintWriter err) {
        this.err = err;
    }

    @Override
    public void accept(Progress now) {
        if (now instanceof Progress.Doing doing) {
            err.println("sledwright: " + doing.words());
        } else if (now instanceof Progress.Found found && found.seconds() >= nextAtS) {
            nextAtS = found.seconds() + BETWEEN_S;
            err.println("sledwright: %s s: %s".formatted(Numbers.plain(Math.rint(found.seconds() * 10) / 10), words(found)));
        }
    }

    private static String words(Progress.Found found) {
        if (found.missing() > 0) {
            return Numbers.counted(found.missing(), "machine") + " missing so far";
        }
        String best = "best " + found.best().map(amount -> money(amount, found)).orElse("not known");
        return best + found.bound().map(bound -> ", bound " + money(bound, found)).orElse(", no bound yet")
                + found.gap().map(gap -> " (gap %s %%)".formatted(Numbers.plain(100 * gap))).orElse("");
    }

    private static String money(BigDecimal amount, Progress.Found found) {
        return amount + " " + found.currency();
    }
}
