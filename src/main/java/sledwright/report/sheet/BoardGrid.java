package sledwright.report.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import sledwright.report.sheet.BoardTexts.Item;

/**
 * How a board is spread over the width of a drawing: how many sockets stand side by side, in how many banks the channels of a socket
 * stand, and how the text of a slot breaks into lines. Of all ways in which every text fits the lowest is taken.
 *
 * @param board      one of the boards, which are alike in shape
 * @param sideBySide sockets in a row
 * @param banks      columns of channels in a socket
 * @param style      lines of a slot's text
 */
record BoardGrid(BoardView board, BoardTexts texts, int sideBySide, int banks, List<List<Item>> style) {

    /** On paper a unit is a point, and no text is smaller than it should be for hands that are at work. */
    static final double WIDTH = 540;
    /** Between the margins of A4 and of Letter. */
    static final double MOST_HEIGHT = 725;
    static final double MARGIN = 4;
    /** Between sockets, and between banks of channels. */
    static final double GUTTER = 5;
    static final double PANEL_PADDING = 4;
    /** Of a socket's head: the drawing of the processor, and as many lines as it takes. */
    static final double PLATE_SIDE = 28;
    /** Between slots, both ways. */
    static final double SLOT_GAP = 3;
    static final double CELL_PADDING = 3;

    /** Text is made smaller only where a page would not hold the boards otherwise. */
    private static final List<Double> SCALES = List.of(1.0, 0.9, 0.8, 0.7, 0.6);
    private static final double WIDEST_CELL = 170;
    private static final int MOST_SIDE_BY_SIDE = 4;
    private static final int MOST_BANKS = 6;

    /** From one line of everything to a line for each. */
    private static final List<List<List<Item>>> STYLES = List.of(
            List.of(List.of(Item.NAME, Item.CAPACITY, Item.PART, Item.MARK)),
            List.of(List.of(Item.NAME, Item.CAPACITY), List.of(Item.PART, Item.MARK)),
            List.of(List.of(Item.NAME, Item.CAPACITY, Item.MARK), List.of(Item.PART)),
            List.of(List.of(Item.NAME, Item.CAPACITY), List.of(Item.PART), List.of(Item.MARK)),
            List.of(List.of(Item.NAME), List.of(Item.CAPACITY, Item.MARK), List.of(Item.PART)),
            List.of(List.of(Item.NAME), List.of(Item.CAPACITY), List.of(Item.PART, Item.MARK)),
            List.of(List.of(Item.NAME), List.of(Item.CAPACITY), List.of(Item.PART), List.of(Item.MARK)));

    /**
     * The best way for boards that have equally many sockets, channels and slots, the same for all so that they can be compared.
     *
     * @param names part number -> what stands for it in a slot
     */
    static BoardGrid of(List<BoardView> boards, Map<String, String> names) {
        BoardGrid grid = of(boards, new BoardTexts(boards, names, 1));
        for (double scale : SCALES) {
            if (grid.height() > MOST_HEIGHT) {
                grid = of(boards, new BoardTexts(boards, names, scale));
            }
        }
        return grid;
    }

    private static BoardGrid of(List<BoardView> boards, BoardTexts texts) {
        BoardView board = boards.get(0);
        List<BoardGrid> grids = new ArrayList<>();
        for (int side = 1; side <= Math.min(MOST_SIDE_BY_SIDE, board.sockets().size()); side++) {
            for (int banks = 1; banks <= Math.min(MOST_BANKS, board.channels()); banks++) {
                for (List<List<Item>> style : styles(texts)) {
                    grids.add(new BoardGrid(board, texts, side, banks, style));
                }
            }
        }
        grids.removeIf(BoardGrid::hasEmptyBank);
        Comparator<BoardGrid> lowest = Comparator.comparingDouble(BoardGrid::height);
        return grids.stream().filter(BoardGrid::fits).min(lowest)
                .orElseGet(() -> grids.stream().min(Comparator.comparingDouble(BoardGrid::lacking).thenComparing(lowest)).orElseThrow());
    }

    /** The styles without what no slot shows. */
    private static List<List<List<Item>>> styles(BoardTexts texts) {
        return STYLES.stream().map(lines -> Stream.concat(lines.stream(), Stream.of(List.of(Item.GONE)))
                .map(line -> line.stream().filter(item -> texts.width(item) > 0).toList())
                .filter(line -> !line.isEmpty()).toList()).distinct().toList();
    }

    private boolean hasEmptyBank() {
        return (banks - 1) * rows() >= board.channels();
    }

    boolean fits() {
        return lacking() <= 0;
    }

    /** By how much the widest text is wider than its room. */
    private double lacking() {
        double plate = PLATE_SIDE + texts.plateWidth() + CELL_PADDING;
        return Math.max(neededCellWidth() - cellWidth(), plate - (panelWidth() - 2 * PANEL_PADDING));
    }

    private double neededCellWidth() {
        double lines = style.stream().mapToDouble(line -> line.stream().mapToDouble(texts::width).sum()
                + (line.size() - 1) * BoardTexts.GAP).max().orElseThrow();
        double word = isOneLine() && texts.wordWidth() > 0 ? texts.width(Item.NAME) + BoardTexts.GAP + texts.wordWidth()
                : texts.wordWidth();
        return Math.max(lines, word) + 2 * CELL_PADDING;
    }

    /** Whether all of a slot but what leaves it stands in one line. */
    boolean isOneLine() {
        return style.stream().filter(line -> !line.contains(Item.GONE)).count() == 1;
    }

    double plateHeight() {
        return Math.max(PLATE_SIDE, texts.plateLines() * texts.lineHeight() + 4);
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
        return 2 * PANEL_PADDING + plateHeight() + rows() * (cellHeight() + SLOT_GAP);
    }

    private int panelRows() {
        return (board.sockets().size() + sideBySide - 1) / sideBySide;
    }

    double height() {
        return 2 * MARGIN + panelRows() * panelHeight() + (panelRows() - 1) * GUTTER;
    }
}
