package sledwright.explain.conflict;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sledwright.domain.BayGroup;
import sledwright.domain.Card;
import sledwright.domain.CardWish;
import sledwright.domain.Catalog;
import sledwright.domain.Drive;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Equipment;
import sledwright.domain.Part;
import sledwright.domain.RaidLevel;
import sledwright.domain.VolumeWish;
import sledwright.explain.ask.Extreme;
import sledwright.explain.ask.Oracle;
import sledwright.explain.ask.WhatIf;
import sledwright.rules.card.AskedCards;
import sledwright.rules.card.PartsNeeded;
import sledwright.rules.enclosure.EnclosurePower;
import sledwright.rules.storage.StorageCapacity;
import sledwright.rules.storage.VolumeDrives;
import sledwright.words.Numbers;
import sledwright.words.Sentence;

/** The drives, cards, extras and enclosures that a request asks for, as demands. */
public final class EquipmentDemands {

    private EquipmentDemands() {
    }

    /**
     * Each volume, its hot spares, entry of cards and extra by itself, entries of one card together, and the enclosure of a sled. What may
     * bring a part that is held beyond question into a build is none: without it nothing could be held.
     */
    static Stream<Demand> of(WhatIf terms, Catalog catalog) {
        Equipment asked = terms.request().equipment();
        Optional<Part> held = terms.held().flatMap(catalog::part);
        boolean isRiser = terms.held().filter(part -> isRiser(part, catalog)).isPresent();
        boolean housing = asked.enclosure() == EnclosureFrom.NEW && !catalog.enclosures().isEmpty()
                && catalog.enclosures().stream().noneMatch(enclosure -> terms.held().filter(enclosure::lists).isPresent());
        Stream<Demand> spares = asked.volumes().stream().filter(wish -> !isRiser && wish.hotSpares() > 0).map(EquipmentDemands::spares);
        Stream<Demand> volumes = asked.volumes().stream().filter(wish -> !isRiser)
                .map(wish -> volume(wish, !(held.orElse(null) instanceof Drive drive && wish.takes(drive.likeness()))));
        Stream<Demand> cards = gathered(asked.cards()).stream()
                .filter(wish -> !isRiser && !(held.orElse(null) instanceof Card card && wish.takes(card))).map(EquipmentDemands::cards);
        return Stream.of(spares, volumes, cards, extras(terms), housing ? Stream.of(enclosure()) : Stream.<Demand>of())
                .flatMap(demands -> demands);
    }

    /** Whether it is one of these. */
    static boolean isOne(Demand demand) {
        return Stream.of(StorageCapacity.KEY, StorageCapacity.SPARES_KEY, AskedCards.KEY, PartsNeeded.KEY, EnclosurePower.KEY)
                .anyMatch(demand::isOf);
    }

    /** Whether something that is asked for may bring a part into a build which it would not be in otherwise. */
    static boolean mayBring(String sku, Equipment asked, Catalog catalog) {
        Part part = catalog.part(sku).orElseThrow();
        if (part instanceof Drive drive) {
            return asked.volumes().stream().anyMatch(wish -> wish.takes(drive.likeness()));
        }
        if (part instanceof Card card) {
            return asked.cards().stream().anyMatch(wish -> wish.takes(card));
        }
        if (catalog.isOfEnclosuresAlone(sku)) {
            return asked.enclosure() == EnclosureFrom.NEW;
        }
        return asked.extras().containsKey(sku) || isRiser(sku, catalog) && !(asked.volumes().isEmpty() && asked.cards().isEmpty());
    }

    private static boolean isRiser(String sku, Catalog catalog) {
        return catalog.platforms().stream().flatMap(platform -> platform.expansion().slots().stream())
                .anyMatch(slot -> slot.riser().equals(Optional.of(sku)));
    }

    /** Each extra by itself. */
    static Stream<Demand> extras(WhatIf terms) {
        return new TreeMap<>(terms.request().equipment().extras()).entrySet().stream()
                .filter(extra -> !terms.held().equals(Optional.of(extra.getKey())))
                .map(extra -> extra(extra.getKey(), extra.getValue()));
    }

    /** @param dispensable whether one could do without it; otherwise only its size is asked for */
    private static Demand volume(VolumeWish wish, boolean dispensable) {
        return new Demand(StorageCapacity.KEY, Optional.of(wish.name()), Numbers.plain(wish.usableGb()).toString(),
                words(wish),
                terms -> dispensable ? with(terms, others(terms, wish), terms.request().equipment().cards()) : asking(terms, wish, 0),
                (terms, oracle) -> smaller(wish, terms, oracle));
    }

    private static Sentence words(VolumeWish wish) {
        return wish.drives().isEmpty()
                ? Sentence.of("volume %s of %s GB at level %s", wish.name(), Numbers.plain(wish.usableGb()), wish.level().label())
                : Sentence.of("volume %s of %s GB at level %s on %s drives", wish.name(), Numbers.plain(wish.usableGb()),
                wish.level().label(), wish.drives());
    }

    /** A volume may do with fewer hot spares or none, where it could not be had with all of them. */
    private static Demand spares(VolumeWish wish) {
        int asked = wish.hotSpares();
        Sentence words = asked == 1 ? Sentence.of("a hot spare for volume %s", wish.name())
                : Sentence.of("%s hot spares for volume %s", asked, wish.name());
        return new Demand(StorageCapacity.SPARES_KEY, Optional.of(wish.name()), String.valueOf(asked), words,
                terms -> sparing(terms, wish, 0), (terms, oracle) -> fewer(asked, number -> sparing(terms, wish, number), oracle)
                .map(most -> new Concession(sparing(terms, wish, most), String.valueOf(most),
                        Sentence.of("volume %s has %s of %s hot spares at most", wish.name(), most, asked),
                        Sentence.of("take %s hot spares instead of %s for volume %s", most, asked, wish.name())))
                .orElseGet(() -> new Concession(sparing(terms, wish, 0), "0",
                        Sentence.of("no hot spare can be had for volume %s", wish.name()),
                        Sentence.of("do without hot spares for volume %s", wish.name()))));
    }

    private static WhatIf sparing(WhatIf terms, VolumeWish wish, int number) {
        return with(terms, terms.request().equipment().volumes().stream()
                .map(other -> other.name().equals(wish.name()) ? other.withHotSpares(number) : other).toList(),
                terms.request().equipment().cards());
    }

    private static List<VolumeWish> others(WhatIf terms, VolumeWish wish) {
        return terms.request().equipment().volumes().stream().filter(other -> !other.name().equals(wish.name())).toList();
    }

    /** The largest such volume that is possible. */
    private static Concession smaller(VolumeWish wish, WhatIf terms, Oracle oracle) {
        List<Double> sizes = sizes(wish, wish.usableGb(), oracle.catalog());
        return Extreme.first(sizes, gb -> oracle.isPossible(asking(terms, wish, gb)) ? Optional.of(gb) : Optional.empty())
                .map(most -> new Concession(asking(terms, wish, most), Numbers.plain(most).toString(),
                        Sentence.of("volume %s reaches %s GB at most", wish.name(), Numbers.plain(most)),
                        Sentence.of("lower volume %s from %s to %s GB", wish.name(), Numbers.plain(wish.usableGb()), Numbers.plain(most))))
                .orElseGet(() -> new Concession(terms, "", none(wish, terms, oracle), Sentence.of("do without volume %s", wish.name())));
    }

    /** Where no size is possible, the level may be what is missing. */
    private static Sentence none(VolumeWish wish, WhatIf terms, Oracle oracle) {
        return Arrays.stream(RaidLevel.values()).filter(level -> level != wish.level() && level != RaidLevel.LEVEL_0)
                .filter(level -> oracle.isPossible(instead(terms, wish, wish.at(level))))
                .findFirst().map(level -> Sentence.of("no volume %s can be had at level %s, but one at level %s", wish.name(),
                wish.level().label(), level.label())).orElseGet(() -> Sentence.of("no volume %s can be had", wish.name()));
    }

    /** The terms on which a volume is asked to hold so much. */
    public static WhatIf asking(WhatIf terms, VolumeWish wish, double gb) {
        return instead(terms, wish, wish.with(gb));
    }

    /** With the hot spares that the volume has on these terms. */
    private static WhatIf instead(WhatIf terms, VolumeWish wish, VolumeWish other) {
        int spares = terms.request().equipment().volumes().stream().filter(one -> one.name().equals(wish.name()))
                .mapToInt(VolumeWish::hotSpares).findFirst().orElse(wish.hotSpares());
        return with(terms, more(others(terms, wish), other.withHotSpares(spares)), terms.request().equipment().cards());
    }

    /** What drives of the catalogue come to below a given number of GB, the greatest first. */
    public static List<Double> sizes(VolumeWish wish, double below, Catalog catalog) {
        int bays = catalog.platforms().stream().flatMap(platform -> platform.expansion().bays().stream()).mapToInt(BayGroup::count).max()
                .orElse(0);
        return catalog.drives().stream().filter(drive -> wish.takes(drive.likeness()))
                .flatMap(drive -> IntStream.rangeClosed(1, bays).filter(number -> VolumeDrives.allows(wish.level(), number))
                        .mapToObj(number -> wish.level().usableGb(number, drive.capacityGb())))
                .filter(gb -> gb < below).distinct().sorted(Comparator.reverseOrder()).toList();
    }

    /** Entries of one part are one wish for all of its cards; entries by kind may be served by different parts, and stay apart. */
    private static List<CardWish> gathered(List<CardWish> wishes) {
        List<CardWish> gathered = new ArrayList<>();
        for (CardWish wish : wishes) {
            Optional<CardWish> earlier = gathered.stream().filter(other -> isOfThePart(wish, other)).findFirst();
            earlier.ifPresentOrElse(other -> gathered.set(gathered.indexOf(other), other.with(other.count() + wish.count())),
                    () -> gathered.add(wish));
        }
        return gathered;
    }

    private static boolean isOfThePart(CardWish wish, CardWish other) {
        return wish.sku().isPresent() && wish.sku().equals(other.sku());
    }

    private static Demand cards(CardWish wish) {
        Sentence words = AskedCards.words(wish);
        return Demand.of(AskedCards.KEY, words.toString(), words,
                terms -> with(terms, terms.request().equipment().volumes(), less(terms.request().equipment().cards(), wish)),
                (terms, oracle) -> fewer(wish.count(), number -> of(terms, wish, number), oracle)
                        .map(most -> new Concession(of(terms, wish, most), String.valueOf(most),
                                Sentence.of("there is room for %s of them", most),
                                Sentence.of("fit %s instead of %s", most, words)))
                        .orElseGet(() -> new Concession(terms, "", Sentence.of("%s cannot be had", words),
                        Sentence.of("do without %s", words))));
    }

    private static WhatIf of(WhatIf terms, CardWish wish, int number) {
        Equipment before = terms.request().equipment();
        return with(terms, before.volumes(), more(before.cards(), wish.with(number)));
    }

    private static Demand extra(String sku, int units) {
        return new Demand(PartsNeeded.KEY, Optional.of(sku), String.valueOf(units), Sentence.of("%s x %s for each machine", units, sku),
                terms -> of(terms, sku, 0), (terms, oracle) -> {
            int most = fewer(units, number -> of(terms, sku, number), oracle).orElse(0);
            return new Concession(of(terms, sku, most), String.valueOf(most),
                    most == 0 ? Sentence.of("%s cannot be had", sku) : Sentence.of("%s x %s can be had for each machine", most, sku),
                    most == 0 ? Sentence.of("do without %s", sku) : Sentence.of("take %s x %s instead of %s", most, sku, units));
        });
    }

    private static WhatIf of(WhatIf terms, String sku, int units) {
        Equipment before = terms.request().equipment();
        Map<String, Integer> extras = new HashMap<>(before.extras());
        extras.put(sku, units);
        extras.values().removeIf(count -> count == 0);
        return with(terms, new Equipment(before.volumes(), before.cards(), extras, before.enclosure()));
    }

    /** The most units below a number that are possible; empty where not even one. */
    private static Optional<Integer> fewer(int asked, IntFunction<WhatIf> terms, Oracle oracle) {
        List<Integer> numbers = IntStream.range(1, asked).boxed().sorted(Comparator.reverseOrder()).toList();
        return Extreme.first(numbers, number -> oracle.isPossible(terms.apply(number)) ? Optional.of(number) : Optional.empty());
    }

    private static Demand enclosure() {
        return Demand.of(EnclosurePower.KEY, EnclosureFrom.NEW.label(), "a new enclosure for sleds",
                terms -> with(terms, terms.request().equipment().withEnclosure(EnclosureFrom.OWN)),
                (terms, oracle) -> new Concession(terms, EnclosureFrom.OWN.label(), "a sled goes into an enclosure that stands already",
                        "put sleds into an enclosure that stands already"));
    }

    private static WhatIf with(WhatIf terms, Equipment other) {
        return terms.with(terms.request().withEquipment(other));
    }

    private static WhatIf with(WhatIf terms, List<VolumeWish> volumes, List<CardWish> cards) {
        Equipment before = terms.request().equipment();
        return with(terms, new Equipment(volumes, cards, before.extras(), before.enclosure()));
    }

    private static List<CardWish> less(List<CardWish> all, CardWish one) {
        List<CardWish> fewer = new ArrayList<>(all);
        fewer.remove(one);
        fewer.removeIf(other -> isOfThePart(one, other));
        return fewer;
    }

    private static <T> List<T> more(List<T> all, T one) {
        return Stream.concat(all.stream(), Stream.of(one)).toList();
    }
}
