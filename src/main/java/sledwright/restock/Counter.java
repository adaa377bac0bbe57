package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;
import java.util.function.Predicate;
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
     * @param byCourse the orders of each course
     * @param parts    by part number, of those that some build has
     * @param used     by class and build, orders in all courses together
     */
    record Tally(double[] margins, Orders[] byCourse, Map<String, PartUse> parts, List<Map<Choice, Long>> used) {

        double mean() {
            return Arrays.stream(margins).average().orElse(0);
        }

        /** Orders of a class that were filled, in all courses together. */
        long served(int k) {
            return Arrays.stream(byCourse).mapToLong(orders -> orders.served[k]).sum();
        }

        /** The same, with those turned away. */
        long asked(int k) {
            return Arrays.stream(byCourse).mapToLong(orders -> orders.asked[k]).sum();
        }

        Optional<PartUse> part(String sku) {
            return Optional.ofNullable(parts.get(sku));
        }
    }

    /**
     * The orders of a course by class.
     *
     * @param served those that were filled
     * @param asked  all
     */
    record Orders(int[] served, int[] asked) {
    }

    /**
     * What became of a part.
     *
     * @param leftover  units that are left over, mean
     * @param deviation of the units that orders take, from course to course
     * @param needed    share of courses that take more units than stand there without purchases
     */
    record PartUse(double leftover, double deviation, double needed) {
    }

    private static final double CLEARLY = 2;

    private final Racks racks;
    private final Racks.Way[][] ways;
    private final double[] turnedAway;
    /** By class and pool, the most units that an order takes there. */
    private final int[][] mostUnits;
    /** What was made ready last, by this counter or by the one that it differs from in the rows that are missing. */
    private volatile Ready ready;

    /**
     * What serving from some purchases begins with.
     *
     * @param ample by pool, whether no orders exhaust it, whatever comes; what is left there need not be counted
     * @param draws by class and way, as {@link Racks#draws} has it; null: not known yet
     */
    private record Ready(int[] stock, boolean[] ample, int[][][][] draws) {
    }

    /** @param menus by class, the builds that its orders are offered, in this order */
    Counter(Racks racks, List<List<Choice>> menus) {
        this(racks, menus.stream().map(menu -> menu.stream().map(racks::way).toArray(Racks.Way[]::new)).toArray(Racks.Way[][]::new),
                new int[menus.size()][]);
    }

    private Counter(Racks racks, Racks.Way[][] ways, int[][] mostUnits) {
        this.racks = racks;
        this.ways = ways;
        this.mostUnits = mostUnits;
        Arrays.setAll(mostUnits, k -> mostUnits[k] == null ? racks.mostUnits(ways[k]) : mostUnits[k]);
        List<DemandClass> classes = racks.program().classes();
        turnedAway = classes.stream().mapToDouble(asked -> (double) asked.loss() * asked.machines()).toArray();
    }

    /** The same but for one class, which is offered other builds. */
    Counter with(int k, List<Choice> menu) {
        Racks.Way[][] other = ways.clone();
        other[k] = menu.stream().map(racks::way).toArray(Racks.Way[]::new);
        int[][] units = mostUnits.clone();
        units[k] = null;
        Counter changed = new Counter(racks, other, units);
        Ready known = ready;
        if (known != null) {
            int[][][][] draws = known.draws.clone();
            draws[k] = null;
            changed.ready = new Ready(known.stock, known.ample, draws);
        }
        return changed;
    }

    /** The builds that orders of a class are offered, in this order. */
    List<Choice> menu(int k) {
        return Arrays.stream(ways[k]).map(Racks.Way::choice).toList();
    }

    /**
     * Serves the courses, each from the same stock.
     *
     * @param bought units of each purchase of the program
     */
    Tally serve(int[] bought, List<Course> courses) {
        int[] stock = racks.stocked(bought);
        Orders[] orders = new Orders[courses.size()];
        Arrays.setAll(orders, s -> new Orders(new int[ways.length], new int[ways.length]));
        long[][][] used = new long[PARTS][][];
        Arrays.setAll(used, part -> noWay());
        LeftOver left = new LeftOver(PARTS, racks.standing(), stock, racks.alike());
        double[] margins = margins(bought, stock, courses, (part, s) -> new Seen(orders[s].served, orders[s].asked, used[part]),
                Optional.of(left::add));
        Map<String, PartUse> parts = new TreeMap<>();
        for (int i = 0; i < racks.alike().size(); i++) {
            parts.put(racks.sku(racks.alike().get(i)[0]), new PartUse(left.mean(i), left.deviation(i), left.drawnOnPurchases(i)));
        }
        return new Tally(margins, orders, parts, builds(used));
    }

    /** The purchases less the units that are left over in every course: the dearest of those that are alike go first. */
    int[] withoutIdle(int[] bought, List<Course> courses) {
        int[] stock = racks.stocked(bought);
        LeftOver left = new LeftOver(PARTS, racks.standing(), stock, racks.alike());
        margins(bought, stock, courses, unseen(), Optional.of(left::add));
        int[] least = left.least();
        int[] fewer = bought.clone();
        IntStream.range(0, bought.length).filter(o -> bought[o] > 0).boxed()
                .sorted(Comparator.comparingLong(o -> -racks.program().purchases().get(o).offer().unitCost())).forEach(o -> {
            SupplyOffer offer = racks.program().purchases().get(o).offer();
            int pool = racks.pool(o);
            int idle = Math.min(bought[o], least[pool]);
            fewer[o] = bought[o] - idle >= offer.minQuantity() ? bought[o] - idle : idle == bought[o] ? 0 : offer.minQuantity();
            least[pool] -= bought[o] - fewer[o];
        });
        return fewer;
    }

    /** What each course earns, as {@link #serve} has it, and nothing else. */
    double[] margins(int[] bought, List<Course> courses) {
        return margins(bought, racks.stocked(bought), courses, unseen(), Optional.empty());
    }

    /**
     * The same; null as soon as the courses that were looked at show that it will hardly come to more than something else. They are looked
     * at after a few, after twice as many and so on; the more of all are known, the less the others can change.
     *
     * @param enough this many of the courses that could differ at all must be alike before the others are taken to be so
     * @param could  whether a course could differ at all
     */
    double[] ifBetter(int[] bought, List<Course> courses, int few, double[] than, int enough, Predicate<Course> could) {
        int all = courses.size();
        double[] earned = new double[all];
        double sum = 0;
        double squares = 0;
        int looked = 0;
        int alike = 0;
        for (int next = Math.min(few, all); looked < all; next = Math.min(2 * next, all)) {
            System.arraycopy(margins(bought, courses.subList(looked, next)), 0, earned, looked, next - looked);
            for (; looked < next; looked++) {
                double difference = earned[looked] - than[looked];
                sum += difference;
                squares += difference * difference;
                alike += could.test(courses.get(looked)) ? 1 : 0;
            }
            double scatter = Math.sqrt(Math.max(0, squares - sum * sum / looked) * (all - looked) / all);
            if (sum + CLEARLY * scatter < 0 || squares == 0 && alike >= enough) {
                return null;
            }
        }
        return earned;
    }

    private BiFunction<Integer, Integer, Seen> unseen() {
        Seen[] seen = new Seen[PARTS];
        Arrays.setAll(seen, part -> new Seen(new int[ways.length], new int[ways.length], noWay()));
        return (part, s) -> seen[part];
    }

    /** Serves some of the courses in each part, with what it sees, and reports what is left after each of them. */
    private double[] margins(int[] bought, int[] stock, List<Course> courses, BiFunction<Integer, Integer, Seen> seen,
            Optional<BiConsumer<Integer, int[]>> after) {
        double[] margins = new double[courses.size()];
        double loss = racks.program().loss(bought);
        List<Racks.Spared> spared = racks.spared(bought);
        int[][] visits = courses.stream().map(racks::visits).toArray(int[][]::new);
        int[][][][] draws = after.isPresent() ? all(stock) : ready(stock, spared).draws;
        IntStream.range(0, Math.min(courses.size(), PARTS)).parallel().forEach(part -> {
            int[] now = new int[stock.length];
            int[][] shortOf = Arrays.stream(ways).map(of -> new int[of.length]).toArray(int[][]::new);
            int[][][] failed = Arrays.stream(ways).map(of -> new int[of.length][]).toArray(int[][][]::new);
            for (int s = part; s < visits.length; s += PARTS) {
                System.arraycopy(stock, 0, now, 0, stock.length);
                margins[s] = course(visits[s], draws, now, seen.apply(part, s), shortOf, failed) - loss + spared(spared, stock, now);
                after.ifPresent(see -> see.accept(part, now));
            }
        });
        return margins;
    }

    private Ready ready(int[] stock, List<Racks.Spared> spared) {
        boolean[] ample = ample(stock, spared);
        Ready known = ready;
        boolean isOfThese = known != null && Arrays.equals(known.ample, ample) && Arrays.equals(known.stock, stock);
        int[][][][] draws = isOfThese ? known.draws.clone() : new int[ways.length][][][];
        if (!isOfThese || Arrays.stream(draws).anyMatch(Objects::isNull)) {
            Arrays.setAll(draws, k -> draws[k] == null ? draws(k, stock, ample) : draws[k]);
            known = new Ready(stock, ample, draws);
            ready = known;
        }
        return known;
    }

    /** The draws on all pools, ample or not. */
    private int[][][][] all(int[] stock) {
        return IntStream.range(0, ways.length).mapToObj(k -> draws(k, stock, new boolean[stock.length])).toArray(int[][][][]::new);
    }

    private int[][][] draws(int k, int[] stock, boolean[] ample) {
        return Arrays.stream(ways[k]).map(way -> racks.draws(way, stock, ample)).toArray(int[][][]::new);
    }

    private boolean[] ample(int[] stock, List<Racks.Spared> spared) {
        boolean[] ample = new boolean[stock.length];
        for (int p = 0; p < stock.length; p++) {
            long most = 0;
            for (int k = 0; k < ways.length; k++) {
                most += (long) mostUnits[k][p] * racks.mostOrders(k);
            }
            ample[p] = stock[p] > 0 && stock[p] >= most;
        }
        spared.forEach(one -> ample[one.pool()] = false);
        return ample;
    }

    private static double spared(List<Racks.Spared> spared, int[] stock, int[] now) {
        double sum = 0;
        int pool = -1;
        int taken = 0;
        for (Racks.Spared one : spared) {
            taken = one.pool() == pool ? taken : stock[one.pool()] - now[one.pool()];
            pool = one.pool();
            int units = Math.min(taken, one.units());
            sum += units * one.spare();
            taken -= units;
        }
        return sum;
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

    /**
     * @param shortOf see {@link Take#isTaken}
     * @param failed  room for what each way drew on when it failed
     */
    private double course(int[] visits, int[][][][] draws, int[] stock, Seen seen, int[][] shortOf, int[][][] failed) {
        double earned = 0;
        for (int[][] ofClass : failed) {
            Arrays.fill(ofClass, null);
        }
        // Stock only dwindles until more arrives, so a way that failed need not be tried again before.
        int[] first = new int[ways.length];
        int[] arrived = new int[ways.length];
        for (int visit : visits) {
            int k = visit >> Racks.CLASS_FROM;
            int by = visit & Racks.ARRIVED;
            seen.asked()[k]++;
            earned -= turnedAway[k];
            if (arrived[k] != by) {
                arrived[k] = by;
                first[k] = 0;
            }
            int[][][] offered = draws[k];
            int at = first[k];
            int[][] before = failed[k];
            while (at < offered.length) {
                int[] draw = offered[at][by];
                // Where it would draw on the same, nothing has arrived for it.
                if (draw != before[at]) {
                    if (Take.isTaken(draw, stock, shortOf[k], at)) {
                        break;
                    }
                    before[at] = draw;
                }
                at++;
            }
            first[k] = at;
            if (at < offered.length) {
                earned += ways[k][at].gain();
                seen.served()[k]++;
                seen.used()[k][at]++;
            }
        }
        return earned;
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
}
