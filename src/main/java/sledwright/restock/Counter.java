package sledwright.restock;

import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.IntStream;
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

        static Orders of(int classes, Course course, int[] taken) {
            int[] served = new int[classes];
            IntStream.range(0, taken.length).filter(i -> taken[i] != Service.NONE).forEach(i -> served[course.classes()[i]]++);
            return new Orders(served, Courses.byClass(course, classes));
        }
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
    private static final Service.Watch UNSEEN = (part, course, taken, left) -> { };

    private final Racks racks;
    private final Racks.Way[][] ways;
    /** The last service of this counter or of the one that it was made from. */
    private volatile Optional<Service> last;

    /** @param menus by class, the builds that its orders are offered, in this order */
    Counter(Racks racks, List<List<Choice>> menus) {
        this.racks = racks;
        ways = menus.stream().map(menu -> ways(racks, menu)).toArray(Racks.Way[][]::new);
        last = Optional.empty();
    }

    private Counter(Counter from, int k, List<Choice> menu) {
        racks = from.racks;
        ways = from.ways.clone();
        ways[k] = ways(racks, menu);
        last = from.last;
    }

    private static Racks.Way[] ways(Racks racks, List<Choice> menu) {
        return menu.stream().map(racks::way).toArray(Racks.Way[]::new);
    }

    /** The same but for one class, which is offered other builds. */
    Counter with(int k, List<Choice> menu) {
        return new Counter(this, k, menu);
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
        Service service = counting(bought);
        int[][] all = new int[courses.size()][];
        LeftOver left = leftOver(service);
        double[] margins = service.margins(courses, (part, course, taken, now) -> {
            all[course] = taken;
            left.add(part, now);
        });
        Orders[] orders = new Orders[all.length];
        Arrays.setAll(orders, s -> Orders.of(ways.length, courses.get(s), all[s]));
        Map<String, PartUse> parts = new TreeMap<>();
        for (int i = 0; i < racks.alike().size(); i++) {
            parts.put(racks.sku(racks.alike().get(i)[0]), new PartUse(left.mean(i), left.deviation(i), left.drawnOnPurchases(i)));
        }
        return new Tally(margins, orders, parts, IntStream.range(0, ways.length).mapToObj(k -> used(k, courses, all)).toList());
    }

    /** In the order of the list, so that sums over it always come out the same. */
    private Map<Choice, Long> used(int k, List<Course> courses, int[][] taken) {
        long[] counts = new long[ways[k].length];
        for (int s = 0; s < taken.length; s++) {
            int[] classes = courses.get(s).classes();
            for (int i = 0; i < classes.length; i++) {
                if (classes[i] == k && taken[s][i] != Service.NONE) {
                    counts[taken[s][i]]++;
                }
            }
        }
        Map<Choice, Long> used = new LinkedHashMap<>();
        IntStream.range(0, counts.length).filter(way -> counts[way] > 0).forEach(way -> used.put(ways[k][way].choice(), counts[way]));
        return used;
    }

    private LeftOver leftOver(Service service) {
        return new LeftOver(Service.PARTS, racks.standing(), service.stand().units(), racks.alike());
    }

    /** The builds that orders of a class are filled with in any course, as its list has them. */
    List<Choice> taken(int k, int[] bought, List<Course> courses) {
        int[][] taken = new int[courses.size()][];
        serving(bought).margins(courses, (part, course, ways, left) -> taken[course] = ways);
        return List.copyOf(used(k, courses, taken).keySet());
    }

    /** The purchases less the units that are left over in every course: the dearest of those that are alike go first. */
    int[] withoutIdle(int[] bought, List<Course> courses) {
        Service service = counting(bought);
        LeftOver left = leftOver(service);
        service.margins(courses, (part, course, taken, now) -> left.add(part, now));
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

    /** What courses earn on average. */
    double mean(int[] bought, List<Course> courses) {
        return mean(margins(bought, courses));
    }

    static double mean(double[] margins) {
        return Arrays.stream(margins).average().orElse(0);
    }

    /** What each course earns, as {@link #serve} has it, and nothing else. */
    double[] margins(int[] bought, List<Course> courses) {
        return serving(bought).margins(courses, UNSEEN);
    }

    /**
     * The same; null as soon as the courses that were looked at show that it will hardly come to more than something else. They are looked
     * at after a few, after twice as many and so on; the more of all are known, the less the others can change.
     *
     * @param enough this many of the courses that could differ at all must be alike before the others are taken to be so
     * @param could  whether a course could differ at all
     */
    double[] ifBetter(int[] bought, List<Course> courses, int few, double[] than, int enough, Predicate<Course> could) {
        Service service = serving(bought);
        int all = courses.size();
        double[] earned = new double[all];
        double sum = 0;
        double squares = 0;
        int looked = 0;
        int alike = 0;
        for (int next = Math.min(few, all); looked < all; next = Math.min(2 * next, all)) {
            System.arraycopy(service.margins(courses.subList(looked, next), UNSEEN), 0, earned, looked, next - looked);
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

    private Service serving(int[] bought) {
        Racks.Stand stand = last.map(Service::stand).filter(one -> Arrays.equals(one.bought(), bought))
                .orElseGet(() -> racks.stand(bought));
        Service service = new Service(racks, ways, stand, last);
        last = Optional.of(service);
        return service;
    }

    /** Counts what is left in all pools, ample or not. */
    private Service counting(int[] bought) {
        return new Service(racks, ways, racks.stand(bought).counting(), Optional.empty());
    }
}
