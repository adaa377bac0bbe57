package sledwright.explain.conflict;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sledwright.domain.BayGroup;
import sledwright.domain.Build;
import sledwright.domain.Card;
import sledwright.domain.CardSlot;
import sledwright.domain.CardWish;
import sledwright.domain.Catalog;
import sledwright.domain.Drive;
import sledwright.domain.Equipment;
import sledwright.domain.Expansion;
import sledwright.domain.Extra;
import sledwright.domain.Fitout;
import sledwright.domain.Part;
import sledwright.domain.Request;
import sledwright.domain.Stock;
import sledwright.domain.Volume;
import sledwright.domain.VolumeWish;
import sledwright.rules.Machine;
import sledwright.rules.Rulebook;
import sledwright.rules.Violation;
import sledwright.rules.card.CardFits;
import sledwright.rules.choice.RequiredPart;
import sledwright.rules.stock.InStock;
import sledwright.rules.storage.DriveBay;
import sledwright.rules.storage.StorageCapacity;
import sledwright.rules.storage.VolumeDrives;
import sledwright.words.Sentence;

/** Why a drive, card or extra that is held does not go into a build which is valid without it. */
final class EquipmentLacks {

    private final Request request;
    private final Catalog catalog;
    private final Stock stock;
    private final Build bare;
    private final Expansion expansion;

    /**
     * @param request asks for the volumes, cards and extras that stand beyond question
     * @param bare    valid but for these
     */
    EquipmentLacks(Request request, Catalog catalog, Build bare) {
        this.request = request;
        this.catalog = catalog;
        this.bare = bare;
        stock = Stock.of(catalog, request);
        expansion = bare.platform().expansion();
    }

    /** What bars the part, in the words of the rule that the nearest way to fit it breaks. */
    Violation of(Part held) {
        if (held instanceof Drive drive) {
            return of(drive);
        }
        if (held instanceof Card card) {
            return of(card);
        }
        boolean called = request.equipment().extras().containsKey(held.sku())
                || expansion.needs().stream().anyMatch(need -> need.parts().containsKey(held.sku()))
                || expansion.slots().stream().anyMatch(slot -> slot.riser().equals(Optional.of(held.sku())));
        return called ? together(held) : uncalled(held);
    }

    private static Violation uncalled(Part held) {
        return new Violation(RequiredPart.ID, held.sku(), Sentence.of("Nothing that is asked for brings %s into a build.", held.sku()));
    }

    private static Violation together(Part held) {
        return new Violation(RequiredPart.ID, held.sku(),
                Sentence.of("No set of drives, cards and extras with %s serves all that is asked for.", held.sku()));
    }

    private Violation of(Drive drive) {
        if (request.equipment().volumes().isEmpty()) {
            return uncalled(drive);
        }
        if (expansion.bays().isEmpty()) {
            return new Violation(DriveBay.ID, drive.sku(), Sentence.of("%s has no drive bays.", bare.platform().sku()));
        }
        return request.equipment().volumes().stream().flatMap(wish -> expansion.bays().stream()
                        .flatMap(group -> numbers(wish, group, drive).map(number -> volume(wish, group, drive, number))
                                .flatMap(volume -> breaches(volume, wish))))
                .min(Comparator.comparingInt(List::size)).flatMap(broken -> broken.stream().findFirst()).orElseGet(() -> together(drive));
    }

    /** The least number of data drives that the volume takes, and the least that is large enough. */
    private static Stream<Integer> numbers(VolumeWish wish, BayGroup group, Drive drive) {
        int most = Math.max(group.count() - wish.hotSpares(), wish.level().leastDrives());
        List<Integer> taken = IntStream.rangeClosed(1, most).filter(number -> VolumeDrives.allows(wish.level(), number)).boxed().toList();
        Stream<Integer> large = taken.stream().filter(number -> StorageCapacity.allows(wish, drive.likeness(), number)).limit(1);
        return Stream.concat(large, Stream.of(taken.get(taken.size() - 1))).distinct();
    }

    private static Volume volume(VolumeWish wish, BayGroup group, Drive drive, int number) {
        return new Volume(wish.name(), wish.level(), group.name(), Collections.nCopies(number, drive),
                Collections.nCopies(wish.hotSpares(), drive));
    }

    /** What a volume breaks with each driver. */
    private Stream<List<Violation>> breaches(Volume volume, VolumeWish wish) {
        Request asked = asking(List.of(wish), List.of());
        Stream<Map<String, Card>> controllers = expansion.slots().stream().flatMap(slot -> catalog.cards().stream()
                .filter(card -> card.support().isPresent() && isSold(card.sku()) && CardFits.allows(slot, card, bare.processors().size()))
                .map(card -> Map.of(slot.name(), card)));
        Optional<String> board = expansion.onboard().map(support -> Fitout.ONBOARD);
        return Stream.concat(Stream.of(judged(asked, List.of(volume), board, Map.of())),
                controllers.map(cards -> judged(asked, List.of(volume), cards.keySet().stream().findFirst(), cards)));
    }

    private Violation of(Card card) {
        List<CardWish> wishes = request.equipment().cards().stream().filter(wish -> wish.takes(card)).toList();
        if (wishes.isEmpty() && card.support().isEmpty()) {
            return uncalled(card);
        }
        if (expansion.slots().isEmpty()) {
            return new Violation(CardFits.ID, card.sku(), Sentence.of("%s has no slots for cards.", bare.platform().sku()));
        }
        int count = wishes.stream().mapToInt(CardWish::count).max().orElse(1);
        List<CardSlot> fitting = expansion.slots().stream()
                .filter(slot -> CardFits.allows(slot, card, bare.processors().size())).toList();
        if (fitting.isEmpty()) {
            return expansion.slots().stream().map(slot -> judged(asking(List.of(), List.of()), List.of(), Optional.empty(),
                    Map.of(slot.name(), card))).min(Comparator.comparingInt(List::size)).orElseThrow().get(0);
        }
        Map<String, Card> cards = new TreeMap<>();
        fitting.stream().limit(count).forEach(slot -> cards.put(slot.name(), card));
        for (String sku : risers(cards).keySet()) {
            if (!isSold(sku)) {
                return new Violation(InStock.ID, sku, Sentence.of("No lot offers %s, which it needs.", sku));
            }
        }
        return judged(asking(List.of(), wishes.stream().limit(1).toList()), List.of(), Optional.empty(), cards).stream().findFirst()
                .orElseGet(() -> together(card));
    }

    private Request asking(List<VolumeWish> volumes, List<CardWish> cards) {
        return request.withEquipment(new Equipment(volumes, cards, request.equipment().extras(), request.equipment().enclosure()));
    }

    /** What the build breaks with all of it. */
    private List<Violation> judged(Request asked, List<Volume> volumes, Optional<String> driver, Map<String, Card> cards) {
        Map<Extra, Integer> extras = new HashMap<>(bare.fitout().extras());
        risers(cards).forEach((sku, units) -> extras.merge(catalog.extra(sku).orElseThrow(), units, Integer::sum));
        Fitout fitout = new Fitout(volumes, driver, new TreeMap<>(cards), extras, Optional.empty());
        return new ArrayList<>(Rulebook.judge(Machine.of(bare.with(fitout), asked, catalog.throughputFactors())));
    }

    private Map<String, Integer> risers(Map<String, Card> cards) {
        Map<String, Integer> risers = new TreeMap<>();
        cards.keySet().forEach(slot -> expansion.slot(slot).flatMap(CardSlot::riser).ifPresent(sku -> risers.put(sku, 1)));
        return risers;
    }

    private boolean isSold(String sku) {
        return !stock.lots(sku).isEmpty();
    }
}
