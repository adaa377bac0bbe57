package sledwright.generator;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;

/**
 * What memory costs at least: every lot at its lowest unit price, modules divisible, no rule but stock. Never above the
 * true price, and told in a moment.
 */
final class PriceFloor {

    /** Units of a lot at its lowest reachable price. */
    private record Offer(double pricePerUnit, int capacityGb, int units) {
        double pricePerGb() {
            return pricePerUnit / capacityGb;
        }
    }

    private final Steps byGb;
    private final Steps byUnit;

    PriceFloor(Shelf shelf, List<MemoryModule> modules) {
        List<Offer> offers = new ArrayList<>();
        for (MemoryModule module : modules) {
            for (Lot lot : shelf.lots(module.sku())) {
                lot.breaks().stream().filter(tier -> tier.minQuantity() <= lot.available()).mapToLong(Lot.PriceBreak::unitPrice).min()
                        .ifPresent(price -> offers.add(new Offer(price, module.capacityGb(), lot.available())));
            }
        }
        offers.sort(Comparator.comparingDouble(Offer::pricePerGb));
        byGb = new Steps(offers.size());
        offers.forEach(offer -> byGb.add((double) offer.units * offer.capacityGb, offer.pricePerGb()));
        offers.sort(Comparator.comparingDouble(Offer::pricePerUnit));
        byUnit = new Steps(offers.size());
        offers.forEach(offer -> byUnit.add(offer.units, offer.pricePerUnit));
    }

    /** The least price (minor units) of so many GB in so many units or more; infinite where the stock ends first. */
    double price(double gb, double units) {
        return Math.max(byGb.price(gb), byUnit.price(units));
    }

    /** The least of price less worth over any amount of memory from {@code gb} on. */
    double priceLessWorth(double gb, double worthOfGb) {
        return byGb.priceLess(gb, worthOfGb);
    }

    /** The most GB that money buys. */
    double mostGb(double money) {
        return byGb.amountFor(money);
    }

    /** Cumulated amounts and prices, cheapest first. */
    private static final class Steps {
        private final double[] amounts;
        private final double[] prices;
        private int size;

        Steps(int capacity) {
            amounts = new double[capacity + 1];
            prices = new double[capacity + 1];
        }

        void add(double amount, double pricePerUnit) {
            size++;
            amounts[size] = amounts[size - 1] + amount;
            prices[size] = prices[size - 1] + amount * pricePerUnit;
        }

        double price(double amount) {
            if (amount > amounts[size]) {
                return Double.POSITIVE_INFINITY;
            }
            int step = lowerBound(amounts, amount);
            return step == 0 ? 0 : prices[step - 1] + (amount - amounts[step - 1]) * slope(step);
        }

        double priceLess(double amount, double worth) {
            double least = price(amount) - worth * amount;
            for (int step = Math.max(1, lowerBound(amounts, amount)); step <= size && slope(step) < worth; step++) {
                least = Math.min(least, prices[step] - worth * amounts[step]);
            }
            return least;
        }

        double amountFor(double money) {
            if (money >= prices[size]) {
                return amounts[size];
            }
            int step = lowerBound(prices, money);
            return step == 0 ? 0 : amounts[step - 1] + (money - prices[step - 1]) / slope(step);
        }

        private double slope(int step) {
            return (prices[step] - prices[step - 1]) / (amounts[step] - amounts[step - 1]);
        }

        /** The first step that reaches {@code value}. */
        private int lowerBound(double[] steps, double value) {
            int low = 0;
            int high = size;
            while (low < high) {
                int middle = (low + high) >>> 1;
                if (steps[middle] < value) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            return low;
        }
    }
}
