package sledwright.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.function.ToDoubleFunction;
import sledwright.metrics.Figures;
import sledwright.metrics.Quantity;
import sledwright.rules.Order;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/**
 * What one order buys against another.
 *
 * @param extra   what all its machines cost more, minor units; below 0: less
 * @param changes the figures of one machine that differ
 */
public record Difference(long extra, List<Change> changes) {

    /** A figure that is reported, and whether more of it is better. */
    public enum Figure {
        CORES(true, "core", "", Figures::cores),
        USABLE_MEMORY(true, "GB", " GB", Figures::usableGb),
        BANDWIDTH(true, "GB/s", " GB/s", Figures::bandwidthGbs),
        WORK(true, "", "", Figures::work),
        THROUGHPUT(true, "", "", Figures::throughput),
        LOAD(false, "", " W", Figures::loadW);

        private final boolean moreIsBetter;
        private final String each;
        private final String unit;
        private final ToDoubleFunction<Figures> of;

        Figure(boolean moreIsBetter, String each, String unit, ToDoubleFunction<Figures> of) {
            this.moreIsBetter = moreIsBetter;
            this.each = each;
            this.unit = unit;
            this.of = of;
        }

        /** What the extra price is shared out over; empty: it is not. */
        public String each() {
            return each;
        }

        /** The unit behind a number, with the space before it; empty where there is none. */
        public String unit() {
            return unit;
        }

        /** What so much of it is called. */
        public String noun(double by) {
            return switch (this) {
                case CORES -> by == 1 ? "core" : "cores";
                case USABLE_MEMORY -> "usable memory";
                case BANDWIDTH -> "memory bandwidth";
                case WORK -> "work";
                case THROUGHPUT -> "throughput";
                case LOAD -> "load";
            };
        }
    }

    /**
     * One figure that differs.
     *
     * @param more    whether it is more of the figure
     * @param by      how much more or less, above 0
     * @param reached the figure itself
     * @param each    the extra price shared out over this alone: minor units for each unit more; empty where it is not
     */
    public record Change(Figure figure, boolean more, double by, double reached, OptionalLong each) {

        public boolean isBetter() {
            return more == figure.moreIsBetter;
        }

        /** {@code more}, {@code less} or {@code fewer}. */
        public String direction() {
            return more ? "more" : figure == Figure.CORES ? "fewer" : "less";
        }
    }

    public Difference {
        changes = List.copyOf(changes);
    }

    /** @param extra what is paid more for all machines of the alternative, minor units; below 0: less */
    public static Difference of(Order alternative, Order best, long extra) {
        Figures one = alternative.figures();
        Figures other = best.figures();
        List<Change> changes = new ArrayList<>();
        for (Figure figure : Figure.values()) {
            double by = Quantity.rounded(figure.of.applyAsDouble(one) - figure.of.applyAsDouble(other));
            // Work that is throughput is reported once.
            boolean told = figure != Figure.WORK || best.request().require().work().isOfWorkload();
            if (by != 0 && told) {
                boolean shared = !figure.each.isEmpty() && by > 0 && extra > 0;
                changes.add(new Change(figure, by > 0, Math.abs(by), figure.of.applyAsDouble(one),
                        shared ? OptionalLong.of(Math.round(extra / (by * alternative.machines().size()))) : OptionalLong.empty()));
            }
        }
        return new Difference(extra, changes);
    }

    /** What it has the better of. */
    public List<Change> better() {
        return changes.stream().filter(Change::isBetter).toList();
    }

    /** What it has the worse of. */
    public List<Change> worse() {
        return changes.stream().filter(change -> !change.isBetter()).toList();
    }

    /**
     * One sentence: the extra price of an alternative, what it has more of than the best, and what it has less of. Where it is dearer, the
     * extra price is also shared out over each extra core, GB and GB/s, over each by itself.
     *
     * @param extra what is paid more for all machines of the alternative, minor units; below 0: less
     * @param other what the order that it is held against is called
     */
    public static Sentence sentence(Order alternative, Order best, long extra, String other) {
        Difference found = of(alternative, best, extra);
        return Sentence.of("%s: %s%s.", found.price(alternative, other), found.words(alternative),
                alternative.machines().size() > 1 ? " in each machine" : "");
    }

    private Sentence price(Order alternative, String other) {
        return extra == 0 ? Sentence.of("At the price of %s", other)
                : Sentence.of("For %s %s than %s", alternative.words(Math.abs(extra)), extra > 0 ? "more" : "less", other);
    }

    private Sentence words(Order alternative) {
        if (changes.isEmpty()) {
            return Sentence.plain("the same figures");
        }
        List<Sentence> better = better().stream().map(change -> words(change, alternative)).toList();
        List<Sentence> worse = worse().stream().map(change -> words(change, alternative)).toList();
        if (better.isEmpty()) {
            return Sentence.of("nothing more, but %s", Sentence.list(worse));
        }
        return worse.isEmpty() ? Sentence.list(better) : Sentence.of("%s, but %s", Sentence.list(better), Sentence.list(worse));
    }

    private static Sentence words(Change change, Order alternative) {
        Figure figure = change.figure();
        Object share = change.each().isEmpty() ? "" : Sentence.of("; %s a %s", alternative.words(change.each().getAsLong()), figure.each());
        return Sentence.of("%s%s %s %s (%s%s)", Numbers.plain(change.by()), figure.unit(), change.direction(), figure.noun(change.by()),
                Numbers.plain(change.reached()), share);
    }
}
