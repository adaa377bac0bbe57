package sledwright.report.ask;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sledwright.desk.view.BuildView;
import sledwright.desk.view.CheckView;
import sledwright.desk.view.MachineView;
import sledwright.desk.view.SlotMap;
import sledwright.domain.Card;
import sledwright.domain.CardSlot;
import sledwright.domain.Catalog;
import sledwright.domain.Drive;
import sledwright.domain.Expansion;
import sledwright.domain.Fitout;
import sledwright.domain.MemoryModule;
import sledwright.domain.Volume;
import sledwright.report.page.Wording;
import sledwright.rules.Violation;

/** The places of a board for parts, with what is in them and which rules they break; the build may be invalid. */
final class HandBoard {

    /**
     * A place for a part.
     *
     * @param kind   module, drive or card
     * @param state  filled, empty, covered, no processor, or no bay for a drive beyond the last one
     * @param serves what the part serves, or what the place is; may be empty
     * @param broken identifiers of the rules that are broken there, with commas; may be empty
     */
    public record Place(String kind, String name, String state, Held held, String serves, String broken) {
    }

    /**
     * What is in a place.
     *
     * @param sku    empty where nothing is
     * @param size   such as {@code 16 GB}; may be empty
     * @param volume of a drive, the volume's number from 0; otherwise -1
     * @param seat   of a drive, its number within the volume from 0
     */
    public record Held(String sku, String size, int volume, int seat) {

        private static final Held NOTHING = new Held("", "", -1, 0);

        private static Held of(String sku, String size) {
            return sku.isEmpty() ? NOTHING : new Held(sku, size, -1, 0);
        }
    }

    /** Places in a row: a channel, a group of bays, or the slots for cards. */
    public record Lane(String name, String sum, List<Place> places) {
    }

    /** A processor socket. */
    public record Socket(int number, String holds, String broken, List<Lane> lanes) {
    }

    private final BuildView build;
    private final MachineView machine;
    private final Catalog shop;
    private final Wording words;
    private final Expansion expansion;
    /** Where it stands -> the rules that are broken there. */
    private final Map<String, Set<String>> broken = new HashMap<>();

    HandBoard(CheckView view, Catalog shop, Wording words) {
        build = view.build();
        machine = build.heaviest();
        this.shop = shop;
        this.words = words;
        expansion = shop.platform(build.bare().platform()).orElseThrow().expansion();
        for (Violation violation : view.violations()) {
            broken.computeIfAbsent(violation.where(), where -> new TreeSet<>()).add(violation.rule());
        }
    }

    private String broken(String... names) {
        return List.of(names).stream().filter(name -> !name.isEmpty())
                .flatMap(name -> broken.getOrDefault(name, Set.of()).stream()).distinct().collect(Collectors.joining(", "));
    }

    List<Socket> sockets() {
        List<Socket> sockets = new ArrayList<>();
        for (List<SlotMap.Row> rows : machine.map().sockets()) {
            int number = sockets.size() + 1;
            boolean fitted = number <= build.bare().processors();
            String holds = fitted ? build.bare().processorSku().orElse("")
                    + build.bare().cooling().map(kit -> ", heat sink " + kit).orElse("")
                    : "no processor";
            sockets.add(new Socket(number, holds, broken("socket " + number), rows.stream().map(this::channel).toList()));
        }
        return sockets;
    }

    private Lane channel(SlotMap.Row row) {
        int gb = row.cells().stream().flatMap(cell -> shop.module(cell.holds()).stream()).mapToInt(MemoryModule::capacityGb).sum();
        return new Lane(row.name(), gb == 0 ? "" : gb + " GB", row.cells().stream().map(cell -> slot(row, cell)).toList());
    }

    private Place slot(SlotMap.Row row, SlotMap.Cell cell) {
        String state = !cell.holds().isEmpty() ? "filled" : !cell.fitted() ? "no processor" : cell.covered() ? "covered" : "empty";
        String size = shop.module(cell.holds()).map(module -> module.capacityGb() + " GB").orElse("");
        return new Place("module", cell.name(), state, Held.of(cell.holds(), size),
                cell.covered() && !cell.holds().isEmpty() ? "covered" : "", broken(cell.name(), row.name(), cell.holds()));
    }

    /** The groups of bays, and for drives in a group that the platform does not have one more. */
    List<Lane> bays() {
        List<Lane> lanes = new ArrayList<>();
        Fitout fitout = machine.fitout();
        expansion.bays().forEach(group ->
                lanes.add(new Lane(group.name(), "", seats(fitout, group.name(), group.count(), group.socket()))));
        fitout.volumes().stream().map(Volume::group).distinct().filter(name -> expansion.group(name).isEmpty())
                .forEach(name -> lanes.add(new Lane(name, "", seats(fitout, name, 0, OptionalInt.empty()))));
        return lanes;
    }

    private List<Place> seats(Fitout fitout, String group, int count, OptionalInt socket) {
        List<Place> seats = new ArrayList<>();
        String empty = Expansion.isLive(socket, build.bare().processors()) ? "empty" : "no processor";
        for (int number = 0; number < fitout.volumes().size(); number++) {
            Volume volume = fitout.volumes().get(number);
            if (volume.group().equals(group)) {
                seats.addAll(seats(volume, number, seats.size(), count));
            }
        }
        while (seats.size() < count) {
            seats.add(new Place("drive", group + " " + (seats.size() + 1), empty, Held.NOTHING, "", ""));
        }
        return seats;
    }

    private List<Place> seats(Volume volume, int number, int before, int count) {
        List<Place> seats = new ArrayList<>();
        for (Drive drive : volume.all()) {
            int seat = seats.size();
            int bay = before + seat + 1;
            seats.add(new Place("drive", volume.group() + " " + bay, bay <= count ? "filled" : "no bay",
                    new Held(drive.sku(), words.figure(drive.capacityGb()) + " GB", number, seat),
                    volume.name() + (seat < volume.drives().size() ? "" : ", spare"), broken(volume.group(), volume.name(), drive.sku())));
        }
        return seats;
    }

    /** The slots for cards, and for cards in a slot that the platform does not have one more each. */
    List<Place> cards() {
        Map<String, Card> fitted = machine.fitout().cards();
        List<Place> places = new ArrayList<>();
        expansion.slots().forEach(slot -> places.add(card(slot.name(), fitted.get(slot.name()),
                Expansion.isLive(slot.socket(), build.bare().processors()) ? "empty" : "no processor", shape(slot))));
        fitted.keySet().stream().filter(name -> expansion.slot(name).isEmpty())
                .forEach(name -> places.add(card(name, fitted.get(name), "no slot", "")));
        return places;
    }

    private Place card(String name, Card card, String empty, String shape) {
        String serves = machine.fitout().driver().filter(name::equals).isPresent() && card != null ? shape + ", drives the drives" : shape;
        return new Place("card", name, card == null ? empty : "filled", card == null ? Held.NOTHING : Held.of(card.sku(), ""), serves,
                card == null ? broken(name) : broken(name, card.sku()));
    }

    private static String shape(CardSlot slot) {
        return "x" + slot.offers().lanes() + (slot.riser().isPresent() ? ", on a riser" : "");
    }
}
