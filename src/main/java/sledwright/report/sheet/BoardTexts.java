package sledwright.report.sheet;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import sledwright.domain.MemoryModule;
import sledwright.report.sheet.BoardView.Channel;
import sledwright.report.sheet.BoardView.Fitted;
import sledwright.report.sheet.BoardView.Place;
import sledwright.report.sheet.BoardView.Socket;
import sledwright.report.sheet.BoardView.State;

/** The texts of some boards at one size of letters, and how much room the widest of each kind takes. */
final class BoardTexts {

    static final String PROCESSOR = "processor ";
    static final String HEAT_SINK = "heat sink ";
    static final String NO_PROCESSOR = "no processor:";
    static final String LEAVE_EMPTY = "leave its slots empty";
    /** Between texts that stand side by side. */
    static final double GAP = 5;

    private static final double LINE = 13.5;

    /** What a filled slot shows. */
    enum Item {
        NAME, CAPACITY, PART, MARK
    }

    private final Map<String, String> names;
    private final double scale;
    private final boolean numbered;
    private final Map<Item, Double> widths = new EnumMap<>(Item.class);
    private final double word;
    private final double plate;
    private final double strip;
    private final double stripOfOneLine;

    /**
     * @param names part number -> what stands for it in a slot
     * @param scale 1 is the full size
     */
    BoardTexts(List<BoardView> boards, Map<String, String> names, double scale) {
        this.names = names;
        this.scale = scale;
        numbered = boards.stream().anyMatch(BoardView::isNumbered);
        List<Place> places = boards.stream().flatMap(board -> board.places().stream()).toList();
        for (Item item : Item.values()) {
            widths.put(item, places.stream().mapToDouble(place -> width(item, place)).max().orElse(0));
        }
        word = places.stream().filter(place -> place.state() != State.FILLED)
                .mapToDouble(place -> TextWidth.of(place.state().label(), partSize(), false)).max().orElse(0);
        List<Socket> sockets = boards.stream().flatMap(board -> board.sockets().stream()).toList();
        plate = sockets.stream().mapToDouble(this::plate).max().orElse(0);
        List<Channel> channels = sockets.stream().flatMap(socket -> socket.channels().stream()).toList();
        strip = channels.stream().mapToDouble(channel -> strip(channel, false)).max().orElse(0) + GAP;
        stripOfOneLine = channels.stream().mapToDouble(channel -> strip(channel, true)).max().orElse(0) + GAP;
    }

    private double width(Item item, Place place) {
        return switch (item) {
            case NAME -> badgeWidth() + TextWidth.of(place.name(), nameSize(), true);
            case CAPACITY -> place.module().map(module -> TextWidth.of(capacity(module), nameSize(), true)).orElse(0.0);
            case PART -> place.module().map(module -> TextWidth.of(name(module), partSize(), false)).orElse(0.0);
            case MARK -> place.mark().isEmpty() ? 0 : tagWidth(place.mark());
        };
    }

    private double plate(Socket socket) {
        double parts = Stream.concat(socket.processor().map(part -> fitted(PROCESSOR, part)).stream(),
                socket.heatSink().map(part -> fitted(HEAT_SINK, part)).stream())
                .mapToDouble(width -> width).max().orElse(TextWidth.of(LEAVE_EMPTY, partSize(), false));
        return socketWidth(socket) + GAP + parts;
    }

    private double fitted(String kind, Fitted part) {
        return TextWidth.of(kind + part.sku(), partSize(), false) + (part.mark().isEmpty() ? 0 : GAP + tagWidth(part.mark()));
    }

    private double strip(Channel channel, boolean oneLine) {
        List<String> sums = sums(channel, oneLine);
        double name = TextWidth.of(channel.name(), nameSize(), true);
        double widest = name;
        for (int line = 0; line < sums.size(); line++) {
            widest = Math.max(widest, (line == 0 ? name + GAP : 0) + TextWidth.of(sums.get(line), partSize(), false));
        }
        return widest;
    }

    /** How many slots of a channel hold modules, and how much these are, a line each or in one line. */
    static List<String> sums(Channel channel, boolean oneLine) {
        if (channel.modules() == 0) {
            return List.of();
        }
        String modules = "%d of %d".formatted(channel.modules(), channel.slots().size());
        String capacity = channel.capacityGb() + " GB";
        return oneLine ? List.of(modules + ", " + capacity) : List.of(modules, capacity);
    }

    static String capacity(MemoryModule module) {
        return module.capacityGb() + " GB";
    }

    /** The part number, or the key that stands for it. */
    String name(MemoryModule module) {
        return names.get(module.sku());
    }

    /** The widest that any slot shows of an item. */
    double width(Item item) {
        return widths.get(item);
    }

    /** The widest word in a slot that is not filled. */
    double wordWidth() {
        return word;
    }

    /** The widest text of a socket's head. */
    double plateWidth() {
        return plate;
    }

    /** The name of a channel and what it holds, left of its slots. */
    double stripWidth(boolean oneLine) {
        return oneLine ? stripOfOneLine : strip;
    }

    double socketWidth(Socket socket) {
        return TextWidth.of("Socket " + socket.number(), nameSize(), true);
    }

    /** Room for a number in a circle and the gap behind it; none where no slot is numbered. */
    double badgeWidth() {
        return numbered ? badgeSize() + 2 : 0;
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

    double lineHeight() {
        return LINE * scale;
    }

    double scale() {
        return scale;
    }
}
