package sledwright.generator.fitout;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import sledwright.domain.Card;
import sledwright.domain.CardSlot;
import sledwright.domain.CardWish;
import sledwright.domain.Catalog;
import sledwright.domain.Fitout;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.generator.draw.Shelf;
import sledwright.generator.draw.Watts;
import sledwright.generator.time.Deadline;
import sledwright.metrics.CheapestDraw;
import sledwright.rules.card.CardFits;
import sledwright.rules.card.PartsNeeded;

/** Every way to put the cards that a request asks for into the slots of a platform, with one controller more or without. */
final class CardPlans {

    private static final int NOBODY = -1;

    private final Catalog catalog;
    private final Request request;
    private final Shelf shelf;
    private final Deadline deadline;
    private final Platform platform;
    private final int processors;
    private final boolean everyWeight;
    private final List<CardSlot> slots;
    private final SortedMap<String, Integer> called;
    private final List<CardPlan> plans = new ArrayList<>();
    private final Set<List<Object>> seen = new HashSet<>();

    CardPlans(Catalog catalog, Request request, Shelf shelf, Fittings.Chassis chassis, Deadline deadline) {
        this.catalog = catalog;
        this.request = request;
        this.shelf = shelf;
        this.deadline = deadline;
        platform = chassis.platform();
        processors = chassis.processors();
        everyWeight = chassis.everyWeight();
        slots = platform.expansion().slots();
        called = PartsNeeded.called(platform, processors, request.equipment());
    }

    /** The plans; for each driver those that no other with it beats. */
    List<CardPlan> all(boolean drivesAsked) {
        choose(request.equipment().cards(), 0, new ArrayList<>(), drivesAsked);
        return plans;
    }

    private void choose(List<CardWish> wishes, int index, List<Card> chosen, boolean drivesAsked) {
        deadline.check();
        if (index == wishes.size()) {
            withController(chosen, drivesAsked);
            return;
        }
        CardWish wish = wishes.get(index);
        for (Card card : candidates(wish)) {
            // Lots that sell in packs may have more of a card though they have not so few.
            if (chosen.size() + wish.count() <= slots.size()
                    && shelf.holds(card.sku(), (count(chosen, card) + wish.count()) * request.machines())) {
                chosen.addAll(Collections.nCopies(wish.count(), card));
                choose(wishes, index + 1, chosen, drivesAsked);
                chosen.subList(chosen.size() - wish.count(), chosen.size()).clear();
            }
        }
    }

    /** The cards that serve an entry. Where no other entry can take any of them, those that another matches in everything are left out. */
    private List<Card> candidates(CardWish wish) {
        List<Card> fitting = catalog.cards().stream().filter(wish::takes).filter(this::fitsSomewhere).toList();
        boolean shared = everyWeight || request.equipment().cards().stream().filter(other -> other != wish).anyMatch(other ->
                fitting.stream().anyMatch(other::takes))
                || fitting.stream().anyMatch(card -> card.support().isPresent() || request.use().contains(card.sku()));
        List<Card> kept = new ArrayList<>();
        for (Card card : fitting) {
            if (shared || kept.stream().noneMatch(better -> matches(better, card, wish.count()))) {
                kept.removeIf(worse -> !shared && matches(card, worse, wish.count()));
                kept.add(card);
            }
        }
        return kept;
    }

    private boolean fitsSomewhere(Card card) {
        return slots.stream().anyMatch(slot -> CardFits.allows(slot, card, processors));
    }

    private boolean matches(Card better, Card other, int count) {
        return price(better, count) <= price(other, count) && better.shape().fitsWherever(other.shape());
    }

    /** The cards alone, and with each controller more that may drive or that the request wants used. */
    private void withController(List<Card> chosen, boolean drivesAsked) {
        place(chosen, Optional.empty());
        for (Card card : catalog.cards()) {
            if (card.support().isPresent() && chosen.size() < slots.size() && (drivesAsked || request.use().contains(card.sku()))
                    && price(card, count(chosen, card) + 1) < CheapestDraw.IMPOSSIBLE) {
                List<Card> more = new ArrayList<>(chosen);
                more.add(card);
                place(more, Optional.of(card));
            }
        }
    }

    /** @param extra the controller beyond those that were asked for: unless it is wanted, it is fitted to drive */
    private void place(List<Card> cards, Optional<Card> extra) {
        if (!seen.add(List.of(cards.stream().map(Card::sku).sorted().toList(), extra.map(Card::sku).orElse("")))) {
            return;
        }
        Set<String> risers = new TreeSet<>();
        slots.forEach(slot -> slot.riser().ifPresent(risers::add));
        for (Set<String> bought : subsets(List.copyOf(risers))) {
            SortedMap<String, Integer> extras = new TreeMap<>(called);
            bought.forEach(riser -> extras.merge(riser, 1, Integer::sum));
            long price = price(cards, extras);
            if (price < CheapestDraw.IMPOSSIBLE) {
                assignment(cards, bought, bought).ifPresent(places -> add(cards, places, extras, price, extra));
            }
        }
    }

    private void add(List<Card> cards, int[] places, SortedMap<String, Integer> extras, long price, Optional<Card> extra) {
        SortedMap<String, Card> bySlot = new TreeMap<>();
        for (int i = 0; i < places.length; i++) {
            bySlot.put(slots.get(places[i]).name(), cards.get(i));
        }
        long microwatts = cards.stream().mapToLong(card -> Watts.micro(card.powerW())).sum() + extras.entrySet().stream()
                .mapToLong(units -> units.getValue() * Watts.micro(catalog.extra(units.getKey()).orElseThrow().powerW())).sum();
        Set<Card> drivers = new LinkedHashSet<>();
        extra.ifPresentOrElse(drivers::add, () -> cards.stream().filter(card -> card.support().isPresent()).forEach(drivers::add));
        boolean mustDrive = extra.isPresent() && !request.use().contains(extra.get().sku());
        if (!mustDrive) {
            Optional<String> board = platform.expansion().onboard().map(support -> Fitout.ONBOARD);
            keep(new CardPlan(price, microwatts, bySlot, extras, board, platform.expansion().onboard(), false));
            extra.ifPresent(wanted -> cards.stream().filter(card -> card.support().isPresent()).forEach(drivers::add));
        }
        for (Card driver : drivers) {
            String slot = bySlot.entrySet().stream().filter(entry -> entry.getValue().equals(driver)).findFirst().orElseThrow().getKey();
            keep(new CardPlan(price, microwatts, bySlot, extras, Optional.of(slot), driver.support(), mustDrive));
        }
    }

    /** Keeps a plan unless one that drives the same matches it; drops those that it beats. */
    private void keep(CardPlan plan) {
        if (plans.stream().noneMatch(other -> mayStandFor(other, plan) && other.price() <= plan.price()
                && other.microwatts() <= plan.microwatts()
                && (other.price() < plan.price() || other.microwatts() < plan.microwatts() || other.parts() <= plan.parts()))) {
            plans.removeIf(other -> mayStandFor(plan, other) && plan.price() <= other.price() && plan.microwatts() <= other.microwatts());
            plans.add(plan);
        }
    }

    private boolean mayStandFor(CardPlan plan, CardPlan other) {
        return serves(plan, other) && (!everyWeight || plan.microwatts() == other.microwatts());
    }

    /** Whether one plan drives all that another drives, with the same parts of those that the request wants used. */
    private boolean serves(CardPlan plan, CardPlan other) {
        boolean drives = other.support().isEmpty() || plan.support().isPresent()
                && plan.support().get().ports() >= other.support().get().ports()
                && plan.support().get().links().containsAll(other.support().get().links())
                && plan.support().get().levels().containsAll(other.support().get().levels());
        return drives && (other.mustDrive() || !plan.mustDrive()) && wanted(plan).containsAll(wanted(other));
    }

    private Set<String> wanted(CardPlan plan) {
        if (request.use().isEmpty()) {
            return Set.of();
        }
        Set<String> wanted = new TreeSet<>(plan.extras().keySet());
        plan.cards().values().forEach(card -> wanted.add(card.sku()));
        wanted.retainAll(request.use());
        return wanted;
    }

    private long price(List<Card> cards, SortedMap<String, Integer> extras) {
        int machines = request.machines();
        long price = cards.size() * machines * catalog.labour().perCard();
        for (Card card : new LinkedHashSet<>(cards)) {
            price += price(card, count(cards, card));
        }
        for (Map.Entry<String, Integer> units : extras.entrySet()) {
            long own = shelf.price(units.getKey(), machines * units.getValue());
            price = own >= CheapestDraw.IMPOSSIBLE ? own : price + own;
        }
        return price;
    }

    private long price(Card card, int each) {
        return shelf.price(card.sku(), each * request.machines());
    }

    private static int count(List<Card> cards, Card card) {
        return Collections.frequency(cards, card);
    }

    /**
     * A slot of its own for each card where that is possible with the risers that are bought, each of which has a card behind it.
     *
     * @param idle risers that have no card yet
     */
    private Optional<int[]> assignment(List<Card> cards, Set<String> bought, Set<String> idle) {
        int[] cardIn = new int[slots.size()];
        Arrays.fill(cardIn, NOBODY);
        return fill(cards, bought, List.copyOf(idle), cardIn);
    }

    private Optional<int[]> fill(List<Card> cards, Set<String> bought, List<String> idle, int[] held) {
        if (!idle.isEmpty()) {
            for (int slot = 0; slot < slots.size(); slot++) {
                for (int card = 0; card < cards.size(); card++) {
                    if (held[slot] == NOBODY && !holds(held, card) && slots.get(slot).riser().equals(Optional.of(idle.get(0)))
                            && CardFits.allows(slots.get(slot), cards.get(card), processors)) {
                        held[slot] = card;
                        Optional<int[]> found = fill(cards, bought, idle.subList(1, idle.size()), held);
                        held[slot] = NOBODY;
                        if (found.isPresent()) {
                            return found;
                        }
                    }
                }
            }
            return Optional.empty();
        }
        int[] cardIn = held.clone();
        for (int card = 0; card < cards.size(); card++) {
            boolean[] closed = new boolean[slots.size()];
            for (int slot = 0; slot < closed.length; slot++) {
                closed[slot] = held[slot] != NOBODY;
            }
            if (!holds(held, card) && !augment(cards, bought, card, cardIn, closed)) {
                return Optional.empty();
            }
        }
        int[] places = new int[cards.size()];
        for (int slot = 0; slot < cardIn.length; slot++) {
            if (cardIn[slot] != NOBODY) {
                places[cardIn[slot]] = slot;
            }
        }
        return Optional.of(places);
    }

    private static boolean holds(int[] cardIn, int card) {
        for (int held : cardIn) {
            if (held == card) {
                return true;
            }
        }
        return false;
    }

    /** Finds a slot for a card along a path on which others move. */
    private boolean augment(List<Card> cards, Set<String> bought, int card, int[] cardIn, boolean[] seen) {
        for (int slot = 0; slot < slots.size(); slot++) {
            CardSlot place = slots.get(slot);
            if (!seen[slot] && place.riser().map(bought::contains).orElse(true) && CardFits.allows(place, cards.get(card), processors)) {
                seen[slot] = true;
                if (cardIn[slot] == NOBODY || augment(cards, bought, cardIn[slot], cardIn, seen)) {
                    cardIn[slot] = card;
                    return true;
                }
            }
        }
        return false;
    }

    private static List<Set<String>> subsets(List<String> all) {
        List<Set<String>> subsets = new ArrayList<>();
        for (int bits = 0; bits < 1 << all.size(); bits++) {
            Set<String> subset = new TreeSet<>();
            for (int i = 0; i < all.size(); i++) {
                if ((bits >> i & 1) == 1) {
                    subset.add(all.get(i));
                }
            }
            subsets.add(subset);
        }
        return subsets;
    }
}
