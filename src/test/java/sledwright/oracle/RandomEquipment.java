package sledwright.oracle;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import sledwright.domain.Assortment;
import sledwright.domain.Availability;
import sledwright.domain.BayGroup;
import sledwright.domain.Board;
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
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.MemoryMode;
import sledwright.domain.Need;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Platform;
import sledwright.domain.ProcessorSupport;
import sledwright.domain.RaidLevel;
import sledwright.domain.Request;
import sledwright.domain.Requirements;
import sledwright.domain.Stationery;
import sledwright.domain.Supply;
import sledwright.domain.VolumeWish;
import sledwright.samples.Shops;
import sledwright.samples.Variations;

/** Gives a random case drives, cards, extras, bays, slots, needs and enclosures, and asks for them; always the same of the same case. */
final class RandomEquipment {

    private static final int TRIED = 5;
    private static final long FAR = 1_000_003;

    private final long seed;
    private final SplittableRandom random;
    /** For what is added to the cases as time goes by, so that the rest of each stays what it was. */
    private final SplittableRandom added;
    /** Drives of several form factors, which not every group of bays takes. */
    private final boolean mixed;
    private final int machines;
    private final Map<String, List<Lot>> lots = new LinkedHashMap<>();
    private final List<Drive> drives = new ArrayList<>();
    private final List<Card> cards = new ArrayList<>();
    private final List<Extra> extras = new ArrayList<>();

    private RandomEquipment(long seed, int machines, Map<String, List<Lot>> others) {
        this.seed = seed;
        random = new SplittableRandom(seed * 15_485_863 + 11);
        added = new SplittableRandom(seed * 32_452_843 + 13);
        mixed = added.nextInt(4) == 0;
        this.machines = machines;
        lots.putAll(others);
    }

    /** An order with equipment for three lines in four, whatever can be met of it; drives, cards and extras come from several suppliers. */
    static RandomOrder on(RandomOrder bare) {
        RandomEquipment added = new RandomEquipment(bare.seed(), bare.seed() % 3 == 0 ? 2 : 10, bare.catalog().lots());
        Catalog plain = bare.catalog();
        Catalog catalog = added.equipped(plain, added.platforms(plain), List.copyOf(plain.enclosures()));
        Map<String, List<Lot>> supplied = new LinkedHashMap<>();
        catalog.lots().forEach((sku, list) -> supplied.put(sku, plain.part(sku).isPresent() ? list : list.stream().map(lot -> new Lot(sku,
                lot.lot(), added.any(RandomOrder.SUPPLIERS), lot.condition(), lot.stock(), lot.breaks(), false)).toList()));
        Catalog shop = Variations.of(catalog.withLots(supplied), plain.suppliers());
        List<OrderLine> lines = new ArrayList<>(bare.order().lines());
        lines.replaceAll(line -> added.chance(0.2) ? line : added.equipped(line, shop, bare.order().onHand()));
        OrderRequest order = bare.order();
        return new RandomOrder(bare.seed(), shop, new OrderRequest(order.name(), lines, order.suppliersMax(),
                order.deliveryCharge(), order.modulePartCharge(), order.onHand()));
    }

    /** A case that can be met without equipment, mostly, with some. */
    static RandomCase of(long seed) {
        RandomCase bare = RandomCase.of(seed, RandomCase.Size.LISTABLE);
        for (int i = 1; i <= TRIED && Agreement.search(relaxed(bare)).ranked().isEmpty(); i++) {
            bare = RandomCase.of(seed + i * FAR, RandomCase.Size.LISTABLE);
        }
        return Packs.perhaps(on(relaxed(bare), seed));
    }

    /** The case with equipment, whatever can be met of it. */
    static RandomCase on(RandomCase bare, long seed) {
        return new RandomEquipment(seed, bare.request().machines(), bare.lots()).equipped(bare);
    }

    /** Few requests that ask for much of everything can be met: most ask for little beside drives and cards. */
    private static RandomCase relaxed(RandomCase that) {
        SplittableRandom random = new SplittableRandom(that.seed() * 3_571 + 5);
        Request request = that.request();
        if (random.nextDouble() < 0.7) {
            request = request.withRequire(Requirements.NONE.withMode(random.nextDouble() < 0.8 ? MemoryMode.INDEPENDENT : request.require().mode()));
        }
        return that.with(random.nextDouble() < 0.7 ? request.withLimit(Limits.NONE) : request);
    }

    private List<Platform> platforms(Catalog plain) {
        makeDrives();
        makeCards();
        for (int i = 1; i <= 3; i++) {
            extras.add(new Extra("X" + i, "random extra", pick(0, 0, 4, 9)));
            offer("X" + i, between(100, 1500), 4 * machines);
        }
        return plain.platforms().stream().map(this::expanded).toList();
    }

    private Catalog equipped(Catalog plain, List<Platform> platforms, List<Enclosure> enclosures) {
        Labour labour = new Labour(plain.labour().perMachine(), plain.labour().perModule(), pick(0, 0, 150), pick(0, 0, 400));
        return Shops.of(plain.name(), plain.currency(), plain.pricedOn(), labour, plain.throughputFactors(),
                new Assortment(platforms, enclosures, plain.processors(), plain.modules(), drives, cards, extras), lots, Stationery.PLAIN);
    }

    private RandomCase equipped(RandomCase that) {
        List<Platform> platforms = platforms(that.catalog());
        List<Enclosure> enclosures = enclosures(platforms);
        Catalog catalog = equipped(that.catalog(), platforms, enclosures);
        Request request = that.request().withEquipment(equipment());
        Limits limit = request.limit();
        OptionalLong most = limit.price().isPresent() ? OptionalLong.of(limit.price().getAsLong() + machines * between(0, 60) * 1000L) : limit.price();
        request = request.withLimit(limit.withPrice(most).withPowerW(chance(0.25) ? OptionalDouble.of(between(40, 120) * 5) : OptionalDouble.empty()));
        List<String> skus = new ArrayList<>();
        drives.forEach(drive -> skus.add(drive.sku()));
        cards.forEach(card -> skus.add(card.sku()));
        extras.forEach(extra -> skus.add(extra.sku()));
        enclosures.forEach(enclosure -> skus.addAll(List.of(enclosure.sku(), enclosure.supplies().get(0).sku())));
        request = chance(0.12) ? request.withUse(with(request.use(), any(skus))) : request;
        request = chance(0.1) ? request.withForbid(with(request.forbid(), any(skus))) : request;
        if (chance(0.15)) {
            Map<String, Integer> own = new HashMap<>(request.onHand());
            own.put(any(skus), between(1, 3));
            request = request.withOnHand(own);
        }
        return new RandomCase(seed, catalog, request);
    }

    /** The line with equipment that some machine has, but for a few. */
    private OrderLine equipped(OrderLine line, Catalog shop, Map<String, Integer> own) {
        OrderLine drawn = line;
        for (int i = 0; i < 3 * TRIED; i++) {
            drawn = new OrderLine(line.name(), line.request().withEquipment(equipment().withEnclosure(line.request().equipment().enclosure())), line.priority(),
                    line.uniform());
            try {
                if (!EveryMachine.of(shop, drawn.request(), line.uniform(), RandomOrder.stock(shop, own, drawn.request().limit())).isEmpty()) {
                    return drawn;
                }
            } catch (EveryMachine.TooManyException large) {
                // Another may ask for less.
            }
        }
        return drawn;
    }

    private static Set<String> with(Set<String> some, String more) {
        Set<String> all = new HashSet<>(some);
        all.add(more);
        return all;
    }

    private void makeDrives() {
        int kinds = between(1, 3);
        for (int k = 0; k < kinds; k++) {
            Drive.Kind kind = new Drive.Kind(pick(DriveKind.values()), pick(DriveInterface.SATA, DriveInterface.SATA, DriveInterface.SAS, DriveInterface.NVME),
                    mixed ? FormFactor.values()[added.nextInt(FormFactor.values().length)] : FormFactor.SMALL, pick(200, 400, 400, 800));
            double watts = drives.stream().filter(drive -> drive.likeness().equals(kind)).mapToDouble(Drive::powerW).findFirst().orElse(between(3, 12));
            int parts = machines > 1 ? between(1, 2) : between(1, 2);
            for (int i = 0; i < parts; i++) {
                String sku = "D" + (drives.size() + 1);
                double own = machines > 1 || chance(0.5) ? watts : between(3, 40);
                drives.add(new Drive(sku, "random drive", kind, own, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty()));
                offer(sku, between(800, 6000), 6 * machines);
            }
        }
    }

    private void makeCards() {
        int count = between(2, 4);
        for (int i = 1; i <= count; i++) {
            CardKind kind = pick(CardKind.NETWORK, CardKind.CONTROLLER, CardKind.CONTROLLER, CardKind.ACCELERATOR);
            CardShape shape = new CardShape(pick(2, 3, 3), pick(4, 8, 8), pick(CardHeight.LOW, CardHeight.LOW, CardHeight.FULL), pick(150, 200), pick(5, 10, 60));
            cards.add(new Card("K" + i, "random card", kind, shape, kind == CardKind.NETWORK ? between(1, 2) : 0, kind == CardKind.NETWORK ? pick(1, 10) : 0,
                    kind == CardKind.CONTROLLER ? Optional.of(new DriveSupport(links(), between(2, 8), levels())) : Optional.empty()));
            offer("K" + i, between(500, 9000), 3 * machines);
        }
    }

    private Set<DriveInterface> links() {
        return pick(EnumSet.of(DriveInterface.SATA), EnumSet.of(DriveInterface.SATA, DriveInterface.SAS), EnumSet.of(DriveInterface.SAS, DriveInterface.NVME));
    }

    private Set<RaidLevel> levels() {
        Set<RaidLevel> levels = EnumSet.noneOf(RaidLevel.class);
        for (RaidLevel level : RaidLevel.values()) {
            if (chance(0.75)) {
                levels.add(level);
            }
        }
        return levels;
    }

    private Platform expanded(Platform from) {
        List<BayGroup> bays = new ArrayList<>();
        int groups = between(1, 2);
        for (int i = 1; i <= groups; i++) {
            bays.add(new BayGroup("bays" + i, between(1, i == 1 ? 6 : 3), formFactors(), chance(0.7) ? EnumSet.allOf(DriveInterface.class) : links(), levels(),
                    chance(0.75) ? OptionalInt.empty() : OptionalInt.of(between(1, from.processors().sockets()))));
        }
        List<CardSlot> slots = new ArrayList<>();
        int count = chance(0.1) ? 0 : between(1, 3);
        for (int i = 1; i <= count; i++) {
            slots.add(new CardSlot("slot" + i, new CardShape(3, pick(4, 8, 16, 16), pick(CardHeight.LOW, CardHeight.FULL, CardHeight.FULL), pick(160, 250, 250), pick(15, 75, 75)),
                    chance(0.7) ? OptionalInt.empty() : OptionalInt.of(between(1, from.processors().sockets())),
                    chance(0.65) ? Optional.empty() : Optional.of("X" + between(1, 2))));
        }
        List<Need> needs = new ArrayList<>();
        if (chance(0.3)) {
            needs.add(new Need(Need.Cause.PROCESSORS, between(1, 2), Map.of("X" + between(1, 3), between(1, 2))));
        }
        if (chance(0.2)) {
            needs.add(new Need(Need.Cause.EMPTY_SOCKETS, 0, Map.of("X3", 1)));
        }
        Optional<DriveSupport> onboard = chance(0.7) ? Optional.of(new DriveSupport(chance(0.5) ? Set.of(DriveInterface.SATA) : EnumSet.of(DriveInterface.SATA, DriveInterface.SAS), between(1, 6), levels())) : Optional.empty();
        boolean spare = added.nextInt(6) == 0 && from.board().slot("1A1").isPresent();
        return new Platform(from.sku(), from.name(), spare ? oneMore(from.processors()) : from.processors(), from.memory(),
                spare ? oneMore(from.board()) : from.board(), from.coolingAndPower(), new Expansion(bays, onboard, slots, needs));
    }

    /** With a socket that is never fitted. */
    private static ProcessorSupport oneMore(ProcessorSupport from) {
        return new ProcessorSupport(from.socket(), from.generations(), from.counts(), from.maxTdpW(), from.sockets() + 1);
    }

    private static Board oneMore(Board from) {
        return new Board(from.sockets() + 1, from.channels(), from.slotsPerChannel(), from.fillSide(), List.of());
    }

    private Set<FormFactor> formFactors() {
        if (!mixed) {
            return Set.of(FormFactor.SMALL);
        }
        Set<FormFactor> some = EnumSet.of(FormFactor.values()[added.nextInt(FormFactor.values().length)]);
        Arrays.stream(FormFactor.values()).filter(other -> added.nextInt(3) > 0).forEach(some::add);
        return some;
    }

    private List<Enclosure> enclosures(List<Platform> platforms) {
        List<String> sleds = platforms.stream().filter(platform -> platform.power().supplies().isEmpty()).map(Platform::sku).toList();
        List<Enclosure> enclosures = new ArrayList<>();
        int count = sleds.isEmpty() || chance(0.2) ? 0 : between(1, 2);
        for (int i = 1; i <= count; i++) {
            List<Supply> supplies = new ArrayList<>();
            int options = between(1, 2);
            for (int j = 1; j <= options; j++) {
                int units = between(1, 2);
                String sku = "ES" + i + j;
                supplies.add(new Supply(sku, "random supply", units, units - 1, between(4, 20) * 50, chance(0.7) ? 300 : 0, new TreeMap<>()));
                offer(sku, between(500, 4000), 6);
            }
            enclosures.add(new Enclosure("E" + i, "random enclosure", Set.copyOf(sleds), between(1, 3), between(0, 40), chance(0.7) ? 0 : between(4, 16) * 50, supplies));
            offer("E" + i, between(1000, 9000), 4);
        }
        return enclosures;
    }

    private Equipment equipment() {
        List<VolumeWish> volumes = new ArrayList<>();
        int count = pick(0, 1, 1, 1, 2);
        for (int i = 1; i <= count; i++) {
            RaidLevel level = pick(RaidLevel.LEVEL_0, RaidLevel.LEVEL_0, RaidLevel.LEVEL_1, RaidLevel.LEVEL_1, RaidLevel.LEVEL_5, RaidLevel.LEVEL_6, RaidLevel.LEVEL_10);
            Drive.Kind likely = any(drives).likeness();
            volumes.add(new VolumeWish("v" + i, pick(0, 200, 300, 400, 800), level, chance(0.8) ? Optional.empty() : Optional.of(chance(0.8) ? likely.kind() : pick(DriveKind.values())),
                    chance(0.85) ? Optional.empty() : Optional.of(chance(0.8) ? likely.link() : pick(DriveInterface.values())), spares(level)));
        }
        List<CardWish> wishes = new ArrayList<>();
        int asked = pick(0, 0, 0, 1, 1, 2);
        for (int i = 0; i < asked; i++) {
            Card card = any(cards);
            boolean byKind = card.kind() != CardKind.ACCELERATOR && chance(0.6);
            boolean network = card.kind() == CardKind.NETWORK;
            wishes.add(new CardWish(byKind ? Optional.empty() : Optional.of(card.sku()), byKind ? Optional.of(card.kind()) : Optional.empty(),
                    byKind && network ? between(0, 1) : 0, byKind && network ? pick(0, 1, 10) : 0, chance(0.9) ? 1 : 2));
        }
        Map<String, Integer> units = chance(0.25) ? Map.of("X" + between(1, 3), between(1, 2)) : Map.of();
        return new Equipment(volumes, wishes, units, chance(0.85) ? EnclosureFrom.NEW : EnclosureFrom.OWN);
    }

    private int spares(RaidLevel level) {
        return level == RaidLevel.LEVEL_0 || chance(0.7) ? 0 : added.nextInt(4) == 0 ? 2 : 1;
    }

    private void offer(String sku, long price, int most) {
        List<Lot> list = new ArrayList<>();
        int count = chance(0.03) ? 0 : between(1, 2);
        for (int i = 1; i <= count; i++) {
            long unit = chance(0.05) ? 0 : price * between(70, 130) / 100;
            int available = chance(0.5) ? most : between(1, most);
            List<Lot.PriceBreak> breaks = new ArrayList<>();
            int from = chance(0.9) ? 1 : 2;
            breaks.add(new Lot.PriceBreak(from, unit, OptionalLong.empty()));
            if (chance(0.5)) {
                breaks.add(new Lot.PriceBreak(from + between(1, 3), unit * between(30, 95) / 100, OptionalLong.empty()));
            }
            list.add(new Lot(sku, "L" + i, "random supplier", pick(Condition.NEW, Condition.USED, Condition.USED),
                    new Availability(available, pick(0, 0, 0, 2, 5)), breaks, false));
        }
        lots.put(sku, list);
    }

    private boolean chance(double share) {
        return random.nextDouble() < share;
    }

    private int between(int least, int most) {
        return random.nextInt(least, most + 1);
    }

    private <T> T any(List<T> choices) {
        return choices.get(random.nextInt(choices.size()));
    }

    @SafeVarargs
    private <T> T pick(T... choices) {
        return choices[random.nextInt(choices.length)];
    }
}
