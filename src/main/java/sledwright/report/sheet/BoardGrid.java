package sledwright.report.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import sledwright.report.sheet.BoardTexts.Item;

/**
 * How a board is spread over the width of a drawing: how many sockets stand side by side, in how many banks the channels of a socket
 * stand, how the text of a slot breaks into lines, and how large it is. Of all ways in which every text fits the lowest is taken.
 *
 * @param board      one of the boards, which are alike in shape
 * @param sideBySide sockets in a row
 * @param banks      columns of channels in a socket
 * @param style      lines of a slot's text
 */
record BoardGrid(BoardView board, BoardTexts texts, int sideBySide, int banks, List<List<Item>> style) {

    static final double WIDTH = 680;
    static final double MARGIN = 5;
    /** Between sockets, and between banks of channels. */
    static final double GUTTER = 6;
    static final double PANEL_PADDING = 5;
    static final double PLATE_HEIGHT = 34;
    /** Between slots, both ways. */
    static final double SLOT_GAP = 4;
    static final double CELL_PADDING = 3.5;

    private static final double WIDEST_CELL = 190;
    private static final int MOST_SIDE_BY_SIDE = 4;
    private static final int MOST_BANKS = 6;
    private static final List<Double> SCALES = List.of(1.0, 0.9, 0.8);
    /** What text at no size at all would cost in height, for easy reading. */
    private static final double COST_OF_SMALLER = 500;

    /** From one line of everything to a line for each. */
    private static final List<List<List<Item>>> STYLES = List.of(
            List.of(List.of(Item.NAME, Item.CAPACITY, Item.PART, Item.MARK)),
            List.of(List.of(Item.NAME, Item.CAPACITY), List.of(Item.PART, Item.MARK)),
            List.of(List.of(Item.NAME, Item.CAPACITY, Item.MARK), List.of(Item.PART)),
            List.of(List.of(Item.NAME, Item.CAPACITY), List.of(Item.PART), List.of(Item.MARK)),
            List.of(List.of(Item.NAME), List.of(Item.CAPACITY, Item.MARK), List.of(Item.PART)),
            List.of(List.of(Item.NAME), List.of(Item.CAPACITY), List.of(Item.PART), List.of(Item.MARK)));

    /**
     * The best way for boards that have equally many sockets, channels and slots, the same for all so that they can be compared.
     *
     * @param names part number -> what stands for it in a slot
     */
    static BoardGrid of(List<BoardView> boards, Map<String, String> names) {
        BoardView board = boards.get(0);
        List<BoardGrid> grids = new ArrayList<>();
        for (double scale : SCALES) {
            BoardTexts texts = new BoardTexts(boards, names, scale);
            for (int side = 1; side <= Math.min(MOST_SIDE_BY_SIDE, board.sockets().size()); side++) {
                for (int banks = 1; banks <= Math.min(MOST_BANKS, board.channels()); banks++) {
                    for (List<List<Item>> style : styles(texts)) {
                        grids.add(new BoardGrid(board, texts, side, banks, style));
                    }
                }
            }
        }
        grids.removeIf(BoardGrid::hasEmptyBank);
        Comparator<BoardGrid> cheapest = Comparator.comparingDouble(BoardGrid::cost);
        return grids.stream().filter(BoardGrid::fits).min(cheapest)
                .orElseGet(() -> grids.stream().min(Comparator.comparingDouble(BoardGrid::lacking).thenComparing(cheapest)).orElseThrow());
    }

    /** The styles without what no slot shows. */
    private static List<List<List<Item>>> styles(BoardTexts texts) {
        return STYLES.stream().map(lines -> lines.stream().map(line -> line.stream().filter(item -> texts.width(item) > 0).toList())
                .filter(line -> !line.isEmpty()).toList()).distinct().toList();
    }

    private boolean hasEmptyBank() {
        return (banks - 1) * rows() >= board.channels();
    }

    /** The height, and what is paid in reading. */
    double cost() {
        return height() + (1 - texts.scale()) * COST_OF_SMALLER;
    }

    boolean fits() {
        return lacking() <= 0;
    }

    /** By how much the widest text is wider than its room. */
    private double lacking() {
        double plate = PLATE_HEIGHT + texts.plateWidth() + CELL_PADDING;
        return Math.max(neededCellWidth() - cellWidth(), plate - (panelWidth() - 2 * PANEL_PADDING));
    }

    private double neededCellWidth() {
        double lines = style.stream().mapToDouble(line -> line.stream().mapToDouble(texts::width).sum()
                + (line.size() - 1) * BoardTexts.GAP).max().orElseThrow();
        double word = isOneLine() && texts.wordWidth() > 0 ? texts.width(Item.NAME) + BoardTexts.GAP + texts.wordWidth()
                : texts.wordWidth();
        return Math.max(lines, word) + 2 * CELL_PADDING;
    }

    boolean isOneLine() {
        return style.size() == 1;
    }

    double cellHeight() {
        return style.size() * texts.lineHeight() + 5;
    }

    double cellWidth() {
        double room = (panelWidth() - 2 * PANEL_PADDING - (banks - 1) * GUTTER) / banks - stripWidth();
        return Math.min(WIDEST_CELL, room / board.slotsPerChannel() - SLOT_GAP);
    }

    /** The name of a channel and what it holds, left of its slots. */
    double stripWidth() {
        return texts.stripWidth(isOneLine());
    }

    int rows() {
        return (board.channels() + banks - 1) / banks;
    }

    double panelWidth() {
        return (WIDTH - 2 * MARGIN - (sideBySide - 1) * GUTTER) / sideBySide;
    }

    double bankWidth() {
        return stripWidth() + board.slotsPerChannel() * (cellWidth() + SLOT_GAP);
    }

    double panelHeight() {
        return 2 * PANEL_PADDING + PLATE_HEIGHT + rows() * (cellHeight() + SLOT_GAP);
    }

    private int panelRows() {
        return (board.sockets().size() + sideBySide - 1) / sideBySide;
    }

    double height() {
        return 2 * MARGIN + panelRows() * panelHeight() + (panelRows() - 1) * GUTTER;
    }
}
