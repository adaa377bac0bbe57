package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;
import java.util.stream.IntStream;
import sledwright.domain.DemandClass;
import sledwright.domain.SupplyOffer;

/**
 * The shop's counter: orders are served as they come. Each gets, of the builds that can still be put together for it in time, the one
 * that earns the most after the scarcity of its parts; where none can, it is turned away.
 */
final class Counter {

    /**
     * What courses of events came to.
     *
     * @param margins  by course, minor units: what orders earned, less losses on those turned away, less what bought units lose
     * @param served   by class, orders in all courses together
     * @param asked    the same, with those turned away
     * @param servedByCourse by course and class
     * @param askedByCourse  by course and class
     * @param leftover sku -> units that are left over, mean
     * @param deviation sku -> of the units that orders take, from course to course
     * @param needed   sku -> share of courses that take more units than stand there without purchases
     * @param used     by class and build, orders in all courses together
     */
    record Tally(double[] margins, long[] served, long[] asked, int[][] servedByCourse, int[][] askedByCourse,
                 Map<String, Double> leftover, Map<String, Double> deviation, Map<String, Double> needed,
                 List<Map<Choice, Long>> used) {

        double mean() {
            return Arrays.stream(margins).average().orElse(0);
        }
    }

    /**
     * One way to fill an order.
     *
     * @param units of each part
     * @param pools of each part, in the order in which they are drawn on
     */
    private record Way(Choice choice, double gain, int[] units, int[][] pools) {
    }

    private final Shelves shelves;
    private final List<Shelves.Pool> pools = new ArrayList<>();
    private final Map<Shelves.Pool, Integer> poolAt = new HashMap<>();
    private final int[] standing;
    private final Way[][] ways;
    /** By pool, the day from which its units can be used. */
    private final int[] arrival;
    /** The pools of each part. */
    private final List<int[]> alike;
    /** The days on which further units arrive. */
    private final int[] arrivals;
    private final double[] patience;
    private final double[] turnedAway;

    /**
     * @param scarcity by class, sku -> what a unit counts beyond its worth, which decides between builds
     * @param holdsBack whether an order is turned away whose parts are worth more than it earns
     */
    Counter(Program program, Shelves shelves, List<Map<String, Double>> scarcity, boolean holdsBack) {
        this.shelves = shelves;
        List<DemandClass> classes = shelves.request().classes();
        List<List<Choice>> choices = new ArrayList<>();
        Set<String> skus = new TreeSet<>();
        for (int k = 0; k < classes.size(); k++) {
            Map<String, Double> dear = scarcity.get(k);
            choices.add(program.ways(k).stream()
                    .filter(choice -> program.gain(choice) > (holdsBack ? choice.parts(sku -> dear.getOrDefault(sku, 0.0)) : 0))
                    .sorted(Comparator.comparingDouble(choice -> choice.parts(sku -> dear.getOrDefault(sku, 0.0)) - program.gain(choice)))
                    .toList());
            choices.get(k).forEach(choice -> skus.addAll(choice.needed().keySet()));
        }
        shelves.standing().keySet().stream().filter(pool -> skus.contains(pool.sku())).forEach(this::addPool);
        shelves.offers().stream().filter(offer -> skus.contains(offer.sku())).forEach(offer -> addPool(Shelves.pool(offer)));
        standing = pools.stream().mapToInt(pool -> shelves.standing().getOrDefault(pool, 0)).toArray();
        arrival = pools.stream().mapToInt(Shelves.Pool::arrivalDay).toArray();
        alike = skus.stream().map(sku -> IntStream.range(0, pools.size()).filter(p -> pools.get(p).sku().equals(sku)).toArray())
                .filter(of -> of.length > 0).toList();
        arrivals = Arrays.stream(arrival).sorted().distinct().toArray();
        ways = new Way[classes.size()][];
        for (int k = 0; k < ways.length; k++) {
            int of = k;
            Map<String, int[]> drawn = new HashMap<>();
            ways[k] = choices.get(k).stream().map(choice -> new Way(choice, program.gain(choice),
                    choice.needed().values().stream().mapToInt(Integer::intValue).toArray(),
                    choice.needed().keySet().stream().map(sku -> drawn.computeIfAbsent(sku, key -> drawn(classes, of, key)))
                    .toArray(int[][]::new)))
                    .toArray(Way[]::new);
        }
        patience = classes.stream().mapToDouble(Program::patience).toArray();
        turnedAway = classes.stream().mapToDouble(asked -> (double) asked.loss() * asked.machines()).toArray();
    }

    private void addPool(Shelves.Pool pool) {
        if (poolAt.putIfAbsent(pool, pools.size()) == null) {
            pools.add(pool);
        }
    }

    private Counter(Counter usual, int k, Counter other) {
        shelves = usual.shelves;
        pools.addAll(usual.pools);
        poolAt.putAll(usual.poolAt);
        standing = usual.standing;
        ways = usual.ways.clone();
        ways[k] = other.ways[k];
        arrival = usual.arrival;
        alike = usual.alike;
        arrivals = usual.arrivals;
        patience = usual.patience;
        turnedAway = usual.turnedAway;
    }

    /** The same but for one class, which is served as another counter does; both must know the same builds. */
    Counter with(int k, Counter other) {
        return new Counter(this, k, other);
    }

    /** Units that fewest others would take go first, of these what came last, so that the hasty still find some. */
    private int[] drawn(List<DemandClass> classes, int k, String sku) {
        return IntStream.range(0, pools.size()).boxed()
                .filter(p -> pools.get(p).sku().equals(sku) && takes(classes.get(k), pools.get(p)))
                .sorted(Comparator.comparingLong((Integer p) -> classes.stream().filter(asked -> takes(asked, pools.get(p))).count())
                        .thenComparing(p -> -pools.get(p).arrivalDay()))
                .mapToInt(Integer::intValue).toArray();
    }

    private static boolean takes(DemandClass asked, Shelves.Pool pool) {
        return Shelves.accepted(asked.request().limit().conditions()).contains(pool.condition());
    }

    /**
     * Serves the courses, each from the same stock.
     *
     * @param bought units of each purchase of the program
     */
    Tally serve(Program program, int[] bought, List<Course> courses) {
        int[] stock = stocked(program, bought);
        int[][] served = new int[courses.size()][ways.length];
        int[][] asked = new int[courses.size()][ways.length];
        long[][][] used = new long[PARTS][][];
        Arrays.setAll(used, part -> noWay());
        LeftOver left = new LeftOver(PARTS, standing, stock, alike);
        double[] margins = margins(program.loss(bought), stock, courses, (part, s) -> new Seen(served[s], asked[s], used[part]), left::add);
        Map<String, Double> leftover = new TreeMap<>();
        Map<String, Double> shares = new TreeMap<>();
        Map<String, Double> deviations = new TreeMap<>();
        for (int i = 0; i < alike.size(); i++) {
            String sku = pools.get(alike.get(i)[0]).sku();
            leftover.put(sku, left.mean(i));
            shares.put(sku, left.drawnOnPurchases(i));
            deviations.put(sku, left.deviation(i));
        }
        return new Tally(margins, sum(served), sum(asked), served, asked, leftover, deviations, shares, builds(used));
    }

    /** The purchases less the units that are left over in every course: the dearest of those that are alike go first. */
    int[] withoutIdle(Program program, int[] bought, List<Course> courses) {
        int[] stock = stocked(program, bought);
        LeftOver left = new LeftOver(PARTS, standing, stock, alike);
        margins(0, stock, courses, unseen(), left::add);
        int[] least = left.least();
        int[] fewer = bought.clone();
        IntStream.range(0, bought.length).filter(o -> bought[o] > 0).boxed()
                .sorted(Comparator.comparingLong(o -> -program.purchases().get(o).offer().unitCost())).forEach(o -> {
            SupplyOffer offer = program.purchases().get(o).offer();
            Integer pool = poolAt.get(Shelves.pool(offer));
            int idle = pool == null ? bought[o] : Math.min(bought[o], least[pool]);
            fewer[o] = bought[o] - idle >= offer.minQuantity() ? bought[o] - idle : idle == bought[o] ? 0 : offer.minQuantity();
            if (pool != null) {
                least[pool] -= bought[o] - fewer[o];
            }
        });
        return fewer;
    }

    /** What each course earns, as {@link #serve} has it, and nothing else. */
    double[] margins(Program program, int[] bought, List<Course> courses) {
        return margins(program.loss(bought), stocked(program, bought), courses, unseen(), (part, now) -> { });
    }

    private BiFunction<Integer, Integer, Seen> unseen() {
        Seen[] seen = new Seen[PARTS];
        Arrays.setAll(seen, part -> new Seen(new int[ways.length], new int[ways.length], noWay()));
        return (part, s) -> seen[part];
    }

    /** Serves some of the courses in each part, with what it sees, and reports what is left after each of them. */
    private double[] margins(double loss, int[] stock, List<Course> courses, BiFunction<Integer, Integer, Seen> seen,
            BiConsumer<Integer, int[]> after) {
        double[] margins = new double[courses.size()];
        IntStream.range(0, Math.min(courses.size(), PARTS)).parallel().forEach(part -> {
            int[] now = new int[stock.length];
            for (int s = part; s < courses.size(); s += PARTS) {
                System.arraycopy(stock, 0, now, 0, stock.length);
                margins[s] = course(courses.get(s), now, seen.apply(part, s)) - loss;
                after.accept(part, now);
            }
        });
        return margins;
    }

    /** By class and way. */
    private long[][] noWay() {
        return Arrays.stream(ways).map(of -> new long[of.length]).toArray(long[][]::new);
    }

    /** What is counted on the way: by class, by class, and by class and way. */
    private record Seen(int[] served, int[] asked, long[][] used) {
    }

    /** Fixed, so that sums come out the same on any machine. */
    private static final int PARTS = 8;

    private double course(Course course, int[] stock, Seen seen) {
        double earned = 0;
        double horizon = shelves.request().horizonDays();
        // Stock only dwindles until more arrives, so a way that failed need not be tried again before.
        int[] first = new int[ways.length];
        int[] arrived = new int[ways.length];
        for (int i = 0; i < course.orders(); i++) {
            int k = course.classes()[i];
            double deadline = Math.min(course.days()[i] + patience[k], horizon);
            seen.asked()[k]++;
            earned -= turnedAway[k];
            while (arrived[k] < arrivals.length && arrivals[arrived[k]] <= deadline) {
                arrived[k]++;
                first[k] = 0;
            }
            while (first[k] < ways[k].length && !has(ways[k][first[k]], deadline, stock)) {
                first[k]++;
            }
            if (first[k] < ways[k].length) {
                Way way = ways[k][first[k]];
                take(way, deadline, stock);
                earned += way.gain();
                seen.served()[k]++;
                seen.used()[k][first[k]]++;
            }
        }
        return earned;
    }

    /**
     * What is left for an order of each class when the first of it is turned away in a course.
     *
     * @return class -> sku -> units that it could take in time
     */
    Map<Integer, Map<String, Integer>> firstRefusals(Program program, int[] bought, Course course) {
        int[] stock = stocked(program, bought);
        Map<Integer, Map<String, Integer>> refusals = new TreeMap<>();
        for (int i = 0; i < course.orders(); i++) {
            int k = course.classes()[i];
            double deadline = Math.min(course.days()[i] + patience[k], shelves.request().horizonDays());
            Optional<Way> way = Arrays.stream(ways[k]).filter(one -> has(one, deadline, stock)).findFirst();
            if (way.isPresent()) {
                take(way.get(), deadline, stock);
            } else {
                refusals.computeIfAbsent(k, of -> left(of, deadline, stock));
            }
        }
        return refusals;
    }

    /** The builds that orders of a class get first. */
    List<Choice> foremost(int k, int most) {
        return Arrays.stream(ways[k]).limit(most).map(Way::choice).toList();
    }

    private Map<String, Integer> left(int k, double deadline, int[] stock) {
        DemandClass asked = shelves.request().classes().get(k);
        Map<String, Integer> left = new TreeMap<>();
        shelves.standing().forEach((pool, units) -> {
            if (!poolAt.containsKey(pool) && takes(asked, pool) && pool.arrivalDay() <= deadline) {
                left.merge(pool.sku(), units, Integer::sum);
            }
        });
        for (int p = 0; p < pools.size(); p++) {
            if (takes(asked, pools.get(p)) && pools.get(p).arrivalDay() <= deadline) {
                left.merge(pools.get(p).sku(), stock[p], Integer::sum);
            }
        }
        return left;
    }

    private int[] stocked(Program program, int[] bought) {
        int[] stock = standing.clone();
        for (int o = 0; o < bought.length; o++) {
            // What no order takes has no place at the counter.
            Integer pool = poolAt.get(Shelves.pool(program.purchases().get(o).offer()));
            if (pool != null) {
                stock[pool] += bought[o];
            }
        }
        return stock;
    }

    private boolean has(Way way, double deadline, int[] stock) {
        for (int i = 0; i < way.units().length; i++) {
            int missing = way.units()[i];
            for (int pool : way.pools()[i]) {
                if (arrival[pool] <= deadline) {
                    missing -= stock[pool];
                    if (missing <= 0) {
                        break;
                    }
                }
            }
            if (missing > 0) {
                return false;
            }
        }
        return true;
    }

    private void take(Way way, double deadline, int[] stock) {
        for (int i = 0; i < way.units().length; i++) {
            int missing = way.units()[i];
            for (int pool : way.pools()[i]) {
                if (stock[pool] > 0 && arrival[pool] <= deadline) {
                    int taken = Math.min(missing, stock[pool]);
                    stock[pool] -= taken;
                    missing -= taken;
                    if (missing == 0) {
                        break;
                    }
                }
            }
        }
    }

    private List<Map<Choice, Long>> builds(long[][][] used) {
        List<Map<Choice, Long>> builds = new ArrayList<>();
        for (int k = 0; k < ways.length; k++) {
            Map<Choice, Long> counts = new LinkedHashMap<>();
            for (int w = 0; w < ways[k].length; w++) {
                int way = w;
                int of = k;
                counts.put(ways[k][w].choice(), Arrays.stream(used).mapToLong(part -> part[of][way]).sum());
            }
            builds.add(counts);
        }
        return builds;
    }

    private static long[] sum(int[][] parts) {
        long[] sum = new long[parts[0].length];
        for (int[] part : parts) {
            for (int i = 0; i < sum.length; i++) {
                sum[i] += part[i];
            }
        }
        return sum;
    }
}
