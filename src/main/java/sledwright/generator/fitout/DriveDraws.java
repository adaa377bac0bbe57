package sledwright.generator.fitout;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sledwright.domain.Drive;
import sledwright.domain.Labour;
import sledwright.domain.Lot;
import sledwright.generator.draw.KindDraws;
import sledwright.generator.draw.Shelf;
import sledwright.generator.draw.Watts;
import sledwright.generator.time.Deadline;
import sledwright.generator.time.OutOfTimeException;
import sledwright.metrics.CheapestDraw;

/**
 * The ways to draw drives of one kind for all machines, of which none is beaten in price and watts. All volumes that take the kind draw
 * together: they share its lots and price breaks.
 */
final class DriveDraws {

    /**
     * Part numbers of the kind that agree in watts, so that their lots serve as one.
     *
     * @param least units that must be drawn at least
     */
    record Source(List<Drive> drives, long microwatts, int least) {
    }

    /**
     * Units taken from each source.
     *
     * @param price     all machines, minor units
     * @param heaviest  microwatts of the heaviest machine's drives, dealt in rounds
     * @param range     by how much dealing beside others could make that less
     * @param uneven    0 where all machines get the same watts, 1 where dealing by itself is the best deal, 2 where it may not be
     * @param bySource  units of each source
     */
    record Way(long price, long heaviest, long range, int uneven, int[] bySource) {
    }

    private final Shelf shelf;
    private final int machines;
    private final List<Source> sources;
    private final Map<Integer, List<Way>> ways = new ConcurrentHashMap<>();
    private final long leastUnitPrice;
    private final Labour labour;
    private final boolean everyWeight;
    private final Map<Integer, Boolean> improved = new ConcurrentHashMap<>();

    /**
     * @param wanted      parts that must be held, and in how many machines at least: all of them, or one
     * @param everyWeight whether what loads more and costs as much is of use
     */
    DriveDraws(Shelf shelf, Labour labour, Map<String, Integer> wanted, int machines, List<Drive> alike, boolean everyWeight) {
        this.shelf = shelf;
        this.labour = labour;
        this.everyWeight = everyWeight;
        this.machines = machines;
        record Key(long microwatts, String wanted) {
        }
        Map<Key, List<Drive>> bySource = alike.stream().collect(Collectors.groupingBy(
                drive -> new Key(Watts.micro(drive.powerW()), wanted.containsKey(drive.sku()) ? drive.sku() : "")));
        List<Source> found = new ArrayList<>();
        bySource.forEach((key, drives) -> found.add(new Source(drives, key.microwatts, wanted.getOrDefault(key.wanted, 0))));
        // Heaviest first: dealt in rounds, the first machine then gets the heaviest of each round.
        found.sort(Comparator.comparingLong(Source::microwatts).reversed().thenComparing(source -> source.drives.get(0).sku()));
        sources = List.copyOf(found);
        leastUnitPrice = alike.stream().flatMap(drive -> shelf.lots(drive.sku()).stream()).flatMap(lot -> lot.breaks().stream())
                .mapToLong(Lot.PriceBreak::unitPrice).min().orElse(CheapestDraw.IMPOSSIBLE);
    }

    List<Source> sources() {
        return sources;
    }

    /** Every part number of the kind. */
    Stream<Drive> drives() {
        return sources.stream().flatMap(source -> source.drives.stream());
    }

    List<Lot> lots(Source source) {
        return source.drives.stream().flatMap(drive -> shelf.lots(drive.sku()).stream()).toList();
    }

    /** The price below which no unit is sold; at least {@link CheapestDraw#IMPOSSIBLE} where there is none. */
    long leastUnitPrice() {
        return leastUnitPrice;
    }

    /** The fewest microwatts of a unit. */
    long leastMicrowatts() {
        return sources.get(sources.size() - 1).microwatts;
    }

    /**
     * Whether some way to draw one drive more for each machine costs or loads less than every way to draw a given number.
     *
     * @throws OutOfTimeException when the deadline comes first
     */
    boolean improvesBeyond(int each, Deadline deadline) {
        return everyWeight || improved.computeIfAbsent(each, key -> {
            long work = machines * labour.perDrive();
            List<Way> fewer = of(each * machines, deadline);
            long lightest = Long.MAX_VALUE;
            int noDearer = 0;
            for (Way way : of((each + 1) * machines, deadline)) {
                for (; noDearer < fewer.size() && fewer.get(noDearer).price <= way.price + work; noDearer++) {
                    lightest = Math.min(lightest, fewer.get(noDearer).heaviest);
                }
                if (lightest > way.heaviest - way.range) {
                    return true;
                }
            }
            return false;
        });
    }

    /**
     * The ways to draw a number of units over all machines, cheapest first and each further one lighter; none where stock ends first.
     *
     * @throws OutOfTimeException when the deadline comes first
     */
    List<Way> of(int units, Deadline deadline) {
        return ways.computeIfAbsent(units, key -> find(units, deadline));
    }

    private List<Way> find(int units, Deadline deadline) {
        List<long[]> prices = sources.stream().map(source -> CheapestDraw.prices(lots(source), units)).toList();
        List<Way> found = new ArrayList<>();
        split(prices, 0, units, 0, new int[sources.size()], found, deadline);
        found.sort(Comparator.comparingLong(Way::price).thenComparingLong(Way::heaviest));
        if (everyWeight) {
            Set<Long> weights = new HashSet<>();
            return found.stream().filter(way -> weights.add(way.heaviest) || way.range > 0).toList();
        }
        List<Way> kept = new ArrayList<>();
        long lightest = Long.MAX_VALUE;
        for (Way way : found) {
            if (way.heaviest - way.range < lightest) {
                kept.add(way);
                lightest = Math.min(lightest, way.heaviest);
            }
        }
        return List.copyOf(kept);
    }

    private void split(List<long[]> prices, int index, int left, long price, int[] taken, List<Way> found, Deadline deadline) {
        if (index == sources.size()) {
            if (left == 0) {
                found.add(way(price, taken.clone()));
                deadline.check(found.size());
            }
            return;
        }
        boolean last = index == sources.size() - 1;
        int least = sources.get(index).least;
        for (int units = last ? left : least; units <= left; units++) {
            long own = prices.get(index)[units];
            if (own < CheapestDraw.IMPOSSIBLE && units >= least) {
                taken[index] = units;
                split(prices, index + 1, left - units, price + own, taken, found, deadline);
            }
        }
        taken[index] = 0;
    }

    /** Of two distinct watts, dealing in rounds makes the heaviest machine as light as can be; of more, nearly so. */
    private Way way(long price, int[] taken) {
        long fixed = 0;
        long heaviest = 0;
        long most = 0;
        long fewest = Long.MAX_VALUE;
        int distinct = 0;
        long last = -1;
        int dealt = 0;
        for (int i = 0; i < taken.length; i++) {
            Source source = sources.get(i);
            int free = taken[i] - (everywhere(source) ? machines : 0);
            fixed += everywhere(source) ? source.microwatts : 0;
            heaviest += source.microwatts * (KindDraws.rounds(dealt + free, machines) - KindDraws.rounds(dealt, machines));
            dealt += free;
            if (taken[i] > 0) {
                most = Math.max(most, source.microwatts);
                fewest = Math.min(fewest, source.microwatts);
                distinct += source.microwatts == last ? 0 : 1;
                last = source.microwatts;
            }
        }
        boolean even = machines == 1 || distinct < 2;
        return new Way(price, fixed + heaviest, even ? 0 : most - fewest, even ? 0 : distinct - 1, taken);
    }

    private boolean everywhere(Source source) {
        return source.least == machines;
    }

    /**
     * The units of a way, one list for each machine, the heaviest machine first.
     *
     * @param drawn the units of each source
     */
    List<List<Drive>> dealt(Way way, List<List<Drive>> drawn) {
        List<List<Drive>> hands = new ArrayList<>();
        for (int machine = 0; machine < machines; machine++) {
            hands.add(new ArrayList<>());
        }
        List<Drive> free = new ArrayList<>();
        for (int i = 0; i < sources.size(); i++) {
            int fixed = everywhere(sources.get(i)) ? machines : 0;
            for (int unit = 0; unit < way.bySource[i]; unit++) {
                if (unit < fixed) {
                    hands.get(unit).add(drawn.get(i).get(unit));
                } else {
                    free.add(drawn.get(i).get(unit));
                }
            }
        }
        for (int unit = 0; unit < free.size(); unit++) {
            hands.get(unit % machines).add(free.get(unit));
        }
        return hands;
    }
}
