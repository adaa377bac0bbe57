package sledwright.report.sheet;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import sledwright.domain.MemoryModule;
import sledwright.report.sheet.BoardView.Channel;
import sledwright.report.sheet.BoardView.Fitted;
import sledwright.report.sheet.BoardView.Place;
import sledwright.report.sheet.BoardView.Socket;
import sledwright.report.sheet.BoardView.State;

/** The texts of some boards, and how much room the widest of each kind takes. */
final class BoardTexts {

    static final String PROCESSOR = "processor ";
    static final String HEAT_SINK = "heat sink ";
    static final String NO_PROCESSOR = "no processor:";
    static final String LEAVE_EMPTY = "leave its slots empty";
    /** Between texts that stand side by side. */
    static final double GAP = 4;
    /** No text of a drawing is smaller; a point on paper. */
    static final double SMALLEST = 9;
    /** How high the circle of a number is, and how wide at least. */
    private static final double BADGE = 12;

    private static final double LINE = 12;

    /** What a filled slot shows. */
    enum Item {
        NAME, CAPACITY, PART, MARK, GONE
    }

    private final Map<String, String> names;
    private final double scale;
    private final double badge;
    private final Map<Item, Double> widths = new EnumMap<>(Item.class);
    private final double word;
    private final double plate;
    private final int plateLines;
    private final double strip;
    private final double stripOfOneLine;

    /**
     * @param names part number -> what stands for it in a slot
     * @param scale 1 is the full size
     */
    BoardTexts(List<BoardView> boards, Map<String, String> names, double scale) {
        this.names = names;
        this.scale = scale;
        List<Place> places = boards.stream().flatMap(board -> board.places().stream()).toList();
        badge = places.stream().flatMap(place -> place.order().stream().boxed())
                .mapToDouble(order -> Math.max(badgeHeight(), TextWidth.of(String.valueOf(order), partSize(), true) + 4)).max().orElse(0);
        for (Item item : Item.values()) {
            widths.put(item, places.stream().mapToDouble(place -> width(item, place)).max().orElse(0));
        }
        word = places.stream().filter(place -> place.state() != State.FILLED)
                .mapToDouble(place -> TextWidth.of(place.state().label(), partSize(), false)).max().orElse(0);
        List<Socket> sockets = boards.stream().flatMap(board -> board.sockets().stream()).toList();
        plate = sockets.stream().mapToDouble(this::plate).max().orElse(0);
        plateLines = sockets.stream().mapToInt(socket -> plateLines(socket).size()).max().orElse(0);
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
            case GONE -> place.gone().map(gone -> goneWidth(gone.module()) + tagWidth(gone.mark())).orElse(0.0);
        };
    }

    /** A line of a socket's head, and what is done with the part that it names. */
    record PlateLine(String words, String mark) {
    }

    /** What stands in a socket's head, the processor first. */
    static List<PlateLine> plateLines(Socket socket) {
        List<PlateLine> lines = new ArrayList<>();
        if (socket.processor().isEmpty()) {
            lines.add(new PlateLine(NO_PROCESSOR, ""));
            lines.add(new PlateLine(LEAVE_EMPTY, ""));
        }
        socket.gone().processor().ifPresent(part -> lines.add(line(PROCESSOR, part)));
        socket.processor().ifPresent(part -> lines.add(line(PROCESSOR, part)));
        socket.gone().heatSink().ifPresent(part -> lines.add(line(HEAT_SINK, part)));
        socket.heatSink().ifPresent(part -> lines.add(line(HEAT_SINK, part)));
        return lines;
    }

    private static PlateLine line(String kind, Fitted part) {
        return new PlateLine(kind + part.sku(), part.mark());
    }

    private double plate(Socket socket) {
        return socketWidth(socket) + GAP + plateLines(socket).stream().mapToDouble(line -> TextWidth.of(line.words(), partSize(), false)
                + (line.mark().isEmpty() ? 0 : GAP + tagWidth(line.mark()))).max().orElseThrow();
    }

    /** The part number of a module that leaves, and the gap behind it. */
    double goneWidth(MemoryModule module) {
        return TextWidth.of(name(module), partSize(), false) + GAP;
    }

    /** A mark as it is drawn: where a part goes to and comes from is an arrow. */
    static String drawn(String mark) {
        return mark.startsWith(BoardView.TO) ? "\u2192" + mark.substring(BoardView.TO.length())
                : mark.startsWith(BoardView.FROM) ? "\u2190" + mark.substring(BoardView.FROM.length()) : mark;
    }

    private double strip(Channel channel, boolean oneLine) {
        double name = TextWidth.of(channel.name(), nameSize(), true);
        double sum = TextWidth.of(sum(channel), partSize(), false);
        return oneLine ? name + GAP + sum : Math.max(name, sum);
    }

    /** What a channel holds; empty where that is nothing. */
    static String sum(Channel channel) {
        return channel.modules() == 0 ? "" : channel.capacityGb() + " GB";
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

    /** The most lines of a socket's head. */
    int plateLines() {
        return plateLines;
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
        return badge == 0 ? 0 : badge + 2;
    }

    double badgeHeight() {
        return BADGE * scale;
    }

    /** As wide as the longest number wants it. */
    double badgeSize() {
        return badge;
    }

    double tagWidth(String mark) {
        return TextWidth.of(drawn(mark), partSize(), true) + 6;
    }

    double nameSize() {
        return 9.6 * scale;
    }

    /** By how much smaller letters stand lower, so that they share a line with larger ones. */
    double drop() {
        return 0.9 * scale;
    }

    double partSize() {
        return SMALLEST * scale;
    }

    double lineHeight() {
        return LINE * scale;
    }
}
