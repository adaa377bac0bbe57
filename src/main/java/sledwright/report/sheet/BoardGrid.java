package sledwright.report.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import sledwright.domain.MemoryModule;
import sledwright.report.sheet.BoardView.Channel;
import sledwright.report.sheet.BoardView.Fitted;
import sledwright.report.sheet.BoardView.Place;
import sledwright.report.sheet.BoardView.Socket;
import sledwright.report.sheet.BoardView.State;

/**
 * How a board is spread over the width of a drawing: how many sockets stand side by side, in how many banks the channels of a socket
 * stand, how the text of a slot breaks into lines, and how large it is. Of all ways in which every text fits the lowest is taken.
 */
final class BoardGrid {

    static final double WIDTH = 680;
    static final double MARGIN = 5;
    /** Between sockets, and between banks of channels. */
    static final double GUTTER = 6;
    static final double PANEL_PADDING = 5;
    static final double PLATE_HEIGHT = 34;
    /** Between slots, both ways. */
    static final double SLOT_GAP = 4;
    static final double CELL_PADDING = 3.5;
    /** Between texts that stand side by side. */
    static final double WORD_GAP = 5;
    static final String PROCESSOR = "processor ";
    static final String HEAT_SINK = "heat sink ";

    private static final double WIDEST_CELL = 190;
    private static final double LINE = 13.5;
    private static final int MOST_SIDE_BY_SIDE = 4;
    private static final int MOST_BANKS = 6;
    private static final List<Double> SCALES = List.of(1.0, 0.9, 0.8);
    /** What text that is a tenth smaller costs in height, for easy reading. */
    private static final double COST_OF_SMALLER = 50;

    /** What a filled slot shows. */
    enum Item {
        NAME, CAPACITY, PART, MARK
    }

    /** Lines of a slot's text, from one line of everything to a line for each. */
    private static final List<List<List<Item>>> STYLES = List.of(
            List.of(List.of(Item.NAME, Item.CAPACITY, Item.PART, Item.MARK)),
            List.of(List.of(Item.NAME, Item.CAPACITY), List.of(Item.PART, Item.MARK)),
            List.of(List.of(Item.NAME, Item.CAPACITY, Item.MARK), List.of(Item.PART)),
            List.of(List.of(Item.NAME, Item.CAPACITY), List.of(Item.PART), List.of(Item.MARK)),
            List.of(List.of(Item.NAME), List.of(Item.CAPACITY, Item.MARK), List.of(Item.PART)),
            List.of(List.of(Item.NAME), List.of(Item.CAPACITY), List.of(Item.PART), List.of(Item.MARK)));

    private final List<BoardView> boards;
    private final Map<String, String> names;
    private final int sideBySide;
    private final int banks;
    private final List<List<Item>> style;
    private final double scale;

    private BoardGrid(List<BoardView> boards, Map<String, String> names, int sideBySide, int banks, List<List<Item>> style, double scale) {
        this.boards = boards;
        this.names = names;
        this.sideBySide = sideBySide;
        this.banks = banks;
        this.style = style;
        this.scale = scale;
    }

    /**
     * The best way for boards that have equally many sockets, channels and slots, the same for all so that they can be compared.
     *
     * @param names part number -> what stands for it in a slot
     */
    static BoardGrid of(List<BoardView> boards, Map<String, String> names) {
        BoardView board = boards.get(0);
        boolean marked = boards.stream().flatMap(one -> one.places().stream()).anyMatch(place -> !place.mark().isEmpty());
        List<List<List<Item>>> styles = STYLES.stream().map(lines -> marked ? lines : lines.stream()
                .map(line -> line.stream().filter(item -> item != Item.MARK).toList()).filter(line -> !line.isEmpty()).toList()).distinct().toList();
        List<BoardGrid> grids = new ArrayList<>();
        for (int side = 1; side <= Math.min(MOST_SIDE_BY_SIDE, board.sockets().size()); side++) {
            for (int banks = 1; banks <= Math.min(MOST_BANKS, board.channels()); banks++) {
                for (List<List<Item>> style : styles) {
                    for (double scale : SCALES) {
                        BoardGrid grid = new BoardGrid(boards, names, side, banks, style, scale);
                        if ((banks - 1) * grid.rows() < board.channels()) {
                            grids.add(grid);
                        }
                    }
                }
            }
        }
        Comparator<BoardGrid> cheapest = Comparator.comparingDouble(BoardGrid::cost);
        return grids.stream().filter(BoardGrid::fits).min(cheapest)
                .orElseGet(() -> grids.stream().min(Comparator.comparingDouble(BoardGrid::lacking).thenComparing(cheapest)).orElseThrow());
    }

    /** The height, and what is paid in reading. */
    double cost() {
        return height() + (1 - scale) * 10 * COST_OF_SMALLER;
    }

    boolean fits() {
        return lacking() <= 0;
    }

    /** By how much the widest text is wider than its room. */
    private double lacking() {
        double cell = neededCellWidth() - cellWidth();
        double plate = sockets().mapToDouble(this::neededPlateWidth).max().orElseThrow() - (panelWidth() - 2 * PANEL_PADDING);
        return Math.max(cell, plate);
    }

    private BoardView board() {
        return boards.get(0);
    }

    private Stream<Socket> sockets() {
        return boards.stream().flatMap(board -> board.sockets().stream());
    }

    private Stream<Place> places() {
        return boards.stream().flatMap(board -> board.places().stream());
    }

    private double neededPlateWidth(Socket socket) {
        double parts = Stream.concat(socket.processor().map(part -> fittedWidth(PROCESSOR, part)).stream(),
                        socket.heatSink().map(part -> fittedWidth(HEAT_SINK, part)).stream()).mapToDouble(width -> width).max()
                .orElse(TextWidth.of(BoardDrawing.LEAVE_EMPTY, partSize(), false));
        return PLATE_HEIGHT + socketWidth(socket) + WORD_GAP + parts + CELL_PADDING;
    }

    double socketWidth(Socket socket) {
        return TextWidth.of("Socket " + socket.number(), nameSize(), true);
    }

    private double fittedWidth(String kind, Fitted part) {
        return TextWidth.of(kind + part.sku(), partSize(), false) + (part.mark().isEmpty() ? 0 : WORD_GAP + tagWidth(part.mark()));
    }

    private double neededCellWidth() {
        double lines = style.stream().mapToDouble(line -> line.stream().mapToDouble(item -> itemWidth(item) + WORD_GAP).sum() - WORD_GAP).max().orElseThrow();
        double word = places().filter(place -> place.state() != State.FILLED)
                .mapToDouble(place -> TextWidth.of(place.state().label(), partSize(), false)).max().orElse(0);
        double worded = style.size() == 1 && word > 0 ? itemWidth(Item.NAME) + WORD_GAP + word : word;
        return Math.max(lines, worded) + 2 * CELL_PADDING;
    }

    /** The widest that any slot shows of an item. */
    double itemWidth(Item item) {
        return places().mapToDouble(place -> width(item, place)).max().orElseThrow();
    }

    private double width(Item item, Place place) {
        return switch (item) {
            case NAME -> badgeWidth() + TextWidth.of(place.name(), nameSize(), true);
            case CAPACITY -> place.module().map(module -> TextWidth.of(capacity(module), nameSize(), true)).orElse(0.0);
            case PART -> place.module().map(module -> TextWidth.of(names.get(module.sku()), partSize(), false)).orElse(0.0);
            case MARK -> place.mark().isEmpty() ? 0 : tagWidth(place.mark());
        };
    }

    static String capacity(MemoryModule module) {
        return module.capacityGb() + " GB";
    }

    String name(MemoryModule module) {
        return names.get(module.sku());
    }

    /** Room for a number in a circle and the gap behind it; none where no slot is numbered. */
    double badgeWidth() {
        return boards.stream().anyMatch(BoardView::isNumbered) ? badgeSize() + 2 : 0;
    }

    double badgeSize() {
        return 13 * scale;
    }

    double badgeFont() {
        return 7.5 * scale;
    }

    double tagWidth(String mark) {
        return TextWidth.of(mark, tagFont(), true) + 6;
    }

    double tagFont() {
        return 7.5 * scale;
    }

    double nameSize() {
        return 10 * scale;
    }

    double partSize() {
        return 8.8 * scale;
    }

    List<List<Item>> style() {
        return style;
    }

    double lineHeight() {
        return LINE * scale;
    }

    double cellHeight() {
        return style.size() * lineHeight() + 5;
    }

    double cellWidth() {
        double room = (panelWidth() - 2 * PANEL_PADDING - (banks - 1) * GUTTER) / banks - stripWidth();
        return Math.min(WIDEST_CELL, room / board().slotsPerChannel() - SLOT_GAP);
    }

    /** The name of a channel and what it holds, left of its slots. */
    double stripWidth() {
        double widest = 0;
        for (Socket socket : sockets().toList()) {
            for (Channel channel : socket.channels()) {
                List<String> sums = sums(channel);
                double first = TextWidth.of(channel.name(), nameSize(), true) + sums.stream().limit(1)
                        .mapToDouble(sum -> WORD_GAP + TextWidth.of(sum, partSize(), false)).sum();
                double rest = sums.stream().skip(1).mapToDouble(sum -> TextWidth.of(sum, partSize(), false)).max().orElse(0);
                widest = Math.max(widest, Math.max(first, rest));
            }
        }
        return widest + WORD_GAP;
    }

    /** How many slots of a channel hold modules, and how much these are, a line each; in a single line where its slots have one. */
    List<String> sums(Channel channel) {
        if (channel.modules() == 0) {
            return List.of();
        }
        String modules = "%d of %d".formatted(channel.modules(), channel.slots().size());
        String capacity = channel.capacityGb() + " GB";
        return style.size() == 1 ? List.of(modules + ", " + capacity) : List.of(modules, capacity);
    }

    int rows() {
        return (board().channels() + banks - 1) / banks;
    }

    int sideBySide() {
        return sideBySide;
    }

    int banks() {
        return banks;
    }

    double panelWidth() {
        return (WIDTH - 2 * MARGIN - (sideBySide - 1) * GUTTER) / sideBySide;
    }

    double bankWidth() {
        return stripWidth() + board().slotsPerChannel() * (cellWidth() + SLOT_GAP);
    }

    double panelHeight() {
        return 2 * PANEL_PADDING + PLATE_HEIGHT + rows() * (cellHeight() + SLOT_GAP);
    }

    int panelRows() {
        return (board().sockets().size() + sideBySide - 1) / sideBySide;
    }

    double height() {
        return 2 * MARGIN + panelRows() * panelHeight() + (panelRows() - 1) * GUTTER;
    }
}
