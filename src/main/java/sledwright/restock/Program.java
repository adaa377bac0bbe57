package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import sledwright.domain.Condition;
import sledwright.domain.DemandClass;
import sledwright.domain.SupplyOffer;

/**
 * The linear program behind a course of events, if it were known in advance: how many orders to fill with which build, within the
 * units of each part.
 *
 * <p>A row limits the units of one part in some conditions that arrive by some day; orders count there that accept no others and
 * cannot wait longer. These rows together say that units can be dealt out (Hall's condition), exactly where a part comes in one
 * condition or on one day, and never too strictly elsewhere.
 */
final class Program {

    /** A limit on units. */
    record Row(String sku, Set<Condition> conditions, int lastWindow) {
    }

    /**
     * Orders of one class that must be met within one window, and the ways to fill one.
     *
     * @param gain  by build: what an order earns beside being turned away, minor units
     * @param rows  by build: the rows that it draws on
     * @param units by build: how many units it takes there
     */
    record Kind(double[] gain, int[][] rows, double[][] units) {
    }

    /**
     * What can be bought.
     *
     * @param loss  what a unit loses that is never used, minor units
     * @param rows  the rows whose limit it raises
     * @param spare by how much a unit that is used spares more than one from the shelf: it was cheaper than what such a unit is worth
     */
    record Purchase(SupplyOffer offer, double loss, int[] rows, double spare) {
    }

    /**
     * What a cheap purchase adds: as many of its units count as used as there are, and no more than orders take of the part.
     *
     * @param taken  row of the units that orders take, the same for all purchases of a part
     * @param bought row of the units that are bought
     * @param spare  what each unit adds that counts as used, minor units
     */
    record Bargain(int taken, int bought, double spare) {
    }

    private final Shelves shelves;
    private final Choices choices;
    /** By class, the known ways to fill an order that earn something; those found later are not of this program. */
    private final List<List<Choice>> ways = new ArrayList<>();
    private final Windows windows;
    private final List<Row> rows = new ArrayList<>();
    private final Map<String, List<Integer>> rowsOf = new HashMap<>();
    private final List<Kind> kinds = new ArrayList<>();
    private final Map<List<Integer>, Integer> kindAt = new HashMap<>();
    private final List<Purchase> purchases = new ArrayList<>();
    private final List<Bargain> bargains = new ArrayList<>();
    private final Map<String, Integer> takenRow = new TreeMap<>();
    private final double[] standing;

    Program(Shelves shelves, Choices choices) {
        this.shelves = shelves;
        this.choices = choices;
        Map<String, Double> mostSpared = new HashMap<>();
        shelves.offers().forEach(offer -> mostSpared.merge(offer.sku(), spare(offer), Math::max));
        for (int k = 0; k < classes().size(); k++) {
            ways.add(choices.of(k).stream().filter(choice -> gain(choice) + choice.parts(sku -> mostSpared.getOrDefault(sku, 0.0)) > 0)
                    .toList());
        }
        Set<String> used = used();
        windows = new Windows(arrivals(used), leastPatience());
        used.forEach(this::addRows);
        addPurchases(used);
        standing = new double[rows.size() + takenRow.size() + bargains.size()];
        shelves.standing().forEach((pool, units) -> {
            for (int row : rowsOf(pool)) {
                standing[row] += units;
            }
        });
        addKinds();
    }

    private void addPurchases(Set<String> used) {
        List<SupplyOffer> offers = shelves.offers().stream().filter(offer -> used.contains(offer.sku())).toList();
        offers.stream().filter(offer -> spare(offer) > 0)
                .forEach(offer -> takenRow.computeIfAbsent(offer.sku(), sku -> rows.size() + takenRow.size()));
        for (SupplyOffer offer : offers) {
            int[] raised = rowsOf(Shelves.pool(offer));
            if (spare(offer) > 0) {
                int row = rows.size() + takenRow.size() + bargains.size();
                bargains.add(new Bargain(takenRow.get(offer.sku()), row, spare(offer)));
                raised = Arrays.copyOf(raised, raised.length + 1);
                raised[raised.length - 1] = row;
            }
            purchases.add(new Purchase(offer, offer.unitCost() - shelves.leftover(offer), raised, spare(offer)));
        }
    }

    private double spare(SupplyOffer offer) {
        return shelves.leftover(offer.sku()) - shelves.leftover(offer);
    }

    private Set<String> used() {
        Set<String> used = new TreeSet<>();
        for (int k = 0; k < classes().size(); k++) {
            ways.get(k).forEach(choice -> used.addAll(choice.needed().keySet()));
        }
        return used;
    }

    double horizonDays() {
        return shelves.request().horizonDays();
    }

    List<DemandClass> classes() {
        return shelves.request().classes();
    }

    private Set<Integer> arrivals(Set<String> used) {
        Set<Integer> days = new TreeSet<>();
        shelves.standing().keySet().stream().filter(pool -> used.contains(pool.sku())).forEach(pool -> days.add(pool.arrivalDay()));
        shelves.offers().stream().filter(offer -> used.contains(offer.sku())).forEach(offer -> days.add(offer.leadDays()));
        return days;
    }

    private double leastPatience() {
        return classes().stream().mapToDouble(Program::patience).min().orElse(0);
    }

    /** How long a customer waits, days. */
    static double patience(DemandClass asked) {
        return asked.request().limit().leadDays().isPresent() ? asked.request().limit().leadDays().getAsInt() : Double.POSITIVE_INFINITY;
    }

    private static Set<Condition> accepted(DemandClass asked) {
        return Shelves.accepted(asked.request().limit().conditions());
    }

    private void addRows(String sku) {
        Set<Set<Condition>> families = new LinkedHashSet<>();
        for (int k = 0; k < classes().size(); k++) {
            if (ways.get(k).stream().anyMatch(choice -> choice.needed().containsKey(sku))) {
                Set<Condition> accepted = accepted(classes().get(k));
                for (Set<Condition> other : List.copyOf(families)) {
                    families.add(Condition.together(other, accepted));
                }
                families.add(accepted);
            }
        }
        Set<Integer> ends = new TreeSet<>(List.of(windows.count() - 1));
        Set<Integer> days = new TreeSet<>(arrivals(Set.of(sku)));
        days.stream().map(windows::of).filter(window -> window > 0).forEach(window -> ends.add(window - 1));
        for (Set<Condition> conditions : families) {
            for (int end : ends) {
                rowsOf.computeIfAbsent(sku, key -> new ArrayList<>()).add(rows.size());
                rows.add(new Row(sku, conditions, end));
            }
        }
    }

    /** The rows whose units a pool is part of. */
    private int[] rowsOf(Shelves.Pool pool) {
        int window = windows.of(pool.arrivalDay());
        return rowsOf.getOrDefault(pool.sku(), List.of()).stream().mapToInt(Integer::intValue)
                .filter(row -> rows.get(row).conditions().contains(pool.condition()) && rows.get(row).lastWindow() >= window).toArray();
    }

    private void addKinds() {
        for (int k = 0; k < classes().size(); k++) {
            int first = windows.of(Math.min(patience(classes().get(k)), shelves.request().horizonDays()));
            for (int window = first; window < windows.count() && !ways.get(k).isEmpty(); window++) {
                kindAt.put(List.of(k, window), kinds.size());
                kinds.add(kind(k, window, ways.get(k)));
            }
        }
    }

    private Kind kind(int k, int window, List<Choice> known) {
        double[] gain = known.stream().mapToDouble(this::gain).toArray();
        int[][] touched = new int[gain.length][];
        double[][] units = new double[gain.length][];
        for (int b = 0; b < gain.length; b++) {
            List<double[]> entries = new ArrayList<>();
            known.get(b).needed().forEach((sku, count) -> rowsFor(k, sku, window).forEach(row -> entries.add(new double[] {row, count})));
            known.get(b).needed().forEach((sku, count) -> {
                if (takenRow.containsKey(sku)) {
                    entries.add(new double[] {takenRow.get(sku), -count});
                }
            });
            touched[b] = entries.stream().mapToInt(entry -> (int) entry[0]).toArray();
            units[b] = entries.stream().mapToDouble(entry -> entry[1]).toArray();
        }
        return new Kind(gain, touched, units);
    }

    /** The rows of a part in which an order of a class counts that must be met within a window. */
    private List<Integer> rowsFor(int k, String sku, int window) {
        Set<Condition> accepted = accepted(classes().get(k));
        return rowsOf.getOrDefault(sku, List.of()).stream()
                .filter(row -> rows.get(row).conditions().containsAll(accepted) && rows.get(row).lastWindow() >= window).toList();
    }

    /** What filling an order earns beside turning it away, minor units. */
    double gain(Choice choice) {
        return choices.brings(choice.demandClass()) - choice.labour() - choice.parts(shelves::leftover);
    }

    /** The price of a unit of each part to a class, given what each row's limit is worth. */
    Map<String, Double> scarcity(int k, double[] rowPrices) {
        Map<String, Double> prices = new TreeMap<>();
        for (String sku : rowsOf.keySet()) {
            double price = rowsFor(k, sku, 0).stream().mapToDouble(row -> rowPrices[row]).sum()
                    - (takenRow.containsKey(sku) ? rowPrices[takenRow.get(sku)] : 0);
            if (price != 0) {
                prices.put(sku, price);
            }
        }
        return prices;
    }

    /** What one more unit of a part, standing and accepted by all, is worth, given what each row's limit is worth. */
    double scarcity(String sku, double[] rowPrices) {
        return rowsOf.getOrDefault(sku, List.of()).stream().mapToDouble(row -> rowPrices[row]).sum();
    }

    /** Prices of the rows of an earlier program, of fewer builds, as prices of these; rows that are new are free. */
    double[] carried(Program earlier, double[] rowPrices) {
        Map<List<Object>, Integer> at = new HashMap<>();
        for (int i = 0; i < rows.size(); i++) {
            at.put(likeness(i), i);
        }
        double[] prices = new double[standing.length];
        takenRow.forEach((sku, row) -> prices[row] = earlier.takenRow.containsKey(sku) ? rowPrices[earlier.takenRow.get(sku)] : 0);
        for (int i = 0; i < earlier.rows.size(); i++) {
            Integer row = rowPrices[i] > 0 ? at.get(earlier.likeness(i)) : null;
            if (row != null) {
                prices[row] = rowPrices[i];
            }
        }
        return prices;
    }

    /** What distinguishes a row from all others, whatever windows there are. */
    private List<Object> likeness(int row) {
        return List.of(rows.get(row).sku(), rows.get(row).conditions(), windows.end(rows.get(row).lastWindow()));
    }

    /** Purchases of an earlier program, of fewer builds, as purchases of this one. */
    double[] carriedPurchases(Program earlier, double[] bought) {
        Map<SupplyOffer, Integer> at = new HashMap<>();
        for (int o = 0; o < purchases.size(); o++) {
            at.put(purchases.get(o).offer(), o);
        }
        double[] units = new double[purchases.size()];
        for (int o = 0; o < bought.length; o++) {
            units[at.get(earlier.purchases.get(o).offer())] = bought[o];
        }
        return units;
    }

    /** How many orders of each kind come in a course. */
    int[] demand(Course course) {
        int[] counts = new int[kinds.size()];
        for (int i = 0; i < course.orders(); i++) {
            int k = course.classes()[i];
            double deadline = Math.min(course.days()[i] + patience(classes().get(k)), shelves.request().horizonDays());
            Integer kind = kindAt.get(List.of(k, windows.of(deadline)));
            if (kind != null) {
                counts[kind]++;
            }
        }
        return counts;
    }

    /** The ways to fill an order of a class that earn something. */
    List<Choice> ways(int k) {
        return ways.get(k);
    }

    List<Kind> kinds() {
        return kinds;
    }

    List<Purchase> purchases() {
        return purchases;
    }

    List<Bargain> bargains() {
        return bargains;
    }

    /** What purchases cost, minor units. */
    long cost(int[] bought) {
        long cost = 0;
        for (int o = 0; o < bought.length; o++) {
            cost += purchases.get(o).offer().unitCost() * bought[o];
        }
        return cost;
    }

    /** The same where units may be broken. */
    double cost(double[] bought) {
        double cost = 0;
        for (int o = 0; o < bought.length; o++) {
            cost += purchases.get(o).offer().unitCost() * bought[o];
        }
        return cost;
    }

    /** What purchases lose if none of the units is used, minor units. */
    double loss(int[] bought) {
        return loss(Arrays.stream(bought).asDoubleStream().toArray());
    }

    /** The same where units may be broken. */
    double loss(double[] bought) {
        double loss = 0;
        for (int o = 0; o < bought.length; o++) {
            loss += purchases.get(o).loss() * bought[o];
        }
        return loss;
    }

    /** The limit of each row with given purchases. */
    double[] limits(double[] bought) {
        double[] limits = Arrays.copyOf(standing, standing.length);
        for (int o = 0; o < bought.length; o++) {
            for (int row : purchases.get(o).rows()) {
                limits[row] += bought[o];
            }
        }
        return limits;
    }
}
