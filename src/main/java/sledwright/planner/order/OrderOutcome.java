package sledwright.planner.order;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.FilledEnclosure;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Pick;
import sledwright.generator.Doubts;
import sledwright.metrics.Figures;

/**
 * How an order is filled, every machine and enclosure of it judged valid. Money in minor units.
 *
 * @param status    whether all machines are delivered and whether nothing cheaper exists
 * @param scarce    parts of which more would make the order cheaper, the one that saves most first; empty where machines are missing
 * @param shortages what is lacking where machines are missing
 */
public record OrderOutcome(OrderRequest order, Catalog catalog, OrderStatus status, Proof proof, Filled filled, List<Scarce> scarce,
        Shortages shortages) {

    public OrderOutcome {
        scarce = List.copyOf(scarce);
    }

    /**
     * What is known of the figure that orders are compared by.
     *
     * @param best   price, less what is of worth beyond what is asked and with what further module part numbers count against it
     * @param bound  no order that delivers as much has a lesser figure; NaN where not known
     * @param ended  why the search ended where nothing is proved
     * @param doubts what keeps it from being proved; none: it is
     */
    public record Proof(double best, double bound, End ended, Doubts doubts) {
    }

    /**
     * What is delivered.
     *
     * @param lines      one for each line of the order, in its order
     * @param enclosures what houses the sleds
     * @param picks      units by lot over the whole order; a lot stands once, so that its pick has the price of its units
     * @param suppliers  who delivers something
     */
    public record Filled(Price price, List<LineFill> lines, List<FilledEnclosure> enclosures, List<Pick> picks, Set<String> suppliers) {

        public Filled {
            lines = List.copyOf(lines);
            enclosures = List.copyOf(enclosures);
            picks = List.copyOf(picks);
        }
    }

    /** Why a search ends; {@code KEPT}: nothing was searched, the machines are those that were kept. */
    public enum End { PROVED, TIME, NOTHING_LEFT, KEPT }

    public double best() {
        return proof.best;
    }

    public double bound() {
        return proof.bound;
    }

    public Price price() {
        return filled.price;
    }

    public List<LineFill> lines() {
        return filled.lines;
    }

    public List<FilledEnclosure> enclosures() {
        return filled.enclosures;
    }

    public List<Pick> picks() {
        return filled.picks;
    }

    public Set<String> suppliers() {
        return filled.suppliers;
    }

    public int delivered() {
        return lines().stream().mapToInt(LineFill::delivered).sum();
    }

    public int missing() {
        return lines().stream().mapToInt(LineFill::missing).sum();
    }

    /** By how much the figure could be better at most, as a share of it; NaN where not known. */
    public double gap() {
        return best() == bound() ? 0 : (best() - bound()) / Math.abs(best());
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
     * @param most      whether it is proved that no order delivers more, machines counted by their priority
     * @param looked    whether there was time to look into the rest
     * @param parts     which further units would suffice, the fewest that the search could find, however many suppliers deliver
     * @param suppliers where with these units there would be all machines, but from more suppliers than are allowed
     * @param enclosures what is wrong with the enclosures
     * @param later     the cheapest whole order found if lots could arrive later or the lines waited; empty where that does not do
     */
    public record Shortages(boolean most, boolean looked, List<Lack> parts, Optional<TooFewSuppliers> suppliers,
            EnclosureLack enclosures, Optional<Later> later) {

        public static final Shortages NONE = new Shortages(true, true, List.of(), Optional.empty(), EnclosureLack.SUFFICIENT,
                Optional.empty());

        /** Where time was over before anything could be found out. */
        static Shortages unknown(boolean most) {
            return new Shortages(most, false, List.of(), Optional.empty(), EnclosureLack.SUFFICIENT, Optional.empty());
        }
    }

    /**
     * Suppliers that do not suffice.
     *
     * @param allowed how many may deliver
     * @param enough  as few as were found to do
     * @param price   of all machines from this many suppliers; empty where units are lacking besides
     */
    public record TooFewSuppliers(int allowed, int enough, OptionalLong price) {
    }

    /**
     * How enclosures fall short.
     *
     * @param unfed lines not one sled of which is fed by any of them that is offered
     * @param unhoused lines for whose sleds none is offered
     * @param bays  where those in stock have not enough for all sleds, or do not feed as many as they have bays
     */
    public record EnclosureLack(List<Unfed> unfed, List<Unhoused> unhoused, Optional<TooFewBays> bays) {

        static final EnclosureLack SUFFICIENT = new EnclosureLack(List.of(), List.of(), Optional.empty());
    }

    /**
     * A sled that is too heavy for every enclosure on offer that takes it.
     *
     * @param enclosure the one that comes closest, with its supply
     * @param baseW     its own load
     * @param deliversW what its supplies deliver with those failed that may, within its budget
     * @param lowLineV  the mains voltage where that is low
     */
    public record Unfed(LightestSled sled, String enclosure, String supply, int supplies, double baseW, double deliversW,
            OptionalDouble lowLineV) {
    }

    /**
     * The lightest sled that a line could be in an enclosure.
     *
     * @param inStock whether of what is in stock for the line; else of whatever is offered
     */
    public record LightestSled(String line, double loadW, boolean inStock) {
    }

    /**
     * Sleds for which no enclosure can be bought.
     *
     * @param enclosures all that would take them
     */
    public record Unhoused(String line, List<Unsold> enclosures) {
    }

    /**
     * An enclosure that the line cannot have: nobody offers it, or the line forbids it.
     *
     * @param supplies where that holds of all its supplies and not of itself
     */
    public record Unsold(String enclosure, List<String> supplies) {
    }

    /** Sleds, and the bays of all enclosures in stock that may take them. */
    public record TooFewBays(int sleds, int bays) {
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
