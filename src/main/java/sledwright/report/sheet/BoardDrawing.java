package sledwright.report.sheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import sledwright.domain.MemoryModule;
import sledwright.report.sheet.BoardTexts.Item;
import sledwright.report.sheet.BoardTexts.PlateLine;
import sledwright.report.sheet.BoardView.Channel;
import sledwright.report.sheet.BoardView.Place;
import sledwright.report.sheet.BoardView.Socket;
import sledwright.report.sheet.BoardView.State;
import sledwright.report.sheet.Shape.Area;
import sledwright.report.sheet.Shape.Look;
import sledwright.report.sheet.Shape.Words;
import sledwright.words.Sentences;

/**
 * Boards under each other, drawn from what the catalogue says of them. It shows which slots belong to which channel and socket, not where
 * on the board they are, which no catalogue knows.
 *
 * @param height of a drawing that is {@link BoardGrid#WIDTH} wide
 * @param slots  every slot of every board once, in board order
 */
public record BoardDrawing(double height, List<Shape> shapes, List<Slot> slots) {

    /** What a part number that must be looked up costs in height, for easy reading. */
    private static final double COST_OF_KEYS = 24;
    private static final double CAPTION_SIZE = 10;
    private static final double NOTE_SIZE = BoardTexts.SMALLEST;
    private static final double NOTE_LINE = 12;

    /**
     * A board with a line above it.
     *
     * @param caption may be empty
     */
    record Captioned(String caption, BoardView board) {
    }

    /**
     * A slot where it is drawn.
     *
     * @param shapes what is drawn in it
     */
    record Slot(Place place, Box box, List<Shape> shapes) {
    }

    /** The boards, one under the other. */
    static BoardDrawing of(List<Captioned> boards) {
        return new Pen(boards).drawing();
    }

    private static final class Pen {

        private final List<Captioned> boards;
        private final Map<String, MemoryModule> modules = new LinkedHashMap<>();
        /** Part numbers of drives and cards, or short keys for them. */
        private final Map<String, String> equipmentKeys = new LinkedHashMap<>();
        private final List<Shape> shapes = new ArrayList<>();
        private final List<Slot> slots = new ArrayList<>();
        private double y;

        Pen(List<Captioned> boards) {
            this.boards = boards;
            boards.forEach(one -> one.board().modules().forEach(modules::putIfAbsent));
            List<String> equipment = boards.stream().flatMap(one -> one.board().equipment().skus().stream()).distinct().toList();
            boolean whole = equipment.stream().allMatch(EquipmentDrawing::fits);
            equipment.forEach(sku -> equipmentKeys.put(sku, whole ? sku : "P" + (equipmentKeys.size() + 1)));
        }

        BoardDrawing drawing() {
            Map<String, String> full = new LinkedHashMap<>();
            Map<String, String> keys = new LinkedHashMap<>();
            modules.keySet().forEach(sku -> {
                full.put(sku, sku);
                keys.put(sku, "M" + (keys.size() + 1));
            });
            List<BoardGrid> named = grids(full);
            List<BoardGrid> keyed = grids(keys);
            boolean byName = named.stream().allMatch(BoardGrid::fits) && height(named) <= height(keyed) + COST_OF_KEYS + COST_OF_KEYS;
            List<BoardGrid> grids = byName ? named : keyed;
            for (int i = 0; i < boards.size(); i++) {
                draw(boards.get(i), grids.get(i));
            }
            equipmentKeys.forEach((sku, key) -> {
                if (!sku.equals(key)) {
                    note("%s: %s".formatted(key, sku));
                }
            });
            if (!byName) {
                keys.forEach((sku, key) -> note("%s: %s, %s".formatted(key, sku, kind(modules.get(sku)))));
            }
            note(String.join(" ", remarks()));
            return new BoardDrawing(y, List.copyOf(shapes), List.copyOf(slots));
        }

        private List<String> remarks() {
            List<String> remarks = new ArrayList<>();
            if (boards.stream().anyMatch(one -> one.board().isNumbered())) {
                remarks.add("Numbers in circles: the order in which the modules of a socket go in.");
            }
            if (boards.stream().anyMatch(one -> one.board().isOfBoth())) {
                remarks.add("OUT, ASIDE and \u2192 (goes to) mark what stands there now and leaves; "
                        + "IN and \u2190 (comes from) what comes; the rest stays.");
            }
            boards.stream().map(one -> one.board().firstSlot()).filter(words -> !words.isEmpty()).distinct()
                    .forEach(words -> remarks.add("First slot of a channel: " + words + "."));
            boards.stream().map(one -> one.board().equipment()).filter(equipment -> !equipment.isBlank())
                    .flatMap(equipment -> equipment.risers().entrySet().stream()).distinct()
                    .forEach(riser -> remarks.add("On riser %s: %s.".formatted(riser.getKey(), Sentences.list(riser.getValue()))));
            remarks.add("Not to scale: find the slots by the names on the board, not by their place in this drawing.");
            return remarks;
        }

        /** A grid for each board; boards of one shape share one. */
        private List<BoardGrid> grids(Map<String, String> names) {
            Map<List<Integer>, List<BoardView>> shapes = boards.stream().map(Captioned::board).collect(Collectors.groupingBy(Pen::shape));
            Map<List<Integer>, BoardGrid> grids = new HashMap<>();
            shapes.forEach((shape, alike) -> grids.put(shape, BoardGrid.of(alike, names)));
            return boards.stream().map(one -> grids.get(shape(one.board()))).toList();
        }

        private static List<Integer> shape(BoardView board) {
            return List.of(board.sockets().size(), board.channels(), board.slotsPerChannel());
        }

        private static double height(List<BoardGrid> grids) {
            return grids.stream().mapToDouble(BoardGrid::height).sum();
        }

        private static String kind(MemoryModule module) {
            return "%s at %s MT/s".formatted(module.kind(), module.speedMts());
        }

        private void note(String words) {
            double room = BoardGrid.WIDTH - 2 * BoardGrid.MARGIN;
            for (String line : lines(words, room)) {
                shapes.add(Words.of(line, BoardGrid.MARGIN, y, NOTE_SIZE, false));
                y += NOTE_LINE;
            }
        }

        private static List<String> lines(String words, double room) {
            List<String> lines = new ArrayList<>();
            StringBuilder line = new StringBuilder();
            for (String word : words.split(" ")) {
                if (line.length() > 0 && TextWidth.of(line + " " + word, NOTE_SIZE, false) > room) {
                    lines.add(line.toString());
                    line.setLength(0);
                }
                line.append(line.length() == 0 ? "" : " ").append(TextWidth.within(word, NOTE_SIZE, false, room));
            }
            lines.add(line.toString());
            return lines;
        }

        private void draw(Captioned one, BoardGrid grid) {
            if (!one.caption().isEmpty()) {
                String caption = TextWidth.within(one.caption(), CAPTION_SIZE, true, BoardGrid.WIDTH - 2 * BoardGrid.MARGIN);
                shapes.add(Words.of(caption, BoardGrid.MARGIN, y + 2, CAPTION_SIZE, true));
                y += CAPTION_SIZE * 1.6;
            }
            // Half of its line would stand outside.
            shapes.add(new Area(new Box(1, y + 1, BoardGrid.WIDTH - 2, grid.height() - 2), Look.BOARD));
            List<Socket> sockets = one.board().sockets();
            for (int i = 0; i < sockets.size(); i++) {
                double x = BoardGrid.MARGIN + i % grid.sideBySide() * (grid.panelWidth() + BoardGrid.GUTTER);
                double top = y + BoardGrid.MARGIN + i / grid.sideBySide() * (grid.panelHeight() + BoardGrid.GUTTER);
                socket(sockets.get(i), new Box(x, top, grid.panelWidth(), grid.panelHeight()), grid);
            }
            y += grid.height() + 4;
            if (!one.board().equipment().isBlank()) {
                y = EquipmentDrawing.draw(one.board().equipment(), equipmentKeys, y, shapes) + 4;
            }
        }

        private void socket(Socket socket, Box panel, BoardGrid grid) {
            shapes.add(new Area(panel, Look.PANEL));
            Box inner = panel.inset(BoardGrid.PANEL_PADDING, BoardGrid.PANEL_PADDING);
            plate(socket, inner, grid);
            double top = inner.y() + grid.plateHeight();
            for (int i = 0; i < socket.channels().size(); i++) {
                double x = inner.x() + i / grid.rows() * (grid.bankWidth() + BoardGrid.GUTTER);
                channel(socket.channels().get(i), x, top + i % grid.rows() * (grid.cellHeight() + BoardGrid.SLOT_GAP)
                        + BoardGrid.SLOT_GAP, grid);
            }
        }

        /** The socket's head: its number, the processor and the heat sink on it. */
        private void plate(Socket socket, Box inner, BoardGrid grid) {
            double side = BoardGrid.PLATE_SIDE - 8;
            shapes.add(new Area(new Box(inner.x() + 1, inner.y() + 1, side, side), socket.processor().isPresent() ? Look.PROCESSOR
                    : Look.NO_PROCESSOR_THERE));
            double x = inner.x() + BoardGrid.PLATE_SIDE;
            shapes.add(Words.of("Socket " + socket.number(), x, inner.y() + 1, grid.texts().nameSize(), true));
            x += grid.texts().socketWidth(socket) + BoardTexts.GAP;
            List<PlateLine> lines = BoardTexts.plateLines(socket);
            for (int line = 0; line < lines.size(); line++) {
                plateLine(lines.get(line), x, inner.y() + 2 + line * grid.texts().lineHeight(), inner.right() - BoardGrid.CELL_PADDING,
                        grid);
            }
        }

        private void plateLine(PlateLine line, double x, double top, double right, BoardGrid grid) {
            double room = right - x - (line.mark().isEmpty() ? 0 : BoardTexts.GAP + grid.texts().tagWidth(line.mark()));
            Words words = Words.of(TextWidth.within(line.words(), grid.texts().partSize(), false, room), x, top, grid.texts().partSize(),
                    false);
            shapes.add(words);
            if (!line.mark().isEmpty()) {
                shapes.addAll(tag(line.mark(), words.box().right() + BoardTexts.GAP, top, grid));
            }
        }

        private void channel(Channel channel, double x, double top, BoardGrid grid) {
            shapes.add(Words.of(channel.name(), x, top + 3, grid.texts().nameSize(), true));
            double beside = grid.isOneLine() ? TextWidth.of(channel.name(), grid.texts().nameSize(), true) + BoardTexts.GAP : 0;
            if (channel.modules() > 0) {
                shapes.add(Words.of(BoardTexts.sum(channel), x + beside, top + 4 + (grid.isOneLine() ? 0 : grid.texts().lineHeight()),
                        grid.texts().partSize(), false));
            }
            for (int i = 0; i < channel.slots().size(); i++) {
                double left = x + grid.stripWidth() + i * (grid.cellWidth() + BoardGrid.SLOT_GAP);
                slot(channel.slots().get(i), new Box(left, top, grid.cellWidth(), grid.cellHeight()), grid);
            }
        }

        private void slot(Place place, Box box, BoardGrid grid) {
            List<Shape> drawn = new ArrayList<>();
            Box inner = box.inset(BoardGrid.CELL_PADDING, 3);
            if (place.module().isPresent()) {
                for (int line = 0; line < grid.style().size(); line++) {
                    line(grid.style().get(line), place, inner, inner.y() + line * grid.texts().lineHeight(), grid, drawn);
                }
            } else {
                line(List.of(Item.NAME), place, inner, inner.y(), grid, drawn);
                double taken = grid.isOneLine() ? grid.texts().width(Item.NAME) + BoardTexts.GAP : 0;
                String word = TextWidth.within(place.state().label(), grid.texts().partSize(), false, inner.width() - taken);
                drawn.add(Words.of(word, inner.x() + taken, inner.y() + grid.texts().drop() + (grid.isOneLine()
                        ? 0 : grid.texts().lineHeight()),
                        grid.texts().partSize(), false));
                int last = grid.style().size() - 1;
                if (place.gone().isPresent()) {
                    line(grid.style().get(last), place, inner, inner.y() + last * grid.texts().lineHeight(), grid, drawn);
                }
            }
            shapes.add(new Area(box, look(place.state())));
            if (place.state() == State.COVERED) {
                // Hatching would run through the letters.
                drawn.forEach(words -> shapes.add(new Area(words.box(), Look.BLANK)));
            }
            shapes.addAll(drawn);
            slots.add(new Slot(place, box, List.copyOf(drawn)));
        }

        private static Look look(State state) {
            return switch (state) {
                case FILLED -> Look.FILLED;
                case EMPTY -> Look.EMPTY;
                case COVERED -> Look.COVERED;
                case NO_PROCESSOR -> Look.NO_PROCESSOR;
            };
        }

        /** Items side by side, each where it stands in every other slot, too. */
        private void line(List<Item> items, Place place, Box inner, double top, BoardGrid grid, List<Shape> drawn) {
            double spare = inner.width() - items.stream().mapToDouble(item -> grid.texts().width(item) + BoardTexts.GAP).sum()
                    + BoardTexts.GAP;
            double gap = BoardTexts.GAP + (items.size() > 1 ? Math.max(0, spare) / (items.size() - 1) : 0);
            double x = inner.x();
            for (Item item : items) {
                double room = Math.min(grid.texts().width(item), inner.right() - x);
                item(item, place, inner.x(), x, room, top, grid, drawn);
                x += room + gap;
            }
        }

        private void item(Item item, Place place, double left, double x, double room, double top, BoardGrid grid, List<Shape> drawn) {
            Optional<MemoryModule> module = place.module();
            switch (item) {
                case NAME -> {
                    if (place.order().isPresent()) {
                        badge(place.order().getAsInt(), x, top, grid, drawn);
                    }
                    double badge = place.order().isPresent() ? grid.texts().badgeWidth() : 0;
                    drawn.add(Words.of(TextWidth.within(place.name(), grid.texts().nameSize(), true, room - badge), x + badge, top,
                            grid.texts().nameSize(), true));
                }
                case CAPACITY -> {
                    String capacity = TextWidth.within(BoardTexts.capacity(module.orElseThrow()), grid.texts().nameSize(), true, room);
                    boolean alone = x == left;
                    Words words = Words.of(capacity, alone ? x : x + room, top, grid.texts().nameSize(), true);
                    drawn.add(alone ? words : words.endingThere());
                }
                case PART -> drawn.add(Words.of(TextWidth.within(grid.texts().name(module.orElseThrow()), grid.texts().partSize(), false,
                        room), x, top + grid.texts().drop(), grid.texts().partSize(), false));
                case MARK -> {
                    if (!place.mark().isEmpty()) {
                        drawn.addAll(tag(TextWidth.within(BoardTexts.drawn(place.mark()), grid.texts().partSize(), true, room - 6), x, top,
                                grid));
                    }
                }
                case GONE -> place.gone().ifPresent(gone -> {
                    double taken = grid.texts().goneWidth(gone.module());
                    drawn.add(Words.of(TextWidth.within(grid.texts().name(gone.module()), grid.texts().partSize(), false, taken), x,
                            top + grid.texts().drop(),
                            grid.texts().partSize(), false));
                    drawn.addAll(tag(TextWidth.within(BoardTexts.drawn(gone.mark()), grid.texts().partSize(), true, room - taken - 6),
                            x + taken, top, grid));
                });
            }
        }

        private static void badge(int number, double x, double top, BoardGrid grid, List<Shape> drawn) {
            Box circle = new Box(x, top - 1, grid.texts().badgeSize(), grid.texts().badgeHeight());
            Words digits = Words.of(String.valueOf(number), 0, 0, grid.texts().partSize(), true);
            drawn.add(new Area(circle, Look.BADGE));
            drawn.add(Words.of(String.valueOf(number), circle.x() + (circle.width() - digits.box().width()) / 2,
                    circle.y() + (circle.height() - digits.box().height()) / 2, grid.texts().partSize(), true));
        }

        private static List<Shape> tag(String mark, double x, double top, BoardGrid grid) {
            return BoardDrawing.tag(BoardTexts.drawn(mark), x, top, grid.texts().partSize(), grid.texts().drop());
        }
    }

    /**
     * Pale words on a dark ground.
     *
     * @param drop by how much smaller letters stand lower than those beside them
     */
    static List<Shape> tag(String words, double x, double top, double size, double drop) {
        Words pale = Words.of(words, x + 3, top + drop / 2, size, true).inPale();
        return List.of(new Area(new Box(x, top, pale.box().width() + 6, pale.box().height() + drop), Look.TAG), pale);
    }
}
