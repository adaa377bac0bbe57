package sledwright.generator.draw;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.IntStream;
import sledwright.generator.time.TooLargeException;

/**
 * Deals the units of a draw to identical machines so that the heaviest machine is as light as can be. Machines take the
 * same number of each kind, but alike modules may differ in watts.
 *
 * <p>A machine's hand is a count for each kind and watts. The least weight for which hands can be dealt out is found by
 * bisection over the weights that a hand can have; dealing is a depth-first search that remembers what it failed with.
 */
public final class Deal {

    /** Steps after which dealing gives up; it has then proved nothing. */
    private static final int MOST_STEPS = 200_000;

    /** Hands beyond this are too many to write down. */
    private static final int MOST_HANDS = 20_000;

    /** Up to this many modules in an order, units are dealt optimally; beyond, each kind by itself in rounds. */
    private static final int MOST_UNITS_EXACTLY = 48;

    /** Units of one kind that agree in watts. */
    private record Suit(int kind, long microwatts, int units) {
    }

    private final int machines;
    private final List<Suit> suits = new ArrayList<>();
    private final int[] handSize;
    /** For each suit the units of later suits of its kind. */
    private final int[] laterUnits;
    private final long fixedMicrowatts;
    private int steps;

    private final List<Draw.Share> shares;
    private final List<Integer> shareSuit = new ArrayList<>();

    private Deal(List<Draw.Share> shares, int machines) {
        this.shares = shares;
        this.machines = machines;
        Map<Draw.Alike, Integer> kinds = new LinkedHashMap<>();
        shares.forEach(share -> kinds.putIfAbsent(share.alike(), kinds.size()));
        handSize = new int[kinds.size()];
        Map<List<Object>, Integer> suitOf = new HashMap<>();
        long fixed = 0;
        for (Draw.Share share : shares) {
            int kind = kinds.get(share.alike());
            int free = share.free(machines);
            fixed += share.everywhere() ? share.microwatts() : 0;
            Integer suit = suitOf.get(List.of(kind, share.microwatts()));
            if (suit == null) {
                suit = suits.size();
                suitOf.put(List.of(kind, share.microwatts()), suit);
                suits.add(new Suit(kind, share.microwatts(), free));
            } else {
                suits.set(suit, new Suit(kind, share.microwatts(), suits.get(suit).units + free));
            }
            shareSuit.add(suit);
        }
        fixedMicrowatts = fixed;
        laterUnits = new int[suits.size()];
        int[] sofar = new int[kinds.size()];
        for (int suit = suits.size() - 1; suit >= 0; suit--) {
            laterUnits[suit] = sofar[suits.get(suit).kind];
            sofar[suits.get(suit).kind] += suits.get(suit).units;
        }
        suits.forEach(suit -> handSize[suit.kind] += suit.units);
        for (int kind = 0; kind < handSize.length; kind++) {
            handSize[kind] /= machines;
        }
    }

    /**
     * The modules' watts of the heaviest machine, in millionths, dealt as well as can be.
     *
     * @throws TooLargeException when that is too hard to decide
     */
    public static long heaviestMicrowatts(List<Draw.Share> shares, int machines) {
        return new Deal(shares, machines).best().weight;
    }

    /** Whether a given number of modules is dealt optimally. */
    public static boolean isExact(int units) {
        return units <= MOST_UNITS_EXACTLY;
    }

    /**
     * Deals so that the heaviest machine is as light as can be, or, where there are very many units or that is too hard, nearly so.
     * It never is heavier than the search took it to be: a search that weighs draws exactly has dealt this one before, and any
     * other weighs it in rounds.
     *
     * @return for each share of the draw, in its order, the units that each machine gets
     */
    public static List<int[]> deal(List<Draw.Share> shares, int machines) {
        int units = shares.stream().mapToInt(Draw.Share::units).sum();
        if (!isExact(units)) {
            return inRounds(shares, machines);
        }
        try {
            Deal deal = new Deal(shares, machines);
            return deal.byShare(deal.best().hands);
        } catch (TooLargeException tooHard) {
            return inRounds(shares, machines);
        }
    }

    /** Deals each kind by itself, heaviest units first, in rounds; every other kind to the machines in reverse. */
    private static List<int[]> inRounds(List<Draw.Share> shares, int machines) {
        List<int[]> given = new ArrayList<>();
        shares.forEach(share -> {
            int[] units = new int[machines];
            Arrays.fill(units, share.everywhere() ? 1 : 0);
            given.add(units);
        });
        List<Draw.Alike> kinds = shares.stream().map(Draw.Share::alike).distinct().toList();
        for (Draw.Alike kind : kinds) {
            List<Integer> heaviestFirst = IntStream.range(0, shares.size()).filter(i -> shares.get(i).alike().equals(kind)).boxed()
                    .sorted(Comparator.comparingLong(i -> -shares.get(i).microwatts())).toList();
            int dealt = 0;
            for (int share : heaviestFirst) {
                for (int unit = 0; unit < shares.get(share).free(machines); unit++) {
                    int machine = dealt++ % machines;
                    given.get(share)[kinds.indexOf(kind) % 2 == 0 ? machine : machines - 1 - machine]++;
                }
            }
        }
        return given;
    }

    private record Hands(long weight, List<int[]> hands) {
    }

    private Hands best() {
        List<int[]> all = hands();
        if (all.size() == 1) {
            return new Hands(weight(all.get(0)) + fixedMicrowatts, Collections.nCopies(machines, all.get(0)));
        }
        long[] weights = new TreeSet<>(all.stream().map(this::weight).toList()).stream().mapToLong(Long::longValue).toArray();
        long total = suits.stream().mapToLong(suit -> suit.microwatts * suit.units).sum();
        int low = Arrays.binarySearch(weights, (total + machines - 1) / machines);
        low = low < 0 ? -low - 1 : low;
        int high = weights.length - 1;
        List<int[]> found = null;
        while (low < high) {
            int middle = (low + high) >>> 1;
            List<int[]> dealt = dealWithin(all, weights[middle]);
            if (dealt != null) {
                found = dealt;
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        if (found == null || weights[high] < heaviest(found)) {
            found = dealWithin(all, weights[high]);
        }
        return new Hands(heaviest(found) + fixedMicrowatts, found);
    }

    private long heaviest(List<int[]> dealt) {
        return dealt.stream().mapToLong(this::weight).max().orElse(0);
    }

    private long weight(int[] hand) {
        long weight = 0;
        for (int i = 0; i < hand.length; i++) {
            weight += hand[i] * suits.get(i).microwatts;
        }
        return weight;
    }

    /** Every hand that has the right number of each kind and no more of a suit than there is. */
    private List<int[]> hands() {
        List<int[]> hands = new ArrayList<>();
        int[] left = handSize.clone();
        extend(hands, new int[suits.size()], left, 0);
        return hands;
    }

    private void extend(List<int[]> hands, int[] hand, int[] left, int suit) {
        if (suit == hand.length) {
            if (Arrays.stream(left).allMatch(count -> count == 0)) {
                if (hands.size() == MOST_HANDS) {
                    throw new TooLargeException();
                }
                hands.add(hand.clone());
            }
            return;
        }
        int kind = suits.get(suit).kind;
        int later = laterUnits[suit];
        for (int count = Math.min(left[kind], suits.get(suit).units); count >= Math.max(0, left[kind] - later); count--) {
            hand[suit] = count;
            left[kind] -= count;
            extend(hands, hand, left, suit + 1);
            left[kind] += count;
        }
        hand[suit] = 0;
    }

    private List<int[]> dealWithin(List<int[]> all, long most) {
        List<int[]> light = all.stream().filter(hand -> weight(hand) <= most)
                .sorted(Comparator.comparingLong(this::weight).reversed()).toList();
        int[] left = suits.stream().mapToInt(Suit::units).toArray();
        List<int[]> dealt = new ArrayList<>();
        steps = 0;
        return deal(light, 0, left, most, dealt, new HashMap<>()) ? dealt : null;
    }

    /** Gives out hands from the heaviest on; each machine's hand is no heavier than the one before. */
    private boolean deal(List<int[]> light, int from, int[] left, long most, List<int[]> dealt, Map<List<Integer>, Integer> failed) {
        if (dealt.size() == machines) {
            return true;
        }
        List<Integer> state = Arrays.stream(left).boxed().toList();
        Integer failedFrom = failed.get(state);
        if (failedFrom != null && failedFrom <= from) {
            return false;
        }
        long total = 0;
        for (int i = 0; i < left.length; i++) {
            total += left[i] * suits.get(i).microwatts;
        }
        for (int i = from; i < light.size(); i++) {
            int[] hand = light.get(i);
            if (weight(hand) * (machines - dealt.size()) < total) {
                break;
            }
            if (++steps > MOST_STEPS) {
                throw new TooLargeException();
            }
            if (take(hand, left, -1)) {
                dealt.add(hand);
                if (deal(light, i, left, most, dealt, failed)) {
                    return true;
                }
                dealt.remove(dealt.size() - 1);
                take(hand, left, 1);
            }
        }
        failed.merge(state, from, Math::min);
        return false;
    }

    private static boolean take(int[] hand, int[] left, int sign) {
        for (int i = 0; i < hand.length; i++) {
            if (left[i] + sign * hand[i] < 0) {
                return false;
            }
        }
        for (int i = 0; i < hand.length; i++) {
            left[i] += sign * hand[i];
        }
        return true;
    }

    /** Splits what each machine got of a suit among the shares that make it up. */
    private List<int[]> byShare(List<int[]> hands) {
        List<int[]> units = new ArrayList<>();
        int[][] left = new int[machines][];
        for (int machine = 0; machine < machines; machine++) {
            left[machine] = hands.get(machine).clone();
        }
        for (int i = 0; i < shares.size(); i++) {
            Draw.Share share = shares.get(i);
            int[] given = new int[machines];
            Arrays.fill(given, share.everywhere() ? 1 : 0);
            int free = share.free(machines);
            for (int machine = 0; machine < machines && free > 0; machine++) {
                int taken = Math.min(free, left[machine][shareSuit.get(i)]);
                left[machine][shareSuit.get(i)] -= taken;
                given[machine] += taken;
                free -= taken;
            }
            units.add(given);
        }
        return units;
    }
}
