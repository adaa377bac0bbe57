package sledwright.planner.order;

import java.util.List;
import java.util.Map;
import java.util.Set;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.FilledEnclosure;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Pick;
import sledwright.metrics.Figures;

/**
 * How an order is filled, every machine and enclosure of it judged valid. Money in minor units.
 *
 * @param status     whether all machines are delivered and whether nothing cheaper exists
 * @param best       price, less what is of worth beyond what is asked and with what further module part numbers count against it
 * @param bound      no order of all machines has a lesser figure; NaN where not known or where machines are missing
 * @param lines      one for each line of the order, in its order
 * @param enclosures what houses the sleds
 * @param picks      units by lot over the whole order; a lot stands once, so that its pick tells the price of its units
 * @param suppliers  who delivers something
 * @param scarce     parts of which more would make the order cheaper, the one that saves most first; empty where machines are missing
 * @param shortages  what is lacking where machines are missing
 */
public record OrderOutcome(OrderRequest order, Catalog catalog, OrderStatus status, double best, double bound, Price price,
        List<LineFill> lines, List<FilledEnclosure> enclosures, List<Pick> picks, Set<String> suppliers, List<Scarce> scarce,
        Shortages shortages) {

    public OrderOutcome {
        lines = List.copyOf(lines);
        enclosures = List.copyOf(enclosures);
        picks = List.copyOf(picks);
        scarce = List.copyOf(scarce);
    }

    /** Machines that are delivered. */
    public int delivered() {
        return lines.stream().mapToInt(LineFill::delivered).sum();
    }

    public int missing() {
        return lines.stream().mapToInt(LineFill::missing).sum();
    }

    /** By how much the figure could be better at most, as a share of it; NaN where not known. */
    public double gap() {
        return best == bound ? 0 : (best - bound) / Math.abs(best);
    }

    /**
     * What the order costs.
     *
     * @param delivery what suppliers charge for delivering
     */
    public record Price(long parts, long labour, long licence, long delivery) {

        public long total() {
            return parts + labour + licence + delivery;
        }
    }

    /**
     * How a line is filled.
     *
     * @param fills   its builds, the most used first
     * @param missing machines that are not delivered
     */
    public record LineFill(OrderLine line, List<Fill> fills, int missing) {

        public LineFill {
            fills = List.copyOf(fills);
        }

        public int delivered() {
            return fills.stream().mapToInt(fill -> fill.picks().size()).sum();
        }
    }

    /**
     * Machines of one build.
     *
     * @param picks for each machine where its units come from; the price of a pick is that of its lot over the whole order
     */
    public record Fill(Build build, Figures figures, List<List<Pick>> picks) {

        public Fill {
            picks = List.copyOf(picks);
        }

        public int machines() {
            return picks.size();
        }
    }

    /**
     * A part whose lots are used up.
     *
     * @param saves what one more unit at the price of the last lot would save, as the linear relaxation has it
     */
    public record Scarce(String sku, long saves) {
    }

    /**
     * What is lacking where machines are missing.
     *
     * @param most       whether it is proved that no order delivers more, machines counted by their priority
     * @param parts      what further units would do, the fewest that the search could find
     * @param impossible names of lines of which no machine could be built however much there were
     * @param later      the cheapest whole order found if lots could arrive later or the lines waited; null where that does not do
     */
    public record Shortages(boolean most, List<Lack> parts, List<String> impossible, Later later) {

        public static final Shortages NONE = new Shortages(true, List.of(), List.of(), null);
    }

    /**
     * Units that would be needed beyond the stock.
     *
     * @param byLine name of a line -> units
     */
    public record Lack(String sku, int units, Map<String, Integer> byLine) {
    }

    /**
     * A whole order that waits for lots with a longer lead time.
     *
     * @param price     of the whole order
     * @param purchases what of it arrives later than its line allows
     * @param leadDays  days until the last of them
     */
    public record Later(long price, List<Pick> purchases, int leadDays) {
    }
}
