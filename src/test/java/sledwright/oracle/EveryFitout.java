package sledwright.oracle;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.function.ToLongBiFunction;
import sledwright.domain.BayGroup;
import sledwright.domain.Card;
import sledwright.domain.CardSlot;
import sledwright.domain.CardWish;
import sledwright.domain.Catalog;
import sledwright.domain.Drive;
import sledwright.domain.DriveSupport;
import sledwright.domain.Need;
import sledwright.domain.Platform;
import sledwright.domain.RaidLevel;
import sledwright.domain.Request;
import sledwright.domain.VolumeWish;

/**
 * Every set of drives, cards and extras that a machine of a platform may have, by trying everything, from the text of the rules alone. Alike
 * drives of several machines agree in watts here.
 */
final class EveryFitout {

    /**
     * One set.
     *
     * @param price all machines, with labour
     * @param watts of one machine
     */
    record Fit(long price, double watts, Set<String> skus, String what) {
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
    private final Map<String, Fit> found = new LinkedHashMap<>();

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
            if (!driven.isEmpty()) {
                served |= (extra == null || wanted) && platform.expansion().onboard().map(support -> drives(support, driven)).orElse(false);
                for (Card card : cards) {
                    served |= card.support().isPresent() && (extra == null || wanted || card.equals(extra)) && drives(card.support().get(), driven);
                }
            }
            if (served) {
                price(cards, bySlot, filled);
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

    private void price(List<Card> cards, Map<String, Card> bySlot, List<Filled> filled) {
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
            draw(new ArrayList<>(drives.entrySet()), 0, sum, watts, new TreeSet<>(units.keySet()), () -> filled.toString() + bySlot.keySet());
        }
    }

    private void draw(List<Map.Entry<Drive.Kind, Integer>> kinds, int index, long sum, double watts, Set<String> skus, Supplier<String> what) {
        if (index == kinds.size()) {
            String key = sum + " " + Math.round(watts * 1e6) + " " + skus.stream().filter(this::isWanted).toList();
            found.computeIfAbsent(key, one -> new Fit(sum, watts, Set.copyOf(skus), what.get()));
            return;
        }
        List<Drive> alike = catalog.drives().stream().filter(drive -> drive.likeness().equals(kinds.get(index).getKey())).toList();
        split(alike, 0, kinds.get(index).getValue() * request.machines(), sum, watts, skus, (total, load, used) -> draw(kinds, index + 1, total, load, used, what));
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
                split(alike, index + 1, left - units, total, watts + units * drive.powerW() / machines, more, then);
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
