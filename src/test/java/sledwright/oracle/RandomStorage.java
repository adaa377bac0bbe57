package sledwright.oracle;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.SplittableRandom;
import sledwright.domain.Assortment;
import sledwright.domain.Availability;
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
import sledwright.samples.Samples;
import sledwright.samples.Shops;

/**
 * Shops of one machine with many drives, cards and extras, too many to list: up to sixteen bays, three volumes and three entries of cards.
 * Processor, memory and heat sink are one part each at one price.
 */
final class RandomStorage {

    private static final int PLENTY = 100;

    private final SplittableRandom random;
    private final int machines;
    private final Map<String, List<Lot>> lots = new LinkedHashMap<>();
    private final List<Drive> drives = new ArrayList<>();
    private final List<Card> cards = new ArrayList<>();
    private final List<Extra> extras = new ArrayList<>();

    private RandomStorage(long seed) {
        random = new SplittableRandom(seed * 6_700_417 + 3);
        machines = chance(0.6) ? 1 : between(2, 4);
    }

    static RandomCase of(long seed) {
        return new RandomStorage(seed).make(seed);
    }

    private RandomCase make(long seed) {
        makeDrives();
        makeCards();
        for (int i = 1; i <= 4; i++) {
            extras.add(new Extra("X" + i, "random extra", between(0, 9)));
            offer("X" + i, between(100, 1500), 6 * machines);
        }
        Platform platform = Samples.platform().cooling(Samples.TALL).supplies().expansion(expansion()).make();
        Map.of(platform.sku(), 30_000L, Samples.TALL.sku(), 1_000L, Samples.P10.sku(), 9_000L, Samples.R16.sku(), 2_000L)
                .forEach((sku, price) -> lots.put(sku, List.of(Samples.lot(sku, "L1", PLENTY, price))));
        Catalog plain = Samples.catalog(List.of(platform), List.of(Samples.P10), List.of(Samples.R16));
        Labour labour = new Labour(1_000, 100, pick(0, 0, 150), pick(0, 0, 400));
        Catalog catalog = Shops.of(plain.name(), plain.currency(), plain.pricedOn(), labour, plain.throughputFactors(),
                new Assortment(List.of(platform), List.of(), plain.processors(), plain.modules(), drives, cards, extras), lots, Stationery.PLAIN);
        Request request = Request.named("storage").withMachines(machines).withAlternatives(1, 0.05).withEquipment(equipment());
        if (chance(0.3)) {
            request = request.withLimit(request.limit().withPowerW(OptionalDouble.of(230 + between(0, 40) * 5)));
        }
        if (chance(0.2)) {
            request = request.withOnHand(new HashMap<>(Map.of(any(drives).sku(), between(1, 4), any(cards).sku(), 1)));
        }
        return new RandomCase(seed, catalog, request);
    }

    private void makeDrives() {
        int kinds = between(3, 6);
        for (int k = 0; k < kinds; k++) {
            Drive.Kind kind = new Drive.Kind(pick(DriveKind.values()), pick(DriveInterface.SATA, DriveInterface.SATA, DriveInterface.SAS, DriveInterface.NVME),
                    pick(FormFactor.SMALL, FormFactor.SMALL, FormFactor.LARGE), pick(240, 480, 960, 1200, 1920, 4000));
            double watts = drives.stream().filter(drive -> drive.likeness().equals(kind)).mapToDouble(Drive::powerW).findFirst().orElse(between(3, 12));
            int parts = between(1, 3);
            for (int i = 0; i < parts; i++) {
                String sku = "D" + (drives.size() + 1);
                drives.add(new Drive(sku, "random drive", kind, machines > 1 ? watts : between(3, 15), OptionalDouble.empty(), OptionalDouble.empty(),
                        OptionalDouble.empty()));
                offer(sku, between(8, 60) * 100, 10 * machines);
            }
        }
    }

    private void makeCards() {
        int count = between(5, 9);
        for (int i = 1; i <= count; i++) {
            CardKind kind = i == 1 ? CardKind.NETWORK : pick(CardKind.NETWORK, CardKind.CONTROLLER, CardKind.CONTROLLER, CardKind.ACCELERATOR);
            CardShape shape = new CardShape(pick(2, 3, 3), pick(4, 8, 8), pick(CardHeight.LOW, CardHeight.LOW, CardHeight.FULL), pick(150, 200), pick(5, 12, 20, 60));
            Optional<DriveSupport> support = kind == CardKind.CONTROLLER ? Optional.of(new DriveSupport(links(), between(4, 16), levels())) : Optional.empty();
            cards.add(new Card("K" + i, "random card", kind, shape, kind == CardKind.NETWORK ? pick(1, 2, 4) : 0, kind == CardKind.NETWORK ? pick(1, 10, 25) : 0, support));
            offer("K" + i, between(5, 90) * 100, 3 * machines);
        }
    }

    private Set<DriveInterface> links() {
        return chance(0.4) ? Set.of(DriveInterface.SATA) : EnumSet.of(DriveInterface.SATA, DriveInterface.SAS);
    }

    private Set<RaidLevel> levels() {
        Set<RaidLevel> levels = EnumSet.noneOf(RaidLevel.class);
        Arrays.stream(RaidLevel.values()).filter(level -> chance(0.9)).forEach(levels::add);
        return levels;
    }

    private Expansion expansion() {
        List<BayGroup> bays = new ArrayList<>();
        int groups = between(1, 3);
        for (int i = 1; i <= groups; i++) {
            bays.add(new BayGroup("bays" + i, between(i == 1 ? 5 : 2, i == 1 ? 12 : 4), chance(0.15) ? Set.of(FormFactor.SMALL) : Set.of(FormFactor.SMALL, FormFactor.LARGE),
                    chance(0.7) ? EnumSet.allOf(DriveInterface.class) : links(), levels(), chance(0.75) ? OptionalInt.empty() : OptionalInt.of(2)));
        }
        List<CardSlot> slots = new ArrayList<>();
        int count = between(2, 6);
        for (int i = 1; i <= count; i++) {
            slots.add(new CardSlot("slot" + i, new CardShape(3, pick(8, 8, 16), pick(CardHeight.values()), pick(160, 250), pick(25, 75)),
                    chance(0.6) ? OptionalInt.empty() : OptionalInt.of(between(1, 2)), chance(0.5) ? Optional.empty() : Optional.of("X" + between(1, 3))));
        }
        List<Need> needs = List.of(new Need(Need.Cause.PROCESSORS, 2, Map.of("X" + between(2, 4), between(1, 2))),
                new Need(Need.Cause.EMPTY_SOCKETS, 0, Map.of("X4", 1)));
        Optional<DriveSupport> onboard = chance(0.7) ? Optional.of(new DriveSupport(Set.of(DriveInterface.SATA), between(2, 8), levels())) : Optional.empty();
        return new Expansion(bays, onboard, slots, needs);
    }

    private Equipment equipment() {
        List<VolumeWish> volumes = new ArrayList<>();
        int count = between(1, 3);
        for (int i = 1; i <= count; i++) {
            RaidLevel level = pick(RaidLevel.values());
            volumes.add(new VolumeWish("v" + i, between(1, 12) * 100, level, chance(0.9) ? Optional.empty() : Optional.of(pick(DriveKind.values())),
                    chance(0.93) ? Optional.empty() : Optional.of(pick(DriveInterface.values())), level == RaidLevel.LEVEL_0 || chance(0.7) ? 0 : 1));
        }
        List<CardWish> wishes = new ArrayList<>();
        int asked = between(0, 2);
        for (int i = 0; i < asked; i++) {
            Card card = any(cards);
            boolean byKind = card.kind() != CardKind.ACCELERATOR && chance(0.7);
            boolean network = card.kind() == CardKind.NETWORK && byKind;
            wishes.add(new CardWish(byKind ? Optional.empty() : Optional.of(card.sku()), byKind ? Optional.of(card.kind()) : Optional.empty(),
                    network ? between(0, 2) : 0, network ? pick(0, 1, 10) : 0, chance(0.85) ? 1 : 2));
        }
        return new Equipment(volumes, wishes, chance(0.3) ? Map.of("X1", between(1, 2)) : Map.of(), EnclosureFrom.NEW);
    }

    private void offer(String sku, long price, int most) {
        List<Lot> list = new ArrayList<>();
        int count = between(1, 3);
        for (int i = 1; i <= count; i++) {
            long unit = price * between(70, 130) / 100;
            List<Lot.PriceBreak> breaks = new ArrayList<>();
            int from = chance(0.9) ? 1 : between(2, 4);
            breaks.add(new Lot.PriceBreak(from, unit, OptionalLong.empty()));
            if (chance(0.5)) {
                breaks.add(new Lot.PriceBreak(from + between(1, 5), unit * between(40, 95) / 100, OptionalLong.empty()));
            }
            list.add(new Lot(sku, "L" + i, "random supplier", Condition.USED, new Availability(chance(0.7) ? most : between(1, most), 0),
                    breaks, false));
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
