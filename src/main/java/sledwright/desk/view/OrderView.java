package sledwright.desk.view;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sledwright.domain.Discount;
import sledwright.domain.FilledEnclosure;
import sledwright.domain.OrderLine;
import sledwright.explain.Explanation;
import sledwright.explain.ask.Unproved;
import sledwright.generator.Doubts;
import sledwright.planner.order.OrderOutcome;
import sledwright.planner.order.OrderStatus;

/**
 * The answer to an order of several lines. Amounts are in units of the currency.
 *
 * @param cost     of what is delivered
 * @param sale     of it
 * @param shortage what is lacking; empty where all machines are delivered
 */
public record OrderView(Topic topic, OrderProof proof, Cost cost, Sale sale, Contents contents, Optional<Shortage> shortage,
                        AnswerDay day) {

    /**
     * How good it is, and how sure that is.
     *
     * @param best       the figure that is brought down: the price, with the charge, less the worth; empty where nothing is delivered
     * @param bound      no order that delivers as much has a lesser figure; empty where not known
     * @param gapPercent by how much of it the figure could be better at most; empty where not known
     * @param ended      why the search ended
     * @param doubts     what keeps it from being proved; none: it is, or nothing is left to try
     */
    public record OrderProof(OrderStatus status, Optional<BigDecimal> best, Optional<BigDecimal> bound, Optional<BigDecimal> gapPercent,
                             OrderOutcome.End ended, Doubts doubts) {
    }

    /**
     * What is delivered.
     *
     * @param enclosures what houses the sleds
     * @param picks      parts by lot over the whole order
     * @param suppliers  who delivers something
     * @param scarce     parts of which one more unit would save something, the one that saves most first
     */
    public record Contents(List<Filled> lines, List<Housed> enclosures, List<Line> picks, List<Delivery> suppliers, List<Scarce> scarce) {

        public Contents {
            lines = List.copyOf(lines);
            enclosures = List.copyOf(enclosures);
            picks = List.copyOf(picks);
            suppliers = List.copyOf(suppliers);
            scarce = List.copyOf(scarce);
        }
    }

    /** What keeps it from being proved and more time would not change. */
    public List<String> reservations() {
        return Unproved.whateverTheTime(proof.doubts());
    }

    /** Suppliers that deliver something. */
    public int deliveries() {
        return (int) contents.suppliers().stream().filter(delivery -> !delivery.own()).count();
    }

    /**
     * What an order costs.
     *
     * @param delivery what its suppliers charge for delivering
     * @param charge   what further part numbers of memory module in one machine count, without being part of the total
     * @param worth    of what machines of best-value lines have beyond what is asked
     */
    public record Cost(BigDecimal parts, BigDecimal labour, BigDecimal licence, BigDecimal delivery, BigDecimal total,
                       BigDecimal charge, BigDecimal worth) {
    }

    /**
     * A line of the order.
     *
     * @param price  of its machines, without what houses them and what their delivery costs
     * @param builds the most used first
     * @param why    what conflicts where not one machine of it can be built from the stock, nobody else drawing on it; empty where that
     *               is not so or not known
     */
    public record Filled(OrderLine line, int missing, BigDecimal price, List<Group> builds, Optional<Explanation> why) {

        public Filled {
            builds = List.copyOf(builds);
        }

        public int delivered() {
            return line.machines() - missing;
        }
    }

    /**
     * Machines of one build.
     *
     * @param number from 1 within its line
     * @param build  how many there are, what they consist of and cost together, and what each reaches
     * @param picked where their units come from, machines that take the same together
     */
    public record Group(int number, BuildView build, List<Picked> picked) {

        public Group {
            picked = List.copyOf(picked);
        }
    }

    /**
     * Machines whose units come from the same lots.
     *
     * @param first their numbers, from 1 within the line
     * @param lines the parts of one machine
     */
    public record Picked(int first, int last, List<Line> lines) {

        public int machines() {
            return last - first + 1;
        }
    }

    /**
     * An enclosure with its sleds.
     *
     * @param number from 1
     * @param sleds  first bay first
     * @param lines  the enclosure and its supplies
     */
    public record Housed(int number, FilledEnclosure filled, List<Sled> sleds, BigDecimal price, List<Line> lines) {

        public double loadW() {
            return sleds.stream().mapToDouble(Sled::loadW).sum();
        }
    }

    /**
     * A machine in a bay.
     *
     * @param bay     from 1
     * @param machine its number within the line
     */
    public record Sled(int bay, String line, int machine, int build, double loadW) {
    }

    /**
     * What one supplier delivers, or what comes from the shop's own shelf.
     *
     * @param own    whether it is the shop's own shelf, from which nothing has to be delivered
     * @param parts  what that costs
     * @param charge for delivering it
     * @param leadDays days until the last of it arrives
     */
    public record Delivery(String supplier, boolean own, int lots, int units, BigDecimal parts, BigDecimal charge, int leadDays) {
    }

    /** A part of which one more would save about so much. */
    public record Scarce(String sku, BigDecimal saves) {
    }

    /**
     * What an order lacks.
     *
     * @param most   whether it is proved that no order delivers more, machines counted by their priority
     * @param looked whether there was time to find out all the rest
     * @param causes what besides stock keeps machines from being delivered
     * @param lacks  units beyond the stock that would suffice
     * @param later  a whole order that waits; empty where none was found
     */
    public record Shortage(boolean most, boolean looked, List<Cause> causes, List<Lack> lacks, Optional<Later> later) {
    }

    /**
     * A limit that is in the way.
     *
     * @param limit   its identifier
     * @param line    where it is one line's
     * @param message a finished sentence
     */
    public record Cause(String limit, Optional<String> line, String message) {

        /** Whether it lies in the machines that were asked for, and not in stock or suppliers. */
        public boolean isOfMachines() {
            return line.isPresent();
        }
    }

    /** @param byLine name of a line -> units */
    public record Lack(String sku, String description, int units, Map<String, Integer> byLine) {
    }

    /**
     * @param purchases what of it arrives later than its line allows
     * @param leadDays  days until the last of them
     */
    public record Later(BigDecimal price, int leadDays, List<Line> purchases) {
    }

    /**
     * @param why      name of a line of which not one machine can be built -> what conflicts
     * @param discount what the customer pays in the place of the price; an agreed price is that of all machines, and of no fewer
     */
    public static OrderView of(OrderOutcome outcome, Map<String, Explanation> why, Discount discount) {
        return new OrderViews(outcome, why, discount).make();
    }

    /** Machines that are delivered. */
    public int delivered() {
        return contents.lines().stream().mapToInt(Filled::delivered).sum();
    }

    /** Whether the figure that is brought down is the price. */
    public boolean isPriceAlone() {
        return cost.charge().signum() == 0 && cost.worth().signum() == 0;
    }
}
