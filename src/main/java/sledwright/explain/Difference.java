package sledwright.explain;

import java.util.ArrayList;
import java.util.List;
import sledwright.metrics.Figures;
import sledwright.metrics.Quantity;
import sledwright.rules.Numbers;
import sledwright.rules.Order;

/** What one order buys against another. */
public final class Difference {

    private final List<String> better = new ArrayList<>();
    private final List<String> worse = new ArrayList<>();

    private final Order alternative;
    private final long extra;

    private Difference(Order alternative, Order best) {
        this.alternative = alternative;
        extra = alternative.price().total() - best.price().total();
    }

    /**
     * One sentence: the extra price of an alternative, what it has more of than the best, and what it has less of. Where it is dearer, the
     * extra price is also shared out over each extra core, GB and GB/s, over each by itself.
     */
    public static String sentence(Order alternative, Order best) {
        Figures one = alternative.figures();
        Figures other = best.figures();
        Difference found = new Difference(alternative, best);
        found.compare(true, one.cores(), other.cores(), "", Math.abs(one.cores() - other.cores()) == 1 ? "core" : "cores", "core");
        found.compare(true, one.usableGb(), other.usableGb(), " GB", "usable memory", "GB");
        found.compare(true, one.bandwidthGbs(), other.bandwidthGbs(), " GB/s", "memory bandwidth", "GB/s");
        found.compare(true, one.throughput(), other.throughput(), "", "throughput", "");
        found.compare(false, one.loadW(), other.loadW(), " W", "load", "");
        return found.price() + ": " + found.words() + (alternative.machines().size() > 1 ? " in each machine." : ".");
    }

    private String price() {
        return extra == 0 ? "At the price of the best"
                : "For %s %s than the best".formatted(alternative.words(Math.abs(extra)), extra > 0 ? "more" : "less");
    }

    private String words() {
        if (better.isEmpty() && worse.isEmpty()) {
            return "the same figures";
        }
        if (better.isEmpty()) {
            return "nothing more, but " + Sentences.list(worse);
        }
        return Sentences.list(better) + (worse.isEmpty() ? "" : ", but " + Sentences.list(worse));
    }

    /**
     * @param each what the extra price is shared out over; empty: it is not
     */
    private void compare(boolean moreIsBetter, double one, double other, String unit, String noun, String each) {
        double by = Quantity.rounded(one - other);
        if (by != 0) {
            (by > 0 == moreIsBetter ? better : worse).add("%s%s %s %s (%s%s)".formatted(Numbers.plain(Math.abs(by)), unit,
                    by > 0 ? "more" : noun.startsWith("core") ? "fewer" : "less", noun, Numbers.plain(one), share(by, each)));
        }
    }

    private String share(double by, String each) {
        if (each.isEmpty() || by <= 0 || extra <= 0) {
            return "";
        }
        return "; %s a %s".formatted(alternative.words(Math.round(extra / (by * alternative.machines().size()))), each);
    }
}
