package sledwright.domain;

import java.util.List;

/** How many orders of one kind come in a month. */
public sealed interface OrdersByMonth {

    /** The mean, orders a month. */
    double mean();

    /** The standard deviation, orders a month. */
    double deviation();

    /**
     * Orders that come independently of each other.
     *
     * @param rate orders a month
     */
    record Poisson(double rate) implements OrdersByMonth {

        @Override
        public double mean() {
            return rate;
        }

        @Override
        public double deviation() {
            return Math.sqrt(rate);
        }
    }

    /** A bell curve; a month below nothing counts as none, and months are rounded to whole orders. */
    record Normal(double mean, double deviation) implements OrdersByMonth {
    }

    /**
     * Any of these past months again, each as likely as the other.
     *
     * @param orders at least one month
     */
    record Months(List<Integer> orders) implements OrdersByMonth {

        public Months {
            orders = List.copyOf(orders);
            if (orders.isEmpty()) {
                throw new IllegalArgumentException("no month is given");
            }
        }

        @Override
        public double mean() {
            return orders.stream().mapToInt(Integer::intValue).average().orElseThrow();
        }

        @Override
        public double deviation() {
            double mean = mean();
            return Math.sqrt(orders.stream().mapToDouble(count -> (count - mean) * (count - mean)).average().orElseThrow());
        }
    }
}
