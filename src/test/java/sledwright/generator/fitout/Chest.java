package sledwright.generator.fitout;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sledwright.domain.Assortment;
import sledwright.domain.BayGroup;
import sledwright.domain.Card;
import sledwright.domain.CardHeight;
import sledwright.domain.CardKind;
import sledwright.domain.CardShape;
import sledwright.domain.CardSlot;
import sledwright.domain.CardWish;
import sledwright.domain.Catalog;
import sledwright.domain.Condition;
import sledwright.domain.Drive;
import sledwright.domain.DriveInterface;
import sledwright.domain.DriveKind;
import sledwright.domain.DriveSupport;
import sledwright.domain.Enclosure;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Equipment;
import sledwright.domain.Expansion;
import sledwright.domain.Extra;
import sledwright.domain.FormFactor;
import sledwright.domain.Labour;
import sledwright.domain.Lot;
import sledwright.domain.Need;
import sledwright.domain.Platform;
import sledwright.domain.RaidLevel;
import sledwright.domain.Request;
import sledwright.domain.Stationery;
import sledwright.domain.VolumeWish;
import sledwright.generator.draw.Shelf;
import sledwright.generator.time.Deadline;
import sledwright.samples.Equipped;
import sledwright.samples.Samples;
import sledwright.samples.Shops;

/** A small shop of drives, cards and extras, a board that takes them and a request for some, in the making. */
final class Chest {

    private final List<Drive> drives = new ArrayList<>();
    private final List<Card> cards = new ArrayList<>();
    private final List<Extra> extras = new ArrayList<>();
    private final List<Enclosure> enclosures = new ArrayList<>();
    private final Map<String, List<Lot>> lots = new LinkedHashMap<>();
    private final List<BayGroup> bays = new ArrayList<>();
    private final List<CardSlot> slots = new ArrayList<>();
    private final List<Need> needs = new ArrayList<>();
    private final List<VolumeWish> volumes = new ArrayList<>();
    private final List<CardWish> wishes = new ArrayList<>();
    private final Set<String> use = new TreeSet<>();
    private Optional<DriveSupport> onboard = Optional.empty();
    private Labour labour = new Labour(0, 0, 0, 0);
    private int machines = 1;
    private int processors = 1;
    private boolean everyWeight;
    private int looks;

    static CardShape shape(CardHeight height, double lengthMm, double watts) {
        return new CardShape(3, 8, height, lengthMm, watts);
    }

    static DriveSupport serving(int ports, RaidLevel... levels) {
        return new DriveSupport(Set.of(DriveInterface.SATA), ports, Set.of(levels));
    }

    Chest offer(String sku, int units, Map<Integer, Long> prices) {
        lots.computeIfAbsent(sku, key -> new ArrayList<>()).add(Samples.lot(sku, sku + "-" + lots.size(), units, 0, Condition.NEW, new TreeMap<>(prices)));
        return this;
    }

    /** A low and short network card of which there are nine. */
    Chest network(String sku, long price, double watts) {
        return card(sku, price, CardKind.NETWORK, shape(CardHeight.LOW, 160, watts), Optional.empty());
    }

    /** A low and short controller of ten watts of which there are nine. */
    Chest controller(String sku, long price, DriveSupport support) {
        return card(sku, price, CardKind.CONTROLLER, shape(CardHeight.LOW, 160, 10), Optional.of(support));
    }

    Chest card(String sku, long price, CardKind kind, CardShape shape, Optional<DriveSupport> support) {
        cards.add(new Card(sku, sku, kind, shape, kind == CardKind.NETWORK ? 2 : 0, kind == CardKind.NETWORK ? 10 : 0, support));
        return offer(sku, 9, Map.of(1, price));
    }

    /** The same card at prices of the test's own. */
    Chest card(Card card) {
        cards.add(card);
        return this;
    }

    Chest extra(String sku, long price, double watts) {
        extras.add(new Extra(sku, sku, watts));
        return offer(sku, 99, Map.of(1, price));
    }

    /** Solid-state drives of 2.5 inches of which there are ninety-nine. */
    Chest drive(String sku, DriveInterface link, double gb, long price, double watts) {
        drives.add(Equipped.drive(sku, DriveKind.SSD, link, FormFactor.SMALL, gb, watts));
        return offer(sku, 99, Map.of(1, price));
    }

    /** The same without an offer. */
    Chest drive(String sku, DriveInterface link, double gb, double watts) {
        drives.add(Equipped.drive(sku, DriveKind.SSD, link, FormFactor.SMALL, gb, watts));
        return this;
    }

    Chest enclosure(Enclosure enclosure) {
        enclosures.add(enclosure);
        return this;
    }

    Chest bays(String name, int count, RaidLevel... levels) {
        bays.add(new BayGroup(name, count, Set.of(FormFactor.SMALL), Set.of(DriveInterface.values()), Set.of(levels), OptionalInt.empty()));
        return this;
    }

    /** A slot that takes any card. */
    Chest slot(String name) {
        return slot(name, shape(CardHeight.FULL, 312, 75), Optional.empty());
    }

    Chest slot(String name, CardShape offers, Optional<String> riser) {
        slots.add(new CardSlot(name, offers, OptionalInt.empty(), riser));
        return this;
    }

    Chest onboard(DriveSupport support) {
        onboard = Optional.of(support);
        return this;
    }

    Chest needs(Need need) {
        needs.add(need);
        return this;
    }

    Chest asksFor(int count, CardKind kind) {
        wishes.add(new CardWish(Optional.empty(), Optional.of(kind), 0, 0, count));
        return this;
    }

    Chest asksFor(int count, String sku) {
        wishes.add(new CardWish(Optional.of(sku), Optional.empty(), 0, 0, count));
        return this;
    }

    Chest asksFor(String name, double gb, RaidLevel level, int spares) {
        volumes.add(new VolumeWish(name, gb, level, Optional.empty(), Optional.empty(), spares));
        return this;
    }

    Chest uses(String sku) {
        use.add(sku);
        return this;
    }

    Chest labour(long perDrive, long perCard) {
        labour = new Labour(0, 0, perDrive, perCard);
        return this;
    }

    Chest machines(int number) {
        machines = number;
        return this;
    }

    Chest everyWeight() {
        everyWeight = true;
        return this;
    }

    Platform platform() {
        return Samples.platform().expansion(new Expansion(bays, onboard, slots, needs)).make();
    }

    Catalog catalog() {
        return Shops.of("chest", Currency.getInstance("EUR"), LocalDate.of(2025, 1, 1), labour, Samples.FACTORS,
                new Assortment(List.of(platform()), enclosures, List.of(), List.of(), drives, cards, extras), lots, Stationery.PLAIN);
    }

    Request request() {
        return Request.named("chest").withMachines(machines).withUse(use)
                .withEquipment(new Equipment(volumes, wishes, Map.of(), EnclosureFrom.NEW));
    }

    Shelf shelf() {
        return new Shelf(catalog(), request());
    }

    private Fittings.Chassis chassis() {
        return new Fittings.Chassis(platform(), processors, everyWeight);
    }

    /** Never over; counts how often it is asked: once for each choice that is looked at. */
    private Deadline counted() {
        looks = 0;
        return Deadline.never().or(() -> {
            looks++;
            return false;
        });
    }

    List<CardPlan> cardPlans(boolean drivesAsked) {
        return new CardPlans(catalog(), request(), shelf(), chassis(), counted()).all(drivesAsked);
    }

    List<VolumePlan> volumePlans(CardPlan cards) {
        Map<Drive.Kind, DriveDraws> draws = new LinkedHashMap<>();
        Map<String, Integer> wanted = new HashMap<>();
        use.forEach(sku -> wanted.put(sku, machines));
        drives.stream().collect(Collectors.groupingBy(Drive::likeness, LinkedHashMap::new, Collectors.toList()))
                .forEach((kind, alike) -> draws.put(kind, new DriveDraws(shelf(), labour, wanted, machines, alike, everyWeight)));
        return new VolumePlans(labour, request(), chassis(), draws, use, counted()).of(cards);
    }

    /** Cards that drive by a driver of the board. */
    static CardPlan drivenBy(DriveSupport support, boolean mustDrive) {
        return new CardPlan(0, 0, new TreeMap<>(), new TreeMap<>(), Optional.of("X1"), Optional.of(support), mustDrive);
    }

    static final CardPlan NO_CARDS = new CardPlan(0, 0, new TreeMap<>(), new TreeMap<>(), Optional.empty(), Optional.empty(), false);

    /** How many choices the last plans took. */
    int looks() {
        return looks;
    }
}
