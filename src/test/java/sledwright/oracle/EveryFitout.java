package sledwright.oracle;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.ToLongBiFunction;
import sledwright.domain.BayGroup;
import sledwright.domain.Card;
import sledwright.domain.CardSlot;
import sledwright.domain.CardWish;
import sledwright.domain.Catalog;
import sledwright.domain.Drive;
import sledwright.domain.DriveSupport;
import sledwright.domain.Extra;
import sledwright.domain.Fitout;
import sledwright.domain.Need;
import sledwright.domain.Platform;
import sledwright.domain.RaidLevel;
import sledwright.domain.Request;
import sledwright.domain.Volume;
import sledwright.domain.VolumeWish;

/**
 * Every set of drives, cards and extras that a machine of a platform may have, by trying everything, from the text of the rules alone. Alike
 * drives of several machines agree in watts here.
 */
final class EveryFitout {

    /**
     * One set.
     *
     * @param price  all machines, with labour
     * @param watts  of one machine
     * @param layout what alike machines share: which volumes of what, which cards and extras
     * @param fitout of a single machine
     */
    record Fit(long price, double watts, Set<String> skus, String what, List<Object> layout, Fitout fitout) {
    }

    /** All but the part numbers of drives. */
    private record Standing(List<Filled> filled, Map<String, Card> bySlot, Map<String, Integer> extras, Optional<String> driver) {

        List<Object> layout() {
            return List.of(filled.stream().map(one -> List.of(one.wish.name(), one.kind, one.data)).toList(),
                    bySlot.values().stream().map(Card::sku).sorted().toList(), new TreeMap<>(extras));
        }

        /** @param taken the drives of a machine, which are alike where they are of one kind */
        Fitout with(List<Drive> taken, Catalog catalog) {
            List<Drive> left = new ArrayList<>(taken);
            List<Volume> volumes = new ArrayList<>();
            for (Filled one : filled) {
                List<Drive> own = new ArrayList<>();
                while (own.size() < one.data + one.wish.hotSpares()) {
                    Drive next = left.stream().filter(drive -> drive.likeness().equals(one.kind)).findFirst().orElseThrow();
                    left.remove(next);
                    own.add(next);
                }
                volumes.add(new Volume(one.wish.name(), one.wish.level(), one.group.name(), own.subList(0, one.data), own.subList(one.data, own.size())));
            }
            Map<Extra, Integer> units = new HashMap<>();
            extras.forEach((sku, count) -> units.put(catalog.extra(sku).orElseThrow(), count));
            return new Fitout(volumes, driver, new TreeMap<>(bySlot), units, Optional.empty());
        }
    }

    /** Drives chosen for a volume: data drives and hot spares of one kind in one group. */
    private record Filled(VolumeWish wish, Drive.Kind kind, BayGroup group, int data) {
    }

    private final Platform platform;
    private final int fitted;
    private final Catalog catalog;
    private final Request request;
    private final Set<String> held;
    private final Set<String> ignored;
    private final ToLongBiFunction<String, Integer> price;
    private final List<List<Filled>> volumes = new ArrayList<>();
    private final Map<Object, Fit> found = new LinkedHashMap<>();
    private final List<Drive> taken = new ArrayList<>();

    private boolean everyPart;

    private EveryFitout(Platform platform, int fitted, Catalog catalog, Request request, Set<String> held, Set<String> ignored,
                        ToLongBiFunction<String, Integer> price) {
        this.platform = platform;
        this.fitted = fitted;
        this.catalog = catalog;
        this.request = request;
        this.held = held;
        this.ignored = ignored;
        this.price = price;
    }

    /**
     * @param held    what one machine at least must hold, beyond what the request wants used in all
     * @param ignored identifiers of rules that do not count
     */
    static List<Fit> of(Platform platform, int fitted, Catalog catalog, Request request, Set<String> held, Set<String> ignored,
                        ToLongBiFunction<String, Integer> price) {
        EveryFitout every = new EveryFitout(platform, fitted, catalog, request, held, ignored, price);
        every.fill(0, new ArrayList<>());
        every.cards(0, new ArrayList<>());
        return List.copyOf(every.found.values());
    }

    /** Every set of part numbers that a single machine may have. */
    static List<Fit> ofOneMachine(Platform platform, int fitted, Catalog catalog, Request request, Map<String, Integer> stock) {
        EveryFitout every = new EveryFitout(platform, fitted, catalog, request.withMachines(1), Set.of(), Set.of(),
                (sku, units) -> stock.getOrDefault(sku, 0) >= units ? 0 : ExhaustiveDraw.NONE);
        every.everyPart = true;
        every.fill(0, new ArrayList<>());
        every.cards(0, new ArrayList<>());
        return List.copyOf(every.found.values());
    }

    private void fill(int index, List<Filled> chosen) {
        if (index == request.equipment().volumes().size()) {
            volumes.add(List.copyOf(chosen));
            return;
        }
        VolumeWish wish = request.equipment().volumes().get(index);
        for (Drive.Kind kind : catalog.drives().stream().map(Drive::likeness).distinct().toList()) {
            for (BayGroup group : platform.expansion().bays()) {
                for (int data = 1; data + wish.hotSpares() <= group.count() + (stands("bay-count") ? 2 : 0); data++) {
                    Filled filled = new Filled(wish, kind, group, data);
                    chosen.add(filled);
                    if (suits(filled) && (stands("bay-count") || inGroup(chosen, group) <= group.count())) {
                        fill(index + 1, chosen);
                    }
                    chosen.remove(chosen.size() - 1);
                }
            }
        }
    }

    private static int inGroup(List<Filled> chosen, BayGroup group) {
        return chosen.stream().filter(one -> one.group.equals(group)).mapToInt(one -> one.data + one.wish.hotSpares()).sum();
    }

    private boolean suits(Filled filled) {
        VolumeWish wish = filled.wish;
        Drive.Kind kind = filled.kind;
        boolean wanted = stands("storage-capacity") || (wish.kind().isEmpty() || wish.kind().get() == kind.kind()) && (wish.link().isEmpty() || wish.link().get() == kind.link());
        boolean sits = stands("drive-bay") || filled.group.formFactors().contains(kind.formFactor()) && filled.group.links().contains(kind.link())
                && (filled.group.socket().isEmpty() || filled.group.socket().getAsInt() <= fitted);
        double usable = usable(wish.level(), filled.data, kind.capacityGb());
        if (stands("volume-drives")) {
            usable = Math.max(usable, kind.capacityGb());
        }
        boolean known = stands("volume-driver") || kind.link().label().equals("NVMe") ? filled.group.levels().contains(wish.level()) || wish.level() == RaidLevel.LEVEL_0 && filled.data == 1
                : true;
        return wanted && sits && known && usable > 0 && (stands("storage-capacity") || usable >= wish.usableGb() - 1e-7);
    }

    /** 0 where the level does not take that many. */
    static double usable(RaidLevel level, int data, double gb) {
        return switch (level.number()) {
            case 0 -> data * gb;
            case 1 -> data == 2 ? gb : 0;
            case 5 -> data >= 3 ? (data - 1) * gb : 0;
            case 6 -> data >= 4 ? (data - 2) * gb : 0;
            default -> data >= 4 && data % 2 == 0 ? data / 2 * gb : 0;
        };
    }

    private void cards(int index, List<Card> chosen) {
        if (index == request.equipment().cards().size()) {
            place(chosen, null);
            for (Card card : catalog.cards()) {
                if (card.support().isPresent()) {
                    List<Card> more = new ArrayList<>(chosen);
                    more.add(card);
                    place(more, card);
                }
            }
            return;
        }
        CardWish wish = request.equipment().cards().get(index);
        if (stands("cards")) {
            cards(index + 1, chosen);
        }
        for (Card card : catalog.cards()) {
            boolean serves = wish.sku().isPresent() ? wish.sku().get().equals(card.sku())
                    : wish.kind().get() == card.kind() && card.ports() >= wish.ports() && card.portGbit() >= wish.portGbit();
            if (serves) {
                List<Card> more = new ArrayList<>(chosen);
                more.addAll(Collections.nCopies(wish.count(), card));
                cards(index + 1, more);
            }
        }
    }

    private void place(List<Card> cards, Card extra) {
        place(cards, extra, 0, new TreeMap<>());
    }

    private void place(List<Card> cards, Card extra, int index, Map<String, Card> bySlot) {
        if (index == cards.size()) {
            drivers(cards, extra, bySlot);
            return;
        }
        Card card = cards.get(index);
        for (CardSlot slot : platform.expansion().slots()) {
            boolean fits = stands("card-slot") || slot.offers().lanes() >= card.shape().lanes() && slot.offers().pcieGeneration() >= card.shape().pcieGeneration()
                    && slot.offers().lengthMm() >= card.shape().lengthMm() && slot.offers().powerW() >= card.shape().powerW()
                    && (slot.offers().height().label().equals("full") || card.shape().height().label().equals("low"))
                    && (slot.socket().isEmpty() || slot.socket().getAsInt() <= fitted);
            if (fits && !bySlot.containsKey(slot.name())) {
                bySlot.put(slot.name(), card);
                place(cards, extra, index + 1, bySlot);
                bySlot.remove(slot.name());
            }
        }
    }

    private void drivers(List<Card> cards, Card extra, Map<String, Card> bySlot) {
        boolean wanted = extra != null && isWanted(extra.sku());
        for (List<Filled> filled : volumes) {
            List<Filled> driven = filled.stream().filter(one -> !one.kind.link().label().equals("NVMe")).toList();
            boolean served = (driven.isEmpty() || stands("volume-driver")) && (extra == null || wanted);
            Optional<String> driver = Optional.empty();
            if (!driven.isEmpty()) {
                if ((extra == null || wanted) && platform.expansion().onboard().map(support -> drives(support, driven)).orElse(false)) {
                    driver = Optional.of("onboard");
                }
                for (Map.Entry<String, Card> place : bySlot.entrySet()) {
                    Card card = place.getValue();
                    if (card.support().isPresent() && (extra == null || wanted || card.equals(extra)) && drives(card.support().get(), driven)) {
                        driver = Optional.of(place.getKey());
                    }
                }
            }
            if (served || driver.isPresent()) {
                price(cards, bySlot, filled, driver);
            }
        }
    }

    /** Whether what breaks the rule stands all the same. */
    private boolean stands(String rule) {
        return ignored.contains(rule);
    }

    private boolean isWanted(String sku) {
        return request.use().contains(sku) || held.contains(sku);
    }

    private static boolean drives(DriveSupport support, List<Filled> driven) {
        int ports = 0;
        for (Filled one : driven) {
            ports += one.data + one.wish.hotSpares();
            boolean single = one.wish.level() == RaidLevel.LEVEL_0 && one.data == 1;
            if (!support.links().contains(one.kind.link()) || !single && !support.levels().contains(one.wish.level())) {
                return false;
            }
        }
        return ports <= support.ports();
    }

    private void price(List<Card> cards, Map<String, Card> bySlot, List<Filled> filled, Optional<String> driver) {
        Map<String, Integer> units = new TreeMap<>();
        double watts = 0;
        for (Card card : cards) {
            units.merge(card.sku(), 1, Integer::sum);
            watts += card.powerW();
        }
        Set<String> risers = new TreeSet<>();
        platform.expansion().slots().stream().filter(slot -> bySlot.containsKey(slot.name())).forEach(slot -> slot.riser().ifPresent(risers::add));
        Map<String, Integer> extras = new TreeMap<>(stands("needs") ? Map.of() : request.equipment().extras());
        if (!stands("riser")) {
            risers.forEach(riser -> extras.merge(riser, 1, Integer::sum));
        }
        for (Need need : stands("needs") ? List.<Need>of() : platform.expansion().needs()) {
            int times = need.cause() == Need.Cause.PROCESSORS ? fitted >= need.from() ? 1 : 0 : platform.processors().sockets() - fitted;
            need.parts().forEach((sku, each) -> extras.merge(sku, times * each, Integer::sum));
        }
        extras.values().removeIf(count -> count == 0);
        for (Map.Entry<String, Integer> extra : extras.entrySet()) {
            units.merge(extra.getKey(), extra.getValue(), Integer::sum);
            watts += extra.getValue() * catalog.extra(extra.getKey()).orElseThrow().powerW();
        }
        int machines = request.machines();
        long sum = (long) cards.size() * machines * catalog.labour().perCard();
        for (Map.Entry<String, Integer> part : units.entrySet()) {
            sum = add(sum, part.getKey(), part.getValue() * machines);
        }
        Map<Drive.Kind, Integer> drives = new HashMap<>();
        for (Filled one : filled) {
            drives.merge(one.kind, one.data + one.wish.hotSpares(), Integer::sum);
        }
        sum += (long) drives.values().stream().mapToInt(Integer::intValue).sum() * machines * catalog.labour().perDrive();
        if (sum < ExhaustiveDraw.NONE) {
            draw(new ArrayList<>(drives.entrySet()), 0, sum, watts, new TreeSet<>(units.keySet()), new Standing(filled, bySlot, extras, driver));
        }
    }

    private void draw(List<Map.Entry<Drive.Kind, Integer>> kinds, int index, long sum, double watts, Set<String> skus, Standing standing) {
        if (index == kinds.size()) {
            Object key = everyPart ? List.of(standing.layout(), taken.stream().map(Drive::sku).toList())
                    : sum + " " + Math.round(watts * 1e6) + " " + skus.stream().filter(this::isWanted).toList();
            found.computeIfAbsent(key, one -> new Fit(sum, watts, Set.copyOf(skus), standing.filled.toString() + standing.bySlot.keySet(), standing.layout(),
                    request.machines() == 1 ? standing.with(taken, catalog) : Fitout.NONE));
            return;
        }
        List<Drive> alike = catalog.drives().stream().filter(drive -> drive.likeness().equals(kinds.get(index).getKey())).toList();
        split(alike, 0, kinds.get(index).getValue() * request.machines(), sum, watts, skus, (total, load, used) -> draw(kinds, index + 1, total, load, used, standing));
    }

    private interface Then {
        void go(long sum, double watts, Set<String> skus);
    }

    private void split(List<Drive> alike, int index, int left, long sum, double watts, Set<String> skus, Then then) {
        if (index == alike.size()) {
            if (left == 0) {
                then.go(sum, watts, skus);
            }
            return;
        }
        Drive drive = alike.get(index);
        int machines = request.machines();
        // A part that is wanted in every machine is drawn for each of them or, in a set that will not do, for none.
        for (int units = 0; units <= left; units++) {
            long total = add(sum, drive.sku(), units);
            if (total < ExhaustiveDraw.NONE && !(request.use().contains(drive.sku()) && units > 0 && units < machines)) {
                Set<String> more = new TreeSet<>(skus);
                if (units > 0) {
                    more.add(drive.sku());
                }
                taken.addAll(Collections.nCopies(units, drive));
                split(alike, index + 1, left - units, total, watts + units * drive.powerW() / machines, more, then);
                taken.subList(taken.size() - units, taken.size()).clear();
            }
        }
    }

    private long add(long sum, String sku, int units) {
        if (units == 0) {
            return sum;
        }
        long own = request.forbid().contains(sku) ? ExhaustiveDraw.NONE : price.applyAsLong(sku, units);
        return sum >= ExhaustiveDraw.NONE || own >= ExhaustiveDraw.NONE ? ExhaustiveDraw.NONE : sum + own;
    }
}
