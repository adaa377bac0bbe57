package sledwright.report.sheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import sledwright.report.sheet.BoardView.Place;
import sledwright.report.sheet.BoardView.State;
import sledwright.report.sheet.SheetView.Channel;
import sledwright.report.sheet.SheetView.Expected;
import sledwright.report.sheet.SheetView.Fetch;
import sledwright.report.sheet.SheetView.Frame;
import sledwright.report.sheet.SheetView.Machine;
import sledwright.report.sheet.SheetView.Share;
import sledwright.report.sheet.SheetView.Sheet;
import sledwright.report.sheet.SheetView.Which;
import sledwright.words.Numbers;
import sledwright.words.Runs;
import sledwright.words.Sentences;

/** The words that every form of a sheet shares. */
final class SheetWords {

    static final String NOTHING_TO_DO = "Nothing is to be done: the machine stays as it is.";
    static final String HANDLING = "How the parts are handled";
    static final String NOTES =
            "A running system shows somewhat less memory than is fitted: firmware and devices keep a share. At rest a machine draws less.";

    /** Something that a person compares. */
    public record Row(String what, String expected) {
    }

    private SheetWords() {
    }

    static String title(SheetView view) {
        String rank = view.rank().isPresent() ? ", alternative " + view.rank().getAsInt() : "";
        return "Bench sheet: %s%s".formatted(view.request(), rank);
    }

    /** Which machines a sheet is for. */
    static String machines(SheetView view, Sheet sheet) {
        if (sheet.which().isPresent()) {
            return which(sheet.which().get());
        }
        if (view.machines() == 1) {
            return "1 machine";
        }
        return sheet.machines() == view.machines() ? "%s machines, all alike".formatted(view.machines())
                : "%s of %s machines".formatted(sheet.machines(), view.machines());
    }

    private static String which(Which which) {
        String name = "%s, machine %s of %s".formatted(which.line(), which.number(), which.of());
        return which.berth().map(berth -> "%s: bay %s of enclosure %s (%s)".formatted(name, berth.bay(), berth.enclosure(), berth.sku()))
                .orElse(name);
    }

    /** For whom the units of a lot are, such as {@code render 1 to 4: 2 each, enclosure 1: 2}. */
    static String shares(Fetch fetch) {
        return fetch.shares().stream().map(SheetWords::share).collect(Collectors.joining(", "));
    }

    private static String share(Share share) {
        String who = share.line().orElse("enclosure");
        return share.first() == share.last() ? "%s %s: %s".formatted(who, share.first(), share.each())
                : "%s %s to %s: %s each".formatted(who, share.first(), share.last(), share.each());
    }

    static String frame(Frame frame) {
        return "Enclosure %s: %s (%s), fed by %s x %s".formatted(frame.number(), frame.sku(), frame.name(), frame.supplies(),
                frame.supply());
    }

    /** Which machine goes into which bay. */
    static String bays(Frame frame) {
        return frame.sleds().stream().map(seat -> "bay %s %s %s".formatted(seat.bay(), seat.line(), seat.machine()))
                .collect(Collectors.joining(", "));
    }

    static String machine(Machine machine) {
        List<String> parts = new ArrayList<>(List.of("%s (%s)".formatted(machine.bare().platform(), machine.bare().name())));
        machine.bare().processorSku().ifPresent(sku -> parts.add("%s x %s".formatted(machine.bare().processors(), sku)));
        machine.bare().cooling().ifPresent(sku -> parts.add("heat sink " + sku));
        parts.add(machine.bare().supply().map(sku -> "%s x %s".formatted(machine.bare().supplies(), sku))
                .orElse(machine.enclosures().isEmpty() ? "fed by the enclosure" : "in " + machine.enclosures()));
        return String.join(", ", parts);
    }

    static List<Row> expected(Expected expected) {
        List<Row> rows = new ArrayList<>(List.of(
                new Row("processors, cores", "%s, %s".formatted(expected.processors(), expected.cores())),
                new Row("memory", "%s GB in %s".formatted(expected.memory().capacityGb(),
                Numbers.counted(expected.memory().modules(), "module"))),
                new Row("usable memory (%s)".formatted(expected.memory().mode()), Numbers.plain(expected.memory().usableGb()) + " GB"),
                new Row("memory speed", expected.memory().mts() + " MT/s")));
        groups(expected.memory().channels()).forEach((holds, names) -> rows.add(new Row("channels " + names, holds)));
        expected.volumes().forEach(volume -> rows.add(new Row("volume %s, level %s".formatted(volume.volume(), volume.level()),
                "%s of %s GB%s, %s GB usable".formatted(Numbers.counted(volume.drives(), "drive"), Numbers.plain(volume.capacityGb()),
                        volume.hotSpares() == 0 ? "" : ", " + Numbers.counted(volume.hotSpares(), "hot spare"),
                        Numbers.plain(volume.usableGb())))));
        expected.cards().forEach((slot, sku) -> rows.add(new Row("card in slot " + slot, sku)));
        rows.add(new Row("load at full work", Numbers.plain(expected.loadW()) + " W"));
        expected.wallW().ifPresent(watts -> rows.add(new Row("from the mains", Math.round(watts) + " W")));
        return rows;
    }

    /** Channels that hold the same, together: what each holds -> their names, neighbours as a span. */
    private static Map<String, String> groups(List<Channel> channels) {
        Map<String, List<Channel>> alike = channels.stream().collect(Collectors.groupingBy(
                channel -> "%s, %s GB each".formatted(Numbers.counted(channel.modules(), "module"), channel.capacityGb()),
                LinkedHashMap::new, Collectors.toList()));
        Map<String, String> named = new LinkedHashMap<>();
        alike.forEach((holds, some) -> named.put(holds, spans(some.stream().map(Channel::name).toList())));
        return named;
    }

    /** Names as spans of those that follow each other in one socket, such as {@code 1A to 1D, 2A to 2D}. */
    private static String spans(List<String> names) {
        return Runs.of(names, (one, next) -> socket(next).equals(socket(one)) && letter(next) == letter(one) + 1).stream()
                .map(run -> run.size() == 1 ? run.get(0) : run.get(0) + (run.size() > 2 ? " to " : ", ") + run.get(run.size() - 1))
                .collect(Collectors.joining(", "));
    }

    private static String socket(String channel) {
        return channel.substring(0, channel.length() - 1);
    }

    private static char letter(String channel) {
        return channel.charAt(channel.length() - 1);
    }

    /** What a slot holds or is, in words. */
    static String slot(Place place) {
        String what = place.module().map(module -> module.sku() + " " + BoardTexts.capacity(module)).orElse(place.state().label());
        String order = place.order().isPresent() ? " (" + place.order().getAsInt() + ")" : "";
        return place.name() + order + " " + what + (place.mark().isEmpty() ? "" : " " + place.mark());
    }

    /** A drawing in words, for those who cannot see it. */
    static String description(BoardView board) {
        EquipmentView equipment = board.equipment();
        List<String> fitted = new ArrayList<>();
        equipment.seats().forEach(seat -> seat.drive().ifPresent(drive ->
                fitted.add("bay %s %s %s".formatted(seat.bay(), drive.sku(), seat.mark()).strip())));
        equipment.cards().forEach(place -> place.card().ifPresent(card ->
                fitted.add("slot %s %s %s".formatted(place.slot().name(), card.sku(), place.mark()).strip())));
        return sockets(board) + (fitted.isEmpty() ? "" : " " + Sentences.capital(String.join(", ", fitted)) + ".");
    }

    private static String sockets(BoardView board) {
        return board.sockets().stream().map(socket -> "Socket %s, %s: %s.".formatted(socket.number(),
                socket.processor().map(part -> (part.sku() + " " + part.mark()).strip()).orElse("no processor"),
                socket.channels().stream().flatMap(channel -> channel.slots().stream()).filter(place -> place.state() != State.NO_PROCESSOR)
                        .map(SheetWords::slot).collect(Collectors.joining(", ")))).map(words -> words.replace(": .", "."))
                        .collect(Collectors.joining(" "));
    }

    /** The board of a sheet as it is drawn: of an upgrade both ends of the work in one. */
    static BoardDrawing.Captioned drawn(Sheet sheet, String caption) {
        BoardView board = sheet.boards().before().map(before -> BoardView.ofBoth(before, sheet.boards().after()))
                .orElse(sheet.boards().after());
        return new BoardDrawing.Captioned(caption, board);
    }

    /** All boards of a sheet in words. */
    static String description(Sheet sheet) {
        return sheet.boards().before().map(before -> "Before: " + description(before) + " After: ").orElse("")
                + description(sheet.boards().after());
    }
}
