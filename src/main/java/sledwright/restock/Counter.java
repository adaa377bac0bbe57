package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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

    private static final double CLEARLY = 2;

    private final Racks racks;
    private final Racks.Way[][] ways;
    private final double[] turnedAway;

    /** @param menus by class, the builds that its orders are offered, in this order */
    Counter(Racks racks, List<List<Choice>> menus) {
        this(racks, menus.stream().map(menu -> menu.stream().map(racks::way).toArray(Racks.Way[]::new)).toArray(Racks.Way[][]::new));
    }

    private Counter(Racks racks, Racks.Way[][] ways) {
        this.racks = racks;
        this.ways = ways;
        List<DemandClass> classes = racks.program().classes();
        turnedAway = classes.stream().mapToDouble(asked -> (double) asked.loss() * asked.machines()).toArray();
    }

    /** The same but for one class, which is offered other builds. */
    Counter with(int k, List<Choice> menu) {
        Racks.Way[][] other = ways.clone();
        other[k] = menu.stream().map(racks::way).toArray(Racks.Way[]::new);
        return new Counter(racks, other);
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
        int[][] served = new int[courses.size()][ways.length];
        int[][] asked = new int[courses.size()][ways.length];
        long[][][] used = new long[PARTS][][];
        Arrays.setAll(used, part -> noWay());
        LeftOver left = new LeftOver(PARTS, racks.standing(), stock, racks.alike());
        double[] margins = margins(bought, stock, courses, (part, s) -> new Seen(served[s], asked[s], used[part]), left::add);
        Map<String, Double> leftover = new TreeMap<>();
        Map<String, Double> shares = new TreeMap<>();
        Map<String, Double> deviations = new TreeMap<>();
        for (int i = 0; i < racks.alike().size(); i++) {
            String sku = racks.sku(racks.alike().get(i)[0]);
            leftover.put(sku, left.mean(i));
            shares.put(sku, left.drawnOnPurchases(i));
            deviations.put(sku, left.deviation(i));
        }
        return new Tally(margins, sum(served), sum(asked), served, asked, leftover, deviations, shares, builds(used));
    }

    /** The purchases less the units that are left over in every course: the dearest of those that are alike go first. */
    int[] withoutIdle(int[] bought, List<Course> courses) {
        int[] stock = racks.stocked(bought);
        LeftOver left = new LeftOver(PARTS, racks.standing(), stock, racks.alike());
        margins(bought, stock, courses, unseen(), left::add);
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
        return margins(bought, racks.stocked(bought), courses, unseen(), (part, now) -> { });
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
            BiConsumer<Integer, int[]> after) {
        double[] margins = new double[courses.size()];
        double loss = racks.program().loss(bought);
        List<Racks.Spared> spared = racks.spared(bought);
        int[][][][] draws = Arrays.stream(ways).map(of -> Arrays.stream(of).map(way -> racks.draws(way, stock)).toArray(int[][][]::new))
                .toArray(int[][][][]::new);
        int[][] visits = courses.stream().map(racks::visits).toArray(int[][]::new);
        IntStream.range(0, Math.min(courses.size(), PARTS)).parallel().forEach(part -> {
            int[] now = new int[stock.length];
            int[][] shortOf = Arrays.stream(ways).map(of -> new int[of.length]).toArray(int[][]::new);
            for (int s = part; s < visits.length; s += PARTS) {
                System.arraycopy(stock, 0, now, 0, stock.length);
                margins[s] = course(visits[s], draws, now, seen.apply(part, s), shortOf) - loss + spared(spared, stock, now);
                after.accept(part, now);
            }
        });
        return margins;
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

    private double course(int[] visits, int[][][][] draws, int[] stock, Seen seen, int[][] shortOf) {
        double earned = 0;
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
            while (at < offered.length && !isTaken(offered[at][by], stock, shortOf[k], at)) {
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

    /**
     * Takes what an order needs, or nothing where something is missing.
     *
     * @param draw    as {@link Racks#draws} has it
     * @param shortOf by way, how far behind the first the part stands that was missing last: it is likely to be missing again
     */
    private static boolean isTaken(int[] draw, int[] stock, int[] shortOf, int way) {
        if (draw == null) {
            return false;
        }
        int end = 1 + 2 * draw[0];
        int likely = 1 + shortOf[way];
        if (likely < end && stock[draw[likely]] < draw[likely + 1] || !isThere(draw, end, stock)) {
            return false;
        }
        for (int i = 1; i < end; i += 2) {
            int left = stock[draw[i]] - draw[i + 1];
            if (left < 0) {
                for (int taken = 1; taken < i; taken += 2) {
                    stock[draw[taken]] += draw[taken + 1];
                }
                shortOf[way] = i - 1;
                return false;
            }
            stock[draw[i]] = left;
        }
        takeMixed(draw, end, stock);
        return true;
    }

    /** Whether there is enough of the parts that come from several pools. */
    private static boolean isThere(int[] draw, int from, int[] stock) {
        int i = from;
        while (i < draw.length) {
            int missing = draw[i];
            int end = i + 2 + draw[i + 1];
            for (int j = i + 2; j < end && missing > 0; j++) {
                missing -= stock[draw[j]];
            }
            if (missing > 0) {
                return false;
            }
            i = end;
        }
        return true;
    }

    private static void takeMixed(int[] draw, int from, int[] stock) {
        for (int i = from; i < draw.length; i += 2 + draw[i + 1]) {
            int missing = draw[i];
            for (int j = i + 2; missing > 0; j++) {
                int left = stock[draw[j]] - missing;
                stock[draw[j]] = Math.max(0, left);
                missing = -left;
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
