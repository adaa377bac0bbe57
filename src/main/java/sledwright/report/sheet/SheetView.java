package sledwright.report.sheet;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;
import sledwright.desk.view.BareMachine;
import sledwright.domain.Labelled;

/**
 * What the bench needs: a sheet for each kind of machine. It says nothing of prices.
 *
 * @param request  name of the request or build
 * @param source   what the sheet is made from
 * @param rank     of the alternative, where it is one of a quote
 * @param sheets   one for each kind of machine, the heaviest first; of an order one for each machine, line by line
 * @param order    what stands before the sheets of an order; empty: they are no order's
 * @param notice   what to settle before any work; empty: nothing
 */
public record SheetView(String request, Source source, OptionalInt rank, List<Sheet> sheets, Optional<WholeOrder> order,
                        Optional<String> notice) {

    /** What a sheet is made from. */
    public enum Source implements Labelled {
        BUILD, QUOTE, UPGRADE, ORDER;
    }

    /**
     * The work on a number of machines that are alike.
     *
     * @param which   of an order, the machine
     * @param machine what it is put together from
     * @param moved   of all these machines
     * @param work    on one machine
     */
    public record Sheet(int machines, Optional<Which> which, Machine machine, Moved moved, Boards boards, Work work, Checked checked) {
    }

    /** What goes in, by lot, and what comes out. */
    public record Moved(List<Pick> picks, List<Pulled> pulled) {

        public Moved {
            picks = List.copyOf(picks);
            pulled = List.copyOf(pulled);
        }
    }

    /**
     * The board as the work finds and leaves it.
     *
     * @param before empty: the machine is put together from nothing
     */
    public record Boards(Optional<BoardView> before, BoardView after) {
    }

    /** What is compared and what is written down when the work is done. */
    public record Checked(Expected expected, List<Fields> records) {

        public Checked {
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

    /** @param enclosures that are bought with the machines, in words; may be empty */
    public record Machine(BareMachine bare, String enclosures) {
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
     * @param loadW   load as the rules count it
     * @param wallW   from the mains; empty where it is not known
     * @param volumes the drives by what they serve
     * @param cards   slot -> part number
     */
    public record Expected(int processors, int cores, ExpectedMemory memory, double loadW, OptionalDouble wallW, List<Drives> volumes,
                           SortedMap<String, String> cards) {

        public Expected {
            volumes = List.copyOf(volumes);
            cards = Collections.unmodifiableSortedMap(new TreeMap<>(cards));
        }
    }

    /**
     * The memory of one machine.
     *
     * @param mode     how it is used
     * @param usableGb what that leaves
     * @param channels what each populated channel holds
     */
    public record ExpectedMemory(int modules, int capacityGb, double usableGb, String mode, int mts, List<Channel> channels) {

        public ExpectedMemory {
            channels = List.copyOf(channels);
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
    }

    /** All machines together. */
    public int machines() {
        return sheets.stream().mapToInt(Sheet::machines).sum();
    }

    /** Sentences to read before. */
    public List<String> cautions() {
        return Sheets.CAUTIONS;
    }
}
