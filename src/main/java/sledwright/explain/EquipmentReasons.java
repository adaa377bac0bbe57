package sledwright.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import sledwright.domain.Build;
import sledwright.domain.Card;
import sledwright.domain.CardSlot;
import sledwright.domain.Drive;
import sledwright.domain.DriveInterface;
import sledwright.domain.Fitout;
import sledwright.rules.Machine;
import sledwright.rules.Order;
import sledwright.rules.Violation;
import sledwright.rules.card.CardFits;
import sledwright.rules.storage.VolumeDriver;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/** Why a machine has parts that nobody asked for by name: a controller, risers, and what its sockets call for. */
record EquipmentReasons(Order order, Build build) {

    List<Sentence> all() {
        List<Sentence> reasons = new ArrayList<>();
        controller().ifPresent(reasons::add);
        risers(reasons);
        called().ifPresent(reasons::add);
        return reasons;
    }

    private Fitout fitout() {
        return build.fitout();
    }

    /** The controller that drives, where nothing else in the machine could: what the rule says of each other driver. */
    private Optional<Sentence> controller() {
        Card card = fitout().driver().map(fitout().cards()::get).orElse(null);
        if (card == null) {
            return Optional.empty();
        }
        List<Sentence> parts = new ArrayList<>();
        List<String> links = fitout().drives().stream().map(Drive::link).filter(DriveInterface::needsDriver).distinct().sorted()
                .map(DriveInterface::label).toList();
        parts.add(Sentence.of("The %s drives need controller %s%s in slot %s.", Sentence.list(links), card.sku(),
                Reasons.cost(order, card.sku()), fitout().driver().get()));
        if (build.platform().expansion().onboard().isPresent()) {
            List<Violation> broken = broken(Fitout.ONBOARD);
            if (broken.isEmpty()) {
                return Optional.empty();
            }
            broken.forEach(violation -> parts.add(violation.sentence()));
        } else {
            parts.add(Sentence.of("%s drives no SATA and no SAS drives by itself.", build.platform().sku()));
        }
        for (Map.Entry<String, Card> other : fitout().cards().entrySet()) {
            if (other.getValue().support().isPresent() && !other.getValue().equals(card)) {
                List<Violation> broken = broken(other.getKey());
                if (broken.isEmpty()) {
                    return Optional.empty();
                }
                broken.forEach(violation -> parts.add(violation.sentence()));
            }
        }
        return Optional.of(Sentence.joined(" ", parts));
    }

    /** What speaks against another driver. */
    private List<Violation> broken(String driver) {
        Fitout other = new Fitout(fitout().volumes(), Optional.of(driver), fitout().cards(), fitout().extras(), fitout().housed());
        return new VolumeDriver().judge(Machine.of(build.with(other), order.request(), order.catalog().throughputFactors()));
    }

    private void risers(List<Sentence> reasons) {
        SortedMap<String, List<CardSlot>> used = new TreeMap<>();
        for (CardSlot slot : build.platform().expansion().slots()) {
            if (fitout().cards().containsKey(slot.name())) {
                slot.riser().ifPresent(riser -> used.computeIfAbsent(riser, key -> new ArrayList<>()).add(slot));
            }
        }
        used.forEach((riser, slots) -> {
            List<String> seats = slots.stream().map(slot -> "%s in slot %s".formatted(fitout().cards().get(slot.name()).sku(), slot.name()))
                    .toList();
            List<CardSlot> others = new ArrayList<>(build.platform().expansion().slots());
            others.removeIf(slot -> slot.riser().equals(Optional.of(riser)));
            boolean needed = !fit(List.copyOf(fitout().cards().values()), 0, others);
            reasons.add(Sentence.of(needed ? "Riser %s%s is needed for %s: the slots without it do not take all cards."
                    : "Riser %s%s is bought for %s.", riser, Reasons.cost(order, riser), Sentence.list(seats)));
        });
    }

    /** Whether each card from an index on has a slot of its own among these. */
    private boolean fit(List<Card> cards, int index, List<CardSlot> free) {
        if (index == cards.size()) {
            return true;
        }
        for (CardSlot slot : free) {
            if (CardFits.allows(slot, cards.get(index), build.processors().size())) {
                List<CardSlot> rest = new ArrayList<>(free);
                rest.remove(slot);
                if (fit(cards, index + 1, rest)) {
                    return true;
                }
            }
        }
        return false;
    }

    private Optional<Sentence> called() {
        int processors = build.processors().size();
        List<String> parts = new ArrayList<>();
        build.platform().expansion().needed(processors, build.platform().processors().sockets())
                .forEach((sku, units) -> parts.add(units + " x " + sku));
        return parts.isEmpty() ? Optional.empty() : Optional.of(Sentence.of("With %s, %s calls for %s.",
                Numbers.counted(processors, "processor"), build.platform().sku(), Sentence.list(parts)));
    }
}
