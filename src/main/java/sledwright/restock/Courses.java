package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.PoissonDistribution;
import sledwright.domain.OrdersByMonth;
import sledwright.domain.RestockRequest;

/** Draws courses of events. Course {@code i} of a seed is the same whatever else is drawn, so plans are compared on equal luck. */
final class Courses {

    private static final long STRIDE = 0x9E3779B97F4A7C15L;

    private Courses() {
    }

    static List<Course> draw(RestockRequest request, int count, long seed) {
        List<Course> courses = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            courses.add(draw(request, new SplittableRandom(seed * STRIDE + i)));
        }
        return courses;
    }

    private static Course draw(RestockRequest request, SplittableRandom luck) {
        List<double[]> orders = new ArrayList<>();
        for (int k = 0; k < request.classes().size(); k++) {
            // A class has luck of its own: another number of orders in one leaves the others as they are.
            SplittableRandom own = luck.split();
            for (int month = 0; month < Math.ceil(request.horizonMonths()); month++) {
                int count = count(request.classes().get(k).orders(), own);
                for (int i = 0; i < count; i++) {
                    double when = month + own.nextDouble();
                    if (when < request.horizonMonths()) {
                        orders.add(new double[] {when * RestockRequest.DAYS_A_MONTH, k});
                    }
                }
            }
        }
        orders.sort((one, other) -> Double.compare(one[0], other[0]));
        return new Course(orders.stream().mapToInt(order -> (int) order[1]).toArray(),
                orders.stream().mapToDouble(order -> order[0]).toArray());
    }

    /** The orders of one month. */
    private static int count(OrdersByMonth orders, SplittableRandom luck) {
        if (orders instanceof OrdersByMonth.Poisson poisson) {
            return poisson.rate() == 0 ? 0 : PoissonDistribution.of(poisson.rate()).inverseCumulativeProbability(luck.nextDouble());
        } else if (orders instanceof OrdersByMonth.Normal normal) {
            double drawn = normal.deviation() == 0 ? normal.mean()
                    : NormalDistribution.of(normal.mean(), normal.deviation())
                    .inverseCumulativeProbability(luck.nextDouble(Double.MIN_NORMAL, 1));
            return (int) Math.max(0, Math.round(drawn));
        }
        List<Integer> months = ((OrdersByMonth.Months) orders).orders();
        return months.get(luck.nextInt(months.size()));
    }

    /** How many orders of each class there are. */
    static int[] byClass(Course course, int classes) {
        int[] counts = new int[classes];
        Arrays.stream(course.classes()).forEach(k -> counts[k]++);
        return counts;
    }
}
