package sledwright.report.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import sledwright.domain.CardSlot;
import sledwright.report.sheet.BoardView.State;
import sledwright.report.sheet.EquipmentView.Bays;
import sledwright.report.sheet.EquipmentView.CardPlace;
import sledwright.report.sheet.EquipmentView.Gone;
import sledwright.report.sheet.EquipmentView.Seat;
import sledwright.report.sheet.Shape.Area;
import sledwright.report.sheet.Shape.Look;
import sledwright.report.sheet.Shape.Words;

/**
 * Bays and slots for cards below the sockets of a board: a strip for each group of bays and one for the slots, four to six places in a
 * row.
 */
final class EquipmentDrawing {

    private static final int LEAST_IN_A_ROW = 4;
    private static final int MOST_IN_A_ROW = 6;
    private static final double STRIP = 62;
    private static final double SIZE = BoardTexts.SMALLEST;
    private static final double NAME_SIZE = 9.6;
    private static final double LINE = 12;
    private static final double DROP = 0.9;
    private static final double PADDING = BoardGrid.CELL_PADDING;

    /** What stands in one place, line by line. */
    private record Cell(String name, String mark, State state, List<String> lines, Optional<Gone> gone) {

        double width(Map<String, String> names) {
            double leaves = gone.map(part -> TextWidth.of(names.get(part.sku()), SIZE, false) + BoardTexts.GAP + markWidth(part.mark()))
                    .orElse(0.0);
            double head = TextWidth.of(name, NAME_SIZE, true) + (mark.isEmpty() ? 0 : BoardTexts.GAP + markWidth(mark));
            return lines.stream().mapToDouble(line -> TextWidth.of(line, SIZE, false)).reduce(Math.max(head, leaves), Math::max);
        }
    }

    private final Map<String, String> names;
    private final int inARow;
    private final List<Shape> shapes = new ArrayList<>();
    private double y;

    private EquipmentDrawing(EquipmentView view, Map<String, String> names, double top) {
        this.names = names;
        y = top;
        double widest = Stream.concat(view.bays().stream().flatMap(group -> EquipmentView.runs(group).stream().map(this::cell)),
                view.cards().stream().map(this::cell)).mapToDouble(cell -> cell.width(names)).max().orElse(0);
        int columns = MOST_IN_A_ROW;
        while (columns > LEAST_IN_A_ROW && widest > room(columns)) {
            columns--;
        }
        inARow = columns;
    }

    private static double width(int columns) {
        return (BoardGrid.WIDTH - 4 * BoardGrid.MARGIN - STRIP) / columns - BoardGrid.SLOT_GAP;
    }

    /** What a place has for its words. */
    private static double room(int columns) {
        return width(columns) - 2 * PADDING;
    }

    /** Whether any place has room for the part number. */
    static boolean fits(String sku) {
        return TextWidth.of(sku, SIZE, false) <= room(LEAST_IN_A_ROW);
    }

    /**
     * @param names part number -> what stands for it
     * @param to    takes what is drawn
     * @return where the drawing ends
     */
    static double draw(EquipmentView view, Map<String, String> names, double top, List<Shape> to) {
        EquipmentDrawing drawing = new EquipmentDrawing(view, names, top + BoardGrid.MARGIN);
        view.bays().stream().filter(Bays::isUsed).forEach(drawing::bays);
        if (!view.cards().isEmpty()) {
            drawing.strip("Cards", "", view.cards().stream().map(drawing::cell).toList());
        }
        to.add(new Area(new Box(1, top + 1, BoardGrid.WIDTH - 2, drawing.y - top - 2), Look.BOARD));
        to.addAll(drawing.shapes);
        return drawing.y;
    }

    private void bays(Bays group) {
        strip("Bays " + group.group(), group.socket().isPresent() ? "of socket " + group.socket().getAsInt() : "",
                EquipmentView.runs(group).stream().map(this::cell).toList());
    }

    private Cell cell(List<Seat> run) {
        Seat seat = run.get(0);
        List<String> lines = seat.drive().map(drive -> List.of(names.get(drive.sku()), seat.volume() + (seat.hotSpare() ? ", spare" : "")))
                .orElse(List.of(seat.state().label()));
        String name = run.size() == 1 ? seat.bay() : "%s to %s".formatted(seat.number(), run.get(run.size() - 1).number());
        return new Cell(name, seat.mark(), seat.state(), lines, seat.gone());
    }

    private Cell cell(CardPlace place) {
        CardSlot slot = place.slot();
        List<String> lines = new ArrayList<>(List.of(place.card().map(card -> names.get(card.sku())).orElse(place.state().label())));
        lines.add("x" + slot.offers().lanes() + (slot.socket().isPresent() ? ", socket " + slot.socket().getAsInt() : ""));
        slot.riser().ifPresent(riser -> lines.add("on a riser"));
        return new Cell(slot.name(), place.mark(), place.state(), lines, place.gone());
    }

    private void strip(String name, String about, List<Cell> cells) {
        double x = 2 * BoardGrid.MARGIN;
        double room = STRIP - BoardGrid.MARGIN;
        shapes.add(Words.of(TextWidth.within(name, NAME_SIZE, true, room), x, y + 3, NAME_SIZE, true));
        if (!about.isEmpty()) {
            shapes.add(Words.of(TextWidth.within(about, SIZE, false, room), x, y + 4 + LINE, SIZE, false));
        }
        for (int from = 0; from < cells.size(); from += inARow) {
            List<Cell> row = cells.subList(from, Math.min(cells.size(), from + inARow));
            int lines = row.stream().mapToInt(EquipmentDrawing::lines).max().orElseThrow();
            double height = Math.max(lines * LINE + 5, from == 0 && !about.isEmpty() ? 2 * LINE + 5 : 0);
            for (int i = 0; i < row.size(); i++) {
                cell(row.get(i), new Box(x + STRIP + i * (width(inARow) + BoardGrid.SLOT_GAP), y, width(inARow), height));
            }
            y += height + BoardGrid.SLOT_GAP;
        }
        y += BoardGrid.SLOT_GAP;
    }

    private static int lines(Cell cell) {
        return 1 + cell.lines().size() + cell.gone().map(gone -> 1).orElse(0);
    }

    private void cell(Cell cell, Box box) {
        shapes.add(new Area(box, switch (cell.state()) {
            case FILLED -> Look.FILLED;
            case NO_PROCESSOR -> Look.NO_PROCESSOR;
            case EMPTY, COVERED -> Look.EMPTY;
        }));
        Box inner = box.inset(PADDING, 3);
        double top = inner.y();
        double marked = cell.mark().isEmpty() ? 0 : markWidth(cell.mark()) + BoardTexts.GAP;
        Words name = Words.of(TextWidth.within(cell.name(), NAME_SIZE, true, inner.width() - marked), inner.x(), top, NAME_SIZE, true);
        shapes.add(name);
        mark(cell.mark(), name.box().right() + BoardTexts.GAP, top, inner.right());
        for (String line : cell.lines()) {
            top += LINE;
            shapes.add(Words.of(TextWidth.within(line, SIZE, false, inner.width()), inner.x(), top, SIZE, false));
        }
        if (cell.gone().isPresent()) {
            Gone gone = cell.gone().get();
            double room = inner.width() - markWidth(gone.mark()) - BoardTexts.GAP;
            Words sku = Words.of(TextWidth.within(names.get(gone.sku()), SIZE, false, room), inner.x(), top + LINE, SIZE, false);
            shapes.add(sku);
            mark(gone.mark(), sku.box().right() + BoardTexts.GAP, top + LINE, inner.right());
        }
    }

    private static double markWidth(String mark) {
        return Math.min(width(LEAST_IN_A_ROW) / 2, TextWidth.of(BoardTexts.drawn(mark), SIZE, true) + 6);
    }

    private void mark(String mark, double x, double top, double right) {
        if (!mark.isEmpty()) {
            shapes.addAll(BoardDrawing.tag(TextWidth.within(BoardTexts.drawn(mark), SIZE, true, right - x - 6), x, top, SIZE, DROP));
        }
    }
}
