package sledwright.report.sheet;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sledwright.domain.BayGroup;
import sledwright.domain.Build;
import sledwright.domain.Card;
import sledwright.domain.CardSlot;
import sledwright.domain.Drive;
import sledwright.domain.Expansion;
import sledwright.domain.Fitout;
import sledwright.domain.Volume;
import sledwright.report.sheet.BoardView.State;
import sledwright.words.Runs;

/** Where the drives and cards of a machine sit: its bays, group by group, and its slots for cards, in the platform's order. */
public record EquipmentView(List<Bays> bays, List<CardPlace> cards) {

    /**
     * A part that leaves a place.
     *
     * @param mark as of {@link BoardView.Fitted}
     */
    public record Gone(String sku, String mark) {
    }

    /**
     * A group of bays.
     *
     * @param socket that it is wired to; empty: none
     */
    public record Bays(String group, OptionalInt socket, List<Seat> seats) {

        boolean isUsed() {
            return seats.stream().anyMatch(seat -> seat.drive.isPresent() || seat.gone.isPresent());
        }
    }

    /**
     * One bay.
     *
     * @param volume what its drive serves; empty where there is none
     * @param mark   as of {@link BoardView.Fitted}
     */
    public record Seat(String bay, State state, Optional<Drive> drive, String volume, boolean hotSpare, String mark, Optional<Gone> gone) {

        /** Of the bay within its group. */
        String number() {
            return bay.substring(bay.lastIndexOf(' ') + 1);
        }
    }

    /** A slot for a card; the mark as of {@link BoardView.Fitted}. */
    public record CardPlace(CardSlot slot, State state, Optional<Card> card, String mark, Optional<Gone> gone) {
    }

    public EquipmentView {
        bays = List.copyOf(bays);
        cards = List.copyOf(cards);
    }

    /**
     * @param driveMarks what is done in a bay, in few letters
     * @param cardMarks  what is done in a slot
     */
    static EquipmentView of(Build build, UnaryOperator<String> driveMarks, UnaryOperator<String> cardMarks) {
        Expansion expansion = build.platform().expansion();
        Fitout fitout = build.fitout();
        int processors = build.processors().size();
        Map<String, Seat> taken = new HashMap<>();
        Map<String, Integer> next = new HashMap<>();
        for (Volume volume : fitout.volumes()) {
            for (int i = 0; i < volume.all().size(); i++) {
                String bay = bay(volume.group(), next.merge(volume.group(), 1, Integer::sum));
                taken.put(bay, new Seat(bay, State.FILLED, Optional.of(volume.all().get(i)), volume.name(), i >= volume.drives().size(),
                        driveMarks.apply(bay), Optional.empty()));
            }
        }
        List<Bays> bays = expansion.bays().stream().map(group -> bays(group, taken, processors)).toList();
        List<CardPlace> cards = expansion.slots().stream().map(slot -> {
            Optional<Card> card = Optional.ofNullable(fitout.cards().get(slot.name()));
            return new CardPlace(slot, state(card.isPresent(), slot.socket(), processors), card,
                    card.isPresent() ? cardMarks.apply(slot.name()) : "", Optional.empty());
        }).toList();
        return new EquipmentView(bays, cards);
    }

    private static String bay(String group, int number) {
        return group + " " + number;
    }

    private static Bays bays(BayGroup group, Map<String, Seat> taken, int processors) {
        return new Bays(group.name(), group.socket(), IntStream.rangeClosed(1, group.count()).mapToObj(number -> bay(group.name(), number))
                .map(bay -> taken.getOrDefault(bay, new Seat(bay, state(false, group.socket(), processors), Optional.empty(), "", false, "",
                        Optional.empty()))).toList());
    }

    private static State state(boolean filled, OptionalInt socket, int processors) {
        return filled ? State.FILLED : Expansion.isLive(socket, processors) ? State.EMPTY : State.NO_PROCESSOR;
    }

    /** The places after the work, and in each what leaves it. */
    static EquipmentView ofBoth(EquipmentView before, EquipmentView after) {
        List<Bays> bays = new ArrayList<>();
        for (int group = 0; group < after.bays.size(); group++) {
            List<Seat> seats = new ArrayList<>();
            for (int i = 0; i < after.bays.get(group).seats().size(); i++) {
                Seat old = before.bays.get(group).seats().get(i);
                Seat now = after.bays.get(group).seats().get(i);
                seats.add(new Seat(now.bay, now.state, now.drive, now.volume, now.hotSpare, now.mark,
                        gone(old.drive.map(Drive::sku), old.mark)));
            }
            bays.add(new Bays(after.bays.get(group).group(), after.bays.get(group).socket(), seats));
        }
        List<CardPlace> cards = new ArrayList<>();
        for (int i = 0; i < after.cards.size(); i++) {
            CardPlace old = before.cards.get(i);
            CardPlace now = after.cards.get(i);
            cards.add(new CardPlace(now.slot, now.state, now.card, now.mark, gone(old.card.map(Card::sku), old.mark)));
        }
        return new EquipmentView(bays, cards);
    }

    private static Optional<Gone> gone(Optional<String> sku, String mark) {
        return sku.filter(part -> !mark.isEmpty()).map(part -> new Gone(part, mark));
    }

    /** Every bay, group by group. */
    List<Seat> seats() {
        return bays.stream().flatMap(group -> group.seats().stream()).toList();
    }

    /** Whether no bay and no slot holds anything, now or before. */
    boolean isBlank() {
        return bays.stream().noneMatch(Bays::isUsed) && cards.stream().allMatch(place -> place.card.isEmpty() && place.gone.isEmpty());
    }

    /** Part numbers of drives and cards that are shown. */
    List<String> skus() {
        return Stream.of(seats().stream().flatMap(seat -> seat.drive.stream().map(Drive::sku)),
                seats().stream().flatMap(seat -> seat.gone.stream().map(Gone::sku)),
                cards.stream().flatMap(place -> place.card.stream().map(Card::sku)),
                cards.stream().flatMap(place -> place.gone.stream().map(Gone::sku))).flatMap(skus -> skus).distinct().toList();
    }

    /** Bays that follow each other and are alike empty stand together: the first and the last of each such run, or a bay by itself. */
    static List<List<Seat>> runs(Bays group) {
        return Runs.of(group.seats(), (one, next) -> isIdle(one) && isIdle(next));
    }

    private static boolean isIdle(Seat seat) {
        return seat.drive.isEmpty() && seat.gone.isEmpty();
    }

    /** Such as {@code front 6 to 8}. */
    static String name(List<Seat> run) {
        return run.size() == 1 ? run.get(0).bay : run.get(0).bay + " to " + run.get(run.size() - 1).number();
    }

    /** Risers by the slots that stand on them. */
    Map<String, List<String>> risers() {
        return cards.stream().map(CardPlace::slot).filter(slot -> slot.riser().isPresent()).collect(Collectors.groupingBy(
                slot -> slot.riser().orElseThrow(), LinkedHashMap::new, Collectors.mapping(CardSlot::name, Collectors.toList())));
    }
}
