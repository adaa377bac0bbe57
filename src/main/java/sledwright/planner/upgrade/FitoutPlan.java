package sledwright.planner.upgrade;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import sledwright.domain.Build;
import sledwright.domain.Card;
import sledwright.domain.CardSlot;
import sledwright.domain.Drive;
import sledwright.domain.Expansion;
import sledwright.domain.Fitout;
import sledwright.domain.Volume;
import sledwright.rules.card.CardFits;

/**
 * Chooses among the arrangements of a machine's drives and cards that are the same to every rule one in which they stay where they stand:
 * volumes may take the bays of their group in any order, drives those of their volume, and cards any slots that fit them all.
 */
final class FitoutPlan {

    /** Up to this many volumes of a machine are tried in every order. */
    private static final int MOST_PERMUTED = 5;

    private final Build found;
    private final Fitout standing;
    private final Map<String, Fitout.Seat> seats = new HashMap<>();
    private List<Volume> best;
    private int bestKept = -1;

    private FitoutPlan(Build found, Build installed) {
        this.found = found;
        standing = installed.fitout();
        standing.seats().forEach(seat -> seats.put(seat.bay(), seat));
    }

    /** The machine with its drives and cards where most of them stay. */
    static Build of(Build found, Build installed) {
        FitoutPlan plan = new FitoutPlan(found, installed);
        return found.with(plan.withCards(found.fitout().with(plan.volumes())));
    }

    private List<Volume> volumes() {
        List<String> order = standing.volumes().stream().map(Volume::name).toList();
        List<Volume> volumes = new ArrayList<>(found.fitout().volumes());
        volumes.sort((one, other) -> Integer.compare(place(order, one), place(order, other)));
        permute(volumes, 0);
        return best;
    }

    private static int place(List<String> order, Volume volume) {
        int place = order.indexOf(volume.name());
        return place < 0 ? order.size() : place;
    }

    private void permute(List<Volume> volumes, int from) {
        if (from == volumes.size() || volumes.size() > MOST_PERMUTED) {
            List<Volume> seated = seated(volumes);
            int kept = (int) found.fitout().with(seated).seats().stream().filter(this::stays).count();
            if (kept > bestKept) {
                best = seated;
                bestKept = kept;
            }
            return;
        }
        for (int i = from; i < volumes.size(); i++) {
            List<Volume> next = new ArrayList<>(volumes);
            next.add(from, next.remove(i));
            permute(next, from + 1);
        }
    }

    private boolean stays(Fitout.Seat seat) {
        Fitout.Seat before = seats.get(seat.bay());
        return before != null && before.volume().equals(seat.volume()) && before.drive().equals(seat.drive());
    }

    /** The volumes in this order, the drives of each where such a one of the same volume stands. */
    private List<Volume> seated(List<Volume> volumes) {
        Map<String, Integer> taken = new HashMap<>();
        List<Volume> seated = new ArrayList<>();
        for (Volume volume : volumes) {
            List<Drive> left = new ArrayList<>(volume.all());
            Drive[] places = new Drive[left.size()];
            int first = taken.getOrDefault(volume.group(), 0);
            for (int i = 0; i < places.length; i++) {
                Fitout.Seat before = seats.get(volume.group() + " " + (first + i + 1));
                if (before != null && before.volume().equals(volume.name()) && left.remove(before.drive())) {
                    places[i] = before.drive();
                }
            }
            for (int i = 0; i < places.length; i++) {
                places[i] = places[i] == null ? left.remove(0) : places[i];
            }
            taken.put(volume.group(), first + places.length);
            List<Drive> all = List.of(places);
            seated.add(new Volume(volume.name(), volume.level(), volume.group(), all.subList(0, volume.drives().size()),
                    all.subList(volume.drives().size(), all.size())));
        }
        return seated;
    }

    /** The cards in slots of which the same risers are bought, each that stands already in its own where the others leave that to it. */
    private Fitout withCards(Fitout fitout) {
        Map<String, Card> bySlot = new LinkedHashMap<>(fitout.cards());
        Optional<String> driver = fitout.driver();
        for (Map.Entry<String, Card> stands : standing.cards().entrySet()) {
            Optional<String> now = bySlot.entrySet().stream().filter(entry -> entry.getValue().equals(stands.getValue())
                    && !entry.getValue().equals(standing.cards().get(entry.getKey()))).map(Map.Entry::getKey).findFirst();
            if (now.isPresent() && !stands.getValue().equals(bySlot.get(stands.getKey()))) {
                Map<String, Card> moved = new LinkedHashMap<>(bySlot);
                Card there = moved.remove(stands.getKey());
                moved.put(stands.getKey(), moved.remove(now.get()));
                if (there != null) {
                    moved.put(now.get(), there);
                }
                if (fits(moved) && risers(moved).equals(risers(bySlot))) {
                    driver = driver.map(slot -> slot.equals(now.get()) ? stands.getKey() : slot.equals(stands.getKey()) ? now.get() : slot);
                    bySlot = moved;
                }
            }
        }
        return new Fitout(fitout.volumes(), driver, new TreeMap<>(bySlot), fitout.extras(), fitout.housed());
    }

    private boolean fits(Map<String, Card> bySlot) {
        Expansion expansion = found.platform().expansion();
        return bySlot.entrySet().stream().allMatch(entry -> expansion.slot(entry.getKey())
                .filter(slot -> CardFits.allows(slot, entry.getValue(), found.processors().size())).isPresent());
    }

    private Set<String> risers(Map<String, Card> bySlot) {
        Set<String> risers = new HashSet<>();
        bySlot.keySet().forEach(slot -> found.platform().expansion().slot(slot).flatMap(CardSlot::riser).ifPresent(risers::add));
        return risers;
    }
}
