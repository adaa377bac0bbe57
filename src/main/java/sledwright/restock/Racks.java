package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import sledwright.domain.DemandClass;

/** The units behind the counter, in pools that are alike to every customer, and what each way to fill an order draws from them. */
final class Racks {

    /**
     * One way to fill an order.
     *
     * @param units of each part
     * @param pools of each part, in the order in which they are drawn on
     * @param draws by the state of these pools, how the parts are drawn, as {@link #draws} has it
     */
    record Way(Choice choice, double gain, int[] units, int[][] pools, Map<Pools, int[][]> draws) {
    }

    /** Which pools of a way are not empty when a course begins, and which have more than orders can take; a bit for each. */
    record Pools(long filled, long ample) {
    }

    /** Where the class begins in the number that stands for an order. */
    static final int CLASS_FROM = 16;
    /** What in that number counts arrivals. */
    static final int ARRIVED = (1 << CLASS_FROM) - 1;

    private final Program program;
    private final Shelves shelves;
    private final List<DemandClass> classes;
    /** Days that every customer waits. */
    private final double patience;
    private final Set<String> bargains = new HashSet<>();
    private final List<Shelves.Pool> pools = new ArrayList<>();
    private final Map<Shelves.Pool, Integer> poolAt = new HashMap<>();
    private final Map<Choice, Way> ways = new IdentityHashMap<>();
    /** The pool that each purchase of the program goes to. */
    private final int[] boughtInto;
    private final int[] standing;
    /** By pool, the day from which its units can be used. */
    private final int[] arrival;
    /** The days on which units arrive. */
    private final int[] arrivals;
    private final List<int[]> alike;
    private final Map<Course, int[]> visits;
    /** By pool, the most units that orders take there in any course. */
    private final long[] mostTaken;
    /** By class, what is lost by turning an order away, minor units. */
    private final double[] turnedAway;

    /** @param courses all that are ever served */
    Racks(Program program, Shelves shelves, List<Course> courses) {
        this.program = program;
        classes = program.classes();
        this.shelves = shelves;
        patience = classes.stream().mapToDouble(Program::patience).min().orElse(0);
        program.purchases().stream().filter(purchase -> purchase.spare() > 0).forEach(purchase -> bargains.add(purchase.offer().sku()));
        Set<String> skus = new TreeSet<>();
        IntStream.range(0, classes.size()).forEach(k -> program.ways(k).forEach(choice -> skus.addAll(choice.needed().keySet())));
        shelves.standing().keySet().stream().filter(pool -> skus.contains(pool.sku())).forEach(this::addPool);
        shelves.offers().stream().filter(offer -> skus.contains(offer.sku())).forEach(offer -> addPool(Shelves.pool(offer)));
        boughtInto = program.purchases().stream().mapToInt(purchase -> poolAt.get(shared(Shelves.pool(purchase.offer())))).toArray();
        standing = new int[pools.size()];
        shelves.standing().forEach((pool, units) -> {
            if (skus.contains(pool.sku())) {
                standing[poolAt.get(shared(pool))] += units;
            }
        });
        arrival = pools.stream().mapToInt(Shelves.Pool::arrivalDay).toArray();
        arrivals = Arrays.stream(arrival).sorted().distinct().toArray();
        visits = courses.stream().distinct().collect(Collectors.toMap(Function.identity(), this::arrivalsBefore));
        alike = skus.stream().map(sku -> IntStream.range(0, pools.size()).filter(p -> pools.get(p).sku().equals(sku)).toArray())
                .filter(of -> of.length > 0).toList();
        for (int k = 0; k < classes.size(); k++) {
            int of = k;
            Map<String, int[]> drawn = new HashMap<>();
            program.ways(k).forEach(choice -> {
                int[][] from = choice.needed().keySet().stream().map(sku -> drawn.computeIfAbsent(sku, key -> drawn(of, key)))
                        .toArray(int[][]::new);
                int[] units = choice.needed().values().stream().mapToInt(Integer::intValue).toArray();
                ways.put(choice, new Way(choice, program.gain(choice), units, from, new ConcurrentHashMap<>()));
            });
        }
        mostTaken = mostTaken(courses);
        turnedAway = classes.stream().mapToDouble(asked -> (double) asked.loss() * asked.machines()).toArray();
    }

    /**
     * By the number of arrivals that a customer waits for, how the parts of an order are drawn; null where some part has not come by then.
     * Pools that are empty before any order comes are left out, and parts that are drawn first from one that has more than orders can take.
     */
    int[][] draws(Way way, Stand stand) {
        int[] stock = stand.units();
        boolean[] ample = stand.ample();
        long filled = 0;
        long plenty = 0;
        int bit = 0;
        for (int[] of : way.pools()) {
            for (int pool : of) {
                filled |= stock[pool] > 0 ? 1L << bit : 0;
                plenty |= ample[pool] ? 1L << bit : 0;
                bit++;
            }
        }
        if (bit > Long.SIZE) {
            return draws(way, pool -> true, new boolean[stock.length]);
        }
        return way.draws().computeIfAbsent(new Pools(filled, plenty), state -> draws(way, pool -> stock[pool] > 0, ample));
    }

    private int[][] draws(Way way, IntPredicate counts, boolean[] ample) {
        int[][] draws = new int[arrivals.length + 1][];
        for (int arrived = 1; arrived < draws.length; arrived++) {
            int last = arrivals[arrived - 1];
            int[][] there = Arrays.stream(way.pools()).map(of -> Arrays.stream(of).filter(p -> arrival[p] <= last).filter(counts).toArray())
                    .toArray(int[][]::new);
            int[] scarce = IntStream.range(0, there.length).filter(i -> there[i].length == 0 || !ample[there[i][0]]).toArray();
            draws[arrived] = Arrays.stream(scarce).anyMatch(i -> there[i].length == 0) ? null
                    : Take.row(scarce, way.units(), there, pools.size());
        }
        return draws;
    }

    /**
     * The orders of a course as they come, each its class and how many arrivals its customer waits for, in one number. They are kept, since
     * counters go through the same courses again and again.
     */
    int[] visits(Course course) {
        return visits.get(course);
    }

    private int[] arrivalsBefore(Course course) {
        int[] all = new int[course.orders()];
        for (int i = 0; i < all.length; i++) {
            int k = course.classes()[i];
            double deadline = Math.min(course.days()[i] + Program.patience(classes.get(k)), program.horizonDays());
            int arrived = 0;
            while (arrived < arrivals.length && arrivals[arrived] <= deadline) {
                arrived++;
            }
            all[i] = k << CLASS_FROM | arrived;
        }
        return all;
    }

    /** By pool, the most units that orders take there in any course, whatever they are offered. */
    private long[] mostTaken(List<Course> courses) {
        int[] mostOrders = new int[classes.size()];
        courses.forEach(course -> {
            int[] counts = Courses.byClass(course, classes.size());
            Arrays.setAll(mostOrders, k -> Math.max(mostOrders[k], counts[k]));
        });
        long[] most = new long[pools.size() + 1];
        for (int k = 0; k < mostOrders.length; k++) {
            int[] units = new int[most.length];
            program.ways(k).stream().map(ways::get).forEach(way -> {
                for (int i = 0; i < way.units().length; i++) {
                    for (int pool : way.pools()[i]) {
                        units[pool] = Math.max(units[pool], way.units()[i]);
                    }
                }
            });
            int orders = mostOrders[k];
            Arrays.setAll(most, pool -> most[pool] + (long) units[pool] * orders);
        }
        return most;
    }

    /** The pool that stands for all whose units no customer tells apart; bargains count by pool, so these are kept apart. */
    private Shelves.Pool shared(Shelves.Pool pool) {
        return bargains.contains(pool.sku()) ? pool : new Shelves.Pool(pool.sku(), shelves.likeness(pool.condition()), awaited(pool));
    }

    /** The day from which units can be used, as far as any customer could miss them. */
    private int awaited(Shelves.Pool pool) {
        return pool.arrivalDay() <= patience ? 0 : pool.arrivalDay();
    }

    private void addPool(Shelves.Pool one) {
        Shelves.Pool pool = shared(one);
        if (poolAt.putIfAbsent(pool, pools.size()) == null) {
            pools.add(pool);
        }
    }

    /**
     * Units that fewest others would take go first, of these what came last, so that the hasty still find some; of units that all wait for,
     * those that were cheaper than what one from the shelf is worth.
     */
    private int[] drawn(int k, String sku) {
        return IntStream.range(0, pools.size()).boxed()
                .filter(p -> pools.get(p).sku().equals(sku) && takes(classes.get(k), pools.get(p)))
                .sorted(Comparator.comparingLong((Integer p) -> classes.stream().filter(asked -> takes(asked, pools.get(p))).count())
                        .thenComparing(p -> -awaited(pools.get(p))).thenComparing(p -> -spare(p))
                        .thenComparing(p -> -pools.get(p).arrivalDay()))
                .mapToInt(Integer::intValue).toArray();
    }

    private double spare(int pool) {
        return IntStream.range(0, boughtInto.length).filter(o -> boughtInto[o] == pool)
                .mapToDouble(o -> program.purchases().get(o).spare()).max().orElse(0);
    }

    private static boolean takes(DemandClass asked, Shelves.Pool pool) {
        return Shelves.accepted(asked.request().limit().conditions()).contains(pool.condition());
    }

    Program program() {
        return program;
    }

    /** A way to fill an order; it must be one of the program's. */
    Way way(Choice choice) {
        return ways.get(choice);
    }

    /** By class, what is lost by turning an order away, minor units. */
    double[] turnedAway() {
        return turnedAway;
    }

    /** Numbers of arrivals that a customer may wait for, none among them. */
    int states() {
        return arrivals.length + 1;
    }

    /** By pool, the units that are there without purchases. */
    int[] standing() {
        return standing;
    }

    /** The pools of each part. */
    List<int[]> alike() {
        return alike;
    }

    String sku(int pool) {
        return pools.get(pool).sku();
    }

    /** The pool that a purchase of the program goes to. */
    int pool(int purchase) {
        return boughtInto[purchase];
    }

    /**
     * Units that were cheaper than what a unit from the shelf is worth: those that orders take from their pool count as these, as far as
     * they go, the cheapest first.
     */
    record Spared(int pool, int units, double spare) {
    }

    /**
     * What stands there with some purchases.
     *
     * @param bought units of each purchase of the program
     * @param units  by pool; the last pool is always empty
     * @param ample  by pool, whether no orders exhaust it, whatever comes; what is left there need not be counted
     * @param spared units that are cheaper than others
     * @param loss   what bought units lose by the end, minor units
     */
    record Stand(int[] bought, int[] units, boolean[] ample, List<Spared> spared, double loss) {

        /** Counts what is left in all pools. */
        Stand counting() {
            return new Stand(bought, units, new boolean[units.length], spared, loss);
        }

        /** What is saved on units that were cheaper, of those that are not left, minor units. */
        double spared(int[] left) {
            double sum = 0;
            int pool = -1;
            int taken = 0;
            for (Spared one : spared) {
                taken = one.pool() == pool ? taken : units[one.pool()] - left[one.pool()];
                pool = one.pool();
                int counted = Math.min(taken, one.units());
                sum += counted * one.spare();
                taken -= counted;
            }
            return sum;
        }
    }

    /** @param bought units of each purchase of the program */
    Stand stand(int[] bought) {
        int[] units = Arrays.copyOf(standing, pools.size() + 1);
        for (int o = 0; o < bought.length; o++) {
            units[pool(o)] += bought[o];
        }
        List<Spared> spared = IntStream.range(0, bought.length).filter(o -> bought[o] > 0 && program.purchases().get(o).spare() > 0)
                .mapToObj(o -> new Spared(pool(o), bought[o], program.purchases().get(o).spare()))
                .sorted(Comparator.comparingInt(Spared::pool).thenComparingDouble(one -> -one.spare())).toList();
        boolean[] ample = new boolean[units.length];
        for (int p = 0; p < units.length; p++) {
            ample[p] = units[p] > 0 && units[p] >= mostTaken[p];
        }
        spared.forEach(one -> ample[one.pool()] = false);
        return new Stand(bought.clone(), units, ample, spared, program.loss(bought));
    }
}
