package sledwright.report.sheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sledwright.desk.view.SlotMap;
import sledwright.domain.Board;
import sledwright.domain.Build;
import sledwright.domain.MemoryModule;
import sledwright.planner.upgrade.BenchStep;
import sledwright.planner.upgrade.BenchStep.Action;
import sledwright.planner.upgrade.BenchStep.Part;

/**
 * A board as it is drawn: its sockets, their channels and slots in board order.
 *
 * @param firstSlot words for the bench: which slot of a channel is its first; may be empty
 * @param equipment where drives and cards sit
 */
public record BoardView(List<Socket> sockets, String firstSlot, EquipmentView equipment) {

    /** How marks begin that name another place. */
    static final String TO = "TO ";
    static final String FROM = "FROM ";

    /** Which end of the work is drawn. */
    public enum Side {
        BEFORE, AFTER
    }

    /** What a slot is to the hands. */
    public enum State {
        FILLED, EMPTY, COVERED, NO_PROCESSOR;

        public String label() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /**
     * A part that is fitted.
     *
     * @param mark what is done with it, in few letters, such as {@code OUT} or {@code FROM 1A1}; may be empty
     */
    public record Fitted(String sku, String mark) {
    }

    /**
     * One processor socket.
     *
     * @param number    from 1
     * @param processor empty: none is fitted
     * @param gone      the processor and the heat sink that stand there before the work, on a board that shows both ends of it
     */
    public record Socket(int number, Optional<Fitted> processor, Optional<Fitted> heatSink, List<Channel> channels, Gone gone) {
    }

    /** What leaves a socket. */
    public record Gone(Optional<Fitted> processor, Optional<Fitted> heatSink) {

        static final Gone NOTHING = new Gone(Optional.empty(), Optional.empty());
    }

    /** A module that leaves a slot; the mark as of {@link Fitted}. */
    public record Leaving(MemoryModule module, String mark) {
    }

    /**
     * One channel.
     *
     * @param name such as {@code 1A}
     */
    public record Channel(String name, List<Place> slots) {

        /** Modules on it. */
        public int modules() {
            return (int) slots.stream().filter(slot -> slot.module().isPresent()).count();
        }

        public int capacityGb() {
            return slots.stream().flatMap(slot -> slot.module().stream()).mapToInt(MemoryModule::capacityGb).sum();
        }
    }

    /**
     * One slot.
     *
     * @param name   the board's own
     * @param module what it holds; a slot that is not {@link State#FILLED} holds none, and one that is may still be covered in a machine
     *               that breaks a rule before it is changed
     * @param order  when its module goes in, counted from 1 in each socket; empty: it does not
     * @param mark   as of {@link Fitted}
     * @param gone   what stands there before the work, on a board that shows both ends of it
     */
    public record Place(String name, State state, Optional<MemoryModule> module, OptionalInt order, String mark, Optional<Leaving> gone) {
    }

    public BoardView {
        sockets = List.copyOf(sockets);
    }

    /** A machine that is put together from nothing. */
    static BoardView of(Build build, List<BenchStep> steps) {
        return new Reader(build, steps, Side.AFTER, false).board();
    }

    /** A machine that is changed, before or after it. */
    static BoardView of(Build build, List<BenchStep> steps, Side side) {
        return new Reader(build, steps, side, true).board();
    }

    /** The board after the work, and in each place what leaves it. */
    static BoardView ofBoth(BoardView before, BoardView after) {
        List<Socket> sockets = new ArrayList<>();
        for (int i = 0; i < after.sockets.size(); i++) {
            Socket old = before.sockets.get(i);
            Socket now = after.sockets.get(i);
            boolean back = old.heatSink.map(Fitted::sku).equals(now.heatSink.map(Fitted::sku));
            Optional<Fitted> sink = back ? now.heatSink.map(part ->
                    new Fitted(part.sku(), both(old.heatSink.orElseThrow().mark(), part.mark())))
                    : now.heatSink;
            Gone gone = new Gone(leaving(old.processor), back ? Optional.empty() : leaving(old.heatSink));
            List<Channel> channels = new ArrayList<>();
            for (int c = 0; c < now.channels.size(); c++) {
                channels.add(ofBoth(old.channels.get(c), now.channels.get(c)));
            }
            sockets.add(new Socket(now.number, now.processor, sink, channels, gone));
        }
        return new BoardView(sockets, after.firstSlot, EquipmentView.ofBoth(before.equipment, after.equipment));
    }

    private static String both(String before, String after) {
        return Stream.of(before, after).filter(mark -> !mark.isEmpty()).collect(Collectors.joining(", "));
    }

    private static Optional<Fitted> leaving(Optional<Fitted> part) {
        return part.filter(fitted -> !fitted.mark().isEmpty());
    }

    private static Channel ofBoth(Channel before, Channel after) {
        List<Place> slots = new ArrayList<>();
        for (int i = 0; i < after.slots.size(); i++) {
            Place old = before.slots.get(i);
            Place now = after.slots.get(i);
            Optional<Leaving> gone = old.mark.isEmpty() ? Optional.empty() : Optional.of(new Leaving(old.module.orElseThrow(), old.mark));
            slots.add(new Place(now.name, now.state, now.module, now.order, now.mark, gone));
        }
        return new Channel(after.name, slots);
    }

    /** Channels of one socket. */
    public int channels() {
        return sockets.get(0).channels().size();
    }

    public int slotsPerChannel() {
        return sockets.get(0).channels().get(0).slots().size();
    }

    /** All slots in board order. */
    public List<Place> places() {
        return sockets.stream().flatMap(socket -> socket.channels().stream()).flatMap(channel -> channel.slots().stream()).toList();
    }

    /** The modules by part number, the first in the order of slots first. */
    public Map<String, MemoryModule> modules() {
        Map<String, MemoryModule> modules = new LinkedHashMap<>();
        places().forEach(place -> Stream.concat(place.module().stream(), place.gone().map(Leaving::module).stream())
                .forEach(module -> modules.putIfAbsent(module.sku(), module)));
        return modules;
    }

    /** Whether both ends of the work are shown. */
    public boolean isOfBoth() {
        return places().stream().anyMatch(place -> place.gone().isPresent())
                || equipment.seats().stream().anyMatch(seat -> seat.gone().isPresent() || !seat.mark().isEmpty())
                || equipment.cards().stream().anyMatch(place -> place.gone().isPresent() || !place.mark().isEmpty());
    }

    /** Whether any module is numbered in the order in which it goes in. */
    public boolean isNumbered() {
        return places().stream().anyMatch(place -> place.order().isPresent());
    }

    private static final class Reader {

        private final Build build;
        private final Side side;
        private final boolean marked;
        private final Map<String, BenchStep> modules = new HashMap<>();
        private final Map<String, BenchStep> processors = new HashMap<>();
        private final Map<String, BenchStep> heatSinks = new HashMap<>();
        private final Map<String, BenchStep> drives = new HashMap<>();
        private final Map<String, BenchStep> cards = new HashMap<>();
        private final Map<String, Integer> order = new HashMap<>();

        Reader(Build build, List<BenchStep> steps, Side side, boolean marked) {
            this.build = build;
            this.side = side;
            this.marked = marked;
            Board board = build.platform().board();
            Map<Integer, Integer> counts = new HashMap<>();
            for (BenchStep step : steps) {
                Optional<String> place = side == Side.BEFORE ? step.from() : step.to();
                place.ifPresent(name -> of(step.part()).put(name, step));
                if (side == Side.AFTER && step.part() == Part.MODULE && step.action() == Action.PUT_IN) {
                    String name = place.orElseThrow();
                    order.put(name, counts.merge(board.slot(name).orElseThrow().socket(), 1, Integer::sum));
                }
            }
        }

        private Map<String, BenchStep> of(Part part) {
            return switch (part) {
                case MODULE -> modules;
                case PROCESSOR -> processors;
                case HEAT_SINK -> heatSinks;
                case DRIVE -> drives;
                case CARD -> cards;
                case SUPPLY, CABLE, EXTRA -> new HashMap<>();
            };
        }

        BoardView board() {
            SlotMap map = SlotMap.of(build);
            List<Socket> sockets = new ArrayList<>();
            for (int number = 1; number <= map.sockets().size(); number++) {
                String name = "socket " + number;
                boolean fitted = number <= build.processors().size();
                int index = number - 1;
                sockets.add(new Socket(number,
                        fitted ? Optional.of(new Fitted(build.processors().get(index).sku(), mark(processors.get(name))))
                        : Optional.empty(), fitted ? Optional.of(new Fitted(build.cooling().sku(), mark(heatSinks.get(name))))
                        : Optional.empty(), map.sockets().get(index).stream().map(this::channel).toList(), Gone.NOTHING));
            }
            return new BoardView(sockets, map.fillSide(), EquipmentView.of(build, bay -> mark(drives.get(bay)),
                    slot -> mark(cards.get(slot))));
        }

        private Channel channel(SlotMap.Row row) {
            return new Channel(row.name(), row.cells().stream().map(this::place).toList());
        }

        private Place place(SlotMap.Cell cell) {
            Optional<MemoryModule> module = build.platform().board().slot(cell.name()).map(build.modules()::get);
            State state = module.isPresent() ? State.FILLED : !cell.fitted() ? State.NO_PROCESSOR : cell.covered() ? State.COVERED
                    : State.EMPTY;
            Integer number = order.get(cell.name());
            return new Place(cell.name(), state, module, number == null ? OptionalInt.empty() : OptionalInt.of(number),
                    module.isPresent() ? mark(modules.get(cell.name())) : "", Optional.empty());
        }

        private String mark(BenchStep step) {
            if (step == null || !marked) {
                return "";
            }
            return switch (step.action()) {
                case TAKE_OUT -> "OUT";
                case LAY_ASIDE -> "ASIDE";
                case PUT_IN -> "IN";
                case MOVE -> side == Side.BEFORE ? TO + step.to().orElseThrow() : FROM + step.from().orElseThrow();
            };
        }
    }
}
