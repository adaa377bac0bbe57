package sledwright.oracle;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SplittableRandom;
import java.util.TreeMap;
import sledwright.domain.BayGroup;
import sledwright.domain.Card;
import sledwright.domain.CardSlot;
import sledwright.domain.CardWish;
import sledwright.domain.Catalog;
import sledwright.domain.Drive;
import sledwright.domain.Extra;
import sledwright.domain.Fitout;
import sledwright.domain.Need;
import sledwright.domain.Platform;
import sledwright.domain.RaidLevel;
import sledwright.domain.Request;
import sledwright.domain.Volume;
import sledwright.domain.VolumeWish;

/** Random drives, cards and extras for a build: laid out with sense as the request asks, then spoilt here and there. */
final class RandomFitout {

    private static final double SPOILT = 0.07;

    private final SplittableRandom random;
    private final Catalog catalog;
    private final Request request;
    private final Platform platform;
    private final int fitted;

    RandomFitout(SplittableRandom random, Catalog catalog, Request request, Platform platform, int fitted) {
        this.random = random;
        this.catalog = catalog;
        this.request = request;
        this.platform = platform;
        this.fitted = fitted;
    }

    /** None in a catalogue without drives, cards and extras. */
    Fitout fitout() {
        if (catalog.drives().isEmpty() && catalog.cards().isEmpty() && catalog.extras().isEmpty()) {
            return Fitout.NONE;
        }
        List<Volume> volumes = volumes();
        SortedMap<String, Card> cards = cards();
        List<String> drivers = new ArrayList<>(List.of("onboard"));
        cards.forEach((slot, card) -> {
            if (card.support().isPresent() || chance(SPOILT)) {
                drivers.add(slot);
            }
        });
        drivers.removeIf(driver -> driver.equals("onboard") && platform.expansion().onboard().isEmpty() && !chance(SPOILT));
        Optional<String> driver = drivers.isEmpty() || volumes.isEmpty() || chance(SPOILT) ? Optional.empty()
                : Optional.of(chance(0.03) ? "nowhere" : any(drivers));
        return new Fitout(volumes, driver, cards, extras(cards), Optional.empty());
    }

    private List<Volume> volumes() {
        List<Volume> volumes = new ArrayList<>();
        for (VolumeWish wish : request.equipment().volumes()) {
            List<BayGroup> groups = platform.expansion().bays();
            List<BayGroup> live = groups.stream().filter(group -> group.socket().isEmpty() || group.socket().getAsInt() <= fitted).toList();
            if (groups.isEmpty() || catalog.drives().isEmpty() || chance(SPOILT)) {
                continue;
            }
            BayGroup group = any(live.isEmpty() || chance(SPOILT) ? groups : live);
            List<Drive> fitting = catalog.drives().stream().filter(drive -> group.links().contains(drive.link())
                    && (wish.kind().isEmpty() || wish.kind().get() == drive.kind()) && (wish.link().isEmpty() || wish.link().get() == drive.link())).toList();
            Drive drive = any(fitting.isEmpty() || chance(SPOILT) ? catalog.drives() : fitting);
            RaidLevel level = chance(0.03) ? any(List.of(RaidLevel.values())) : wish.level();
            int least = 1;
            while (EveryFitout.usable(level, least, drive.capacityGb()) < (chance(SPOILT) ? 1e-9 : Math.max(1e-9, wish.usableGb())) && least < 9) {
                least++;
            }
            int data = Math.max(1, chance(0.8) ? least : random.nextInt(1, group.count() + 2));
            List<Drive> drives = new ArrayList<>();
            for (int i = 0; i < data + wish.hotSpares() + (chance(0.04) ? 1 : 0); i++) {
                List<Drive> alike = catalog.drives().stream().filter(one -> one.likeness().equals(drive.likeness())).toList();
                drives.add(any(chance(0.02) ? catalog.drives() : alike));
            }
            volumes.add(new Volume(chance(0.03) ? "other" : wish.name(), level, chance(0.03) ? "nowhere" : group.name(), drives.subList(0, data),
                    drives.subList(data, drives.size())));
        }
        return volumes;
    }

    private SortedMap<String, Card> cards() {
        SortedMap<String, Card> cards = new TreeMap<>();
        List<Card> wanted = new ArrayList<>();
        for (CardWish wish : request.equipment().cards()) {
            List<Card> serving = catalog.cards().stream().filter(card -> wish.sku().isPresent() ? wish.sku().get().equals(card.sku())
                    : wish.kind().orElseThrow() == card.kind() && card.ports() >= wish.ports() && card.portGbit() >= wish.portGbit()).toList();
            if (!serving.isEmpty() && !chance(SPOILT)) {
                Card card = any(serving);
                for (int i = 0; i < wish.count() - (chance(SPOILT) ? 1 : 0); i++) {
                    wanted.add(chance(0.04) ? any(catalog.cards()) : card);
                }
            }
        }
        List<Card> controllers = catalog.cards().stream().filter(card -> card.support().isPresent()).toList();
        if (!controllers.isEmpty() && chance(0.5)) {
            wanted.add(any(controllers));
        }
        for (Card card : wanted) {
            List<String> fitting = platform.expansion().slots().stream().filter(slot -> slot.offers().lanes() >= card.shape().lanes()
                    && slot.offers().powerW() >= card.powerW() && (slot.socket().isEmpty() || slot.socket().getAsInt() <= fitted || chance(SPOILT)))
                    .map(CardSlot::name).filter(slot -> !cards.containsKey(slot)).toList();
            List<String> free = platform.expansion().slots().stream().map(CardSlot::name).filter(slot -> !cards.containsKey(slot)).toList();
            List<String> choice = fitting.isEmpty() || chance(SPOILT) ? free : fitting;
            if (!choice.isEmpty()) {
                cards.put(chance(0.02) ? "nowhere" : any(choice), card);
            }
        }
        return cards;
    }

    private Map<Extra, Integer> extras(SortedMap<String, Card> cards) {
        Map<String, Integer> units = new TreeMap<>(request.equipment().extras());
        for (Need need : platform.expansion().needs()) {
            int times = need.cause() == Need.Cause.PROCESSORS ? fitted >= need.from() ? 1 : 0 : Math.max(0, platform.processors().sockets() - fitted);
            need.parts().forEach((sku, each) -> units.merge(sku, times * each, Integer::sum));
        }
        platform.expansion().slots().stream().filter(slot -> cards.containsKey(slot.name())).flatMap(slot -> slot.riser().stream()).distinct()
                .forEach(riser -> units.merge(riser, chance(SPOILT) ? 0 : 1, Integer::sum));
        Map<Extra, Integer> extras = new HashMap<>();
        catalog.extras().forEach(extra -> {
            int count = Math.max(0, units.getOrDefault(extra.sku(), 0) + (chance(SPOILT) ? random.nextInt(-1, 2) : 0));
            if (count > 0) {
                extras.put(extra, count);
            }
        });
        return extras;
    }

    private boolean chance(double share) {
        return random.nextDouble() < share;
    }

    private <T> T any(Collection<T> choices) {
        List<T> list = List.copyOf(choices);
        return list.get(random.nextInt(list.size()));
    }
}
