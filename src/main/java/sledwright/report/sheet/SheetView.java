package sledwright.report.sheet;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What the bench needs: a sheet for each kind of machine. It says nothing of prices.
 *
 * @param request  name of the request or build
 * @param source   what the sheet is made from
 * @param rank     of the alternative, where it is one of a quote
 * @param machines all together
 * @param sheets   one for each kind of machine, the heaviest first; of an order one for each machine, line by line
 * @param order    what stands before the sheets of an order; empty: they are no order's
 * @param notice   what to settle before any work; empty: nothing
 * @param cautions sentences to read before
 */
public record SheetView(String request, Source source, OptionalInt rank, int machines, List<Sheet> sheets,
        Optional<WholeOrder> order, Optional<String> notice, List<String> cautions) {

    /** What a sheet is made from. */
    public enum Source {
        BUILD("build"), QUOTE("quote"), UPGRADE("upgrade"), ORDER("order");

        private final String label;

        Source(String label) {
            this.label = label;
        }

        public String label() {
            return label;
        }
    }

    /**
     * The work on a number of machines that are alike.
     *
     * @param machine what it is put together from
     * @param picks   what goes in, of all these machines, by lot
     * @param pulled  what comes out of all these machines
     * @param before  the board before an upgrade; empty: the machine is put together from nothing
     * @param board   the board when the work is done
     * @param work    on one machine
     * @param records what whoever builds a machine writes down
     * @param which   of an order, the machine
     */
    public record Sheet(int machines, Optional<Which> which, Machine machine, List<Pick> picks, List<Pulled> pulled,
            Optional<BoardView> before, BoardView board, Work work, Expected expected, List<Fields> records) {

        public Sheet {
            picks = List.copyOf(picks);
            pulled = List.copyOf(pulled);
            records = List.copyOf(records);
        }
    }

    /**
     * A machine of an order.
     *
     * @param number from 1 within its line
     * @param of     how many of the line are built
     * @param berth  where it goes; empty where it is no sled or the enclosure is not bought
     */
    public record Which(String line, int number, int of, Optional<Berth> berth) {
    }

    /** A bay of an enclosure. */
    public record Berth(int enclosure, String sku, int bay) {
    }

    /**
     * What is fetched for all machines and enclosures, lot by lot, and which enclosures are filled with what.
     *
     * @param lots parts in the order in which a machine is put together
     */
    public record WholeOrder(List<Fetch> lots, List<Frame> frames) {

        public WholeOrder {
            lots = List.copyOf(lots);
            frames = List.copyOf(frames);
        }
    }

    /** Units of one lot, and for whom they are. */
    public record Fetch(Pick pick, List<Share> shares) {

        public Fetch {
            shares = List.copyOf(shares);
        }
    }

    /**
     * Machines of a line that take the same, or an enclosure.
     *
     * @param line  empty: it is an enclosure
     * @param each  units of each of them
     */
    public record Share(Optional<String> line, int first, int last, int each) {

        public int units() {
            return (last - first + 1) * each;
        }
    }

    /**
     * An enclosure to be filled.
     *
     * @param sleds the line and number of the machine in each bay, from the first bay
     */
    public record Frame(int number, String sku, String name, String supply, int supplies, List<Seat> sleds) {

        public Frame {
            sleds = List.copyOf(sleds);
        }
    }

    /** A machine in a bay. */
    public record Seat(int bay, String line, int machine) {
    }

    /**
     * What is done.
     *
     * @param handling how the parts are handled that the work touches
     * @param stages   in the order of the work; none where nothing is to be done
     */
    public record Work(List<String> handling, List<Stage> stages) {

        public Work {
            handling = List.copyOf(handling);
            stages = List.copyOf(stages);
        }
    }

    /** Fields to fill in, each under its label. */
    public record Fields(String title, List<String> labels) {

        public Fields {
            labels = List.copyOf(labels);
        }
    }

    /**
     * @param supply     empty where the enclosure feeds the machine
     * @param enclosures that are bought with the machines, in words; may be empty
     */
    public record Machine(String platform, String name, Optional<String> processor, int processors, Optional<String> cooling,
            Optional<String> supply, int supplies, String enclosures) {
    }

    /** Units from one lot. */
    public record Pick(String sku, String description, String lot, String supplier, int units) {
    }

    /** Units that leave the machines. */
    public record Pulled(String sku, String description, int units) {
    }

    /** A stretch of work; each step has a box to tick. */
    public record Stage(String title, List<String> steps) {

        public Stage {
            steps = List.copyOf(steps);
        }
    }

    /**
     * What one machine must show at its first start.
     *
     * @param mode     how the memory is used
     * @param usableGb what that leaves
     * @param loadW    load as the rules count it
     * @param wallW    from the mains; empty where it is not known
     * @param channels what each populated channel holds
     * @param volumes  the drives by what they serve
     * @param cards    slot -> part number
     */
    public record Expected(int processors, int cores, int modules, int memoryGb, double usableGb, String mode, int memoryMts, double loadW,
                           OptionalDouble wallW, List<Channel> channels, List<Drives> volumes, SortedMap<String, String> cards) {

        public Expected {
            channels = List.copyOf(channels);
            volumes = List.copyOf(volumes);
            cards = Collections.unmodifiableSortedMap(new TreeMap<>(cards));
        }
    }

    /** Drives of one volume. */
    public record Drives(String volume, int level, int drives, int hotSpares, double capacityGb, double usableGb) {
    }

    /** @param name such as {@code 1A} */
    public record Channel(String name, int modules, int capacityGb) {
    }

    public SheetView {
        sheets = List.copyOf(sheets);
        cautions = List.copyOf(cautions);
    }
}
