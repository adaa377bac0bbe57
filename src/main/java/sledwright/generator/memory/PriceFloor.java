package sledwright.generator.memory;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import sledwright.domain.Lot;
import sledwright.domain.MemoryModule;
import sledwright.generator.draw.Shelf;

/**
 * What memory costs at least: every lot at its lowest unit price, modules divisible, no rule but stock and the number of
 * slots. Never above the true price, and quick to compute.
 *
 * <p>The slots come in by Lagrangian relaxation: whatever one charges for a slot, the least of price plus charge, less the
 * charge for all slots there are, is no more than the price. A few charges are tried and the best bound taken.
 */
public final class PriceFloor {

    /** Charges for a slot, in units of the middling module's price. */
    private static final double[] SLOT_CHARGES = {0.1, 0.3, 0.6, 1, 2, 4, 8};

    /** Units of a lot at its lowest reachable price. */
    private record Offer(double price, int capacityGb, int units) {
    }

    /** Stands for slots that are not counted. */
    static final int ANY_SLOTS = Integer.MAX_VALUE;

    private final List<Offer> offers = new ArrayList<>();
    private final double worthOfGb;
    private final Steps byGb;
    private final Steps byUnit;
    private final Steps[] charged = new Steps[SLOT_CHARGES.length];
    private final double middling;
    private Steps byValue;

    /** @param worthOfGb what a GB is worth to the customer, minor units */
    public PriceFloor(Shelf shelf, List<MemoryModule> modules, double worthOfGb) {
        this.worthOfGb = worthOfGb;
        for (MemoryModule module : modules) {
            for (Lot lot : shelf.lots(module.sku())) {
                long least = Long.MAX_VALUE;
                for (Lot.PriceBreak tier : lot.breaks()) {
                    least = tier.minQuantity() <= lot.available() ? Math.min(least, tier.unitPrice()) : least;
                }
                if (least < Long.MAX_VALUE) {
                    offers.add(new Offer(least, module.capacityGb(), lot.available()));
                }
            }
        }
        byGb = stepsOfGb(Offer::price);
        byUnit = steps(Offer::price, offer -> 1);
        middling = middling();
    }

    private double middling() {
        double[] prices = new double[offers.size()];
        for (int i = 0; i < prices.length; i++) {
            prices[i] = offers.get(i).price;
        }
        Arrays.sort(prices);
        return prices.length == 0 ? 0 : prices[prices.length / 2];
    }

    // Threads may share a floor: what two of them work out at once is the same, and nothing that is half made is seen of it.

    private Steps charged(int i) {
        Steps known = charged[i];
        if (known == null) {
            known = stepsOfGb(offer -> offer.price + charge(i));
            charged[i] = known;
        }
        return known;
    }

    private double charge(int i) {
        return SLOT_CHARGES[i] * middling;
    }

    private Steps byValue() {
        Steps known = byValue;
        if (known == null) {
            known = steps(offer -> offer.price - worthOfGb * offer.capacityGb, offer -> 1);
            byValue = known;
        }
        return known;
    }

    private Steps stepsOfGb(ToDoubleFunction<Offer> price) {
        return steps(price, Offer::capacityGb);
    }

    private Steps steps(ToDoubleFunction<Offer> price, ToDoubleFunction<Offer> amount) {
        List<Offer> sorted = new ArrayList<>(offers);
        sorted.sort(Comparator.comparingDouble(offer -> price.applyAsDouble(offer) / amount.applyAsDouble(offer)));
        double[] steps = new double[sorted.size()];
        double[] pricesPerUnit = new double[sorted.size()];
        for (int i = 0; i < steps.length; i++) {
            double each = amount.applyAsDouble(sorted.get(i));
            steps[i] = sorted.get(i).units * each;
            pricesPerUnit[i] = price.applyAsDouble(sorted.get(i)) / each;
        }
        return new Steps(steps, pricesPerUnit);
    }

    /** The least price in minor units of some GB in at least a number of modules within the slots; infinite where stock ends first. */
    double price(double gb, double modules, int slots) {
        double least = Math.max(byGb.price(gb), byUnit.price(modules));
        for (int i = 0; i < SLOT_CHARGES.length && slots != ANY_SLOTS; i++) {
            least = Math.max(least, charged(i).price(gb) - charge(i) * slots);
        }
        return least;
    }

    /** The least of price less worth over any amount of memory between two, within the slots. */
    double priceLessWorth(double leastGb, double mostGb, int slots) {
        double least = byGb.priceLess(leastGb, mostGb, worthOfGb);
        return slots == ANY_SLOTS ? least : Math.max(least, byValue().priceLess(0, slots, 0));
    }

    /**
     * The most GB that money buys within the slots: never more than what it and a charge's worth of the slots would buy at charged prices.
     */
    double mostGb(double money, int slots) {
        double most = byGb.amountFor(money);
        for (int i = 0; i < SLOT_CHARGES.length && slots != ANY_SLOTS; i++) {
            most = Math.min(most, charged(i).amountFor(money + charge(i) * slots));
        }
        return most;
    }

    /** Cumulated amounts and prices, cheapest first. */
    private static final class Steps {
        private final double[] amounts;
        private final double[] prices;
        private final int size;

        /** @param steps how much each step has */
        Steps(double[] steps, double[] pricesPerUnit) {
            size = steps.length;
            amounts = new double[size + 1];
            prices = new double[size + 1];
            for (int i = 0; i < size; i++) {
                amounts[i + 1] = amounts[i] + steps[i];
                prices[i + 1] = prices[i] + steps[i] * pricesPerUnit[i];
            }
        }

        double price(double amount) {
            if (amount > amounts[size]) {
                return Double.POSITIVE_INFINITY;
            }
            int step = firstReaching(amount);
            return step == 0 ? 0 : prices[step - 1] + (amount - amounts[step - 1]) * slope(step);
        }

        /** The least of price less worth between two amounts: on from the lesser as long as a step costs less than it is worth. */
        double priceLess(double from, double to, double worth) {
            double price = price(from);
            if (price == Double.POSITIVE_INFINITY) {
                return price;
            }
            double reached = from;
            for (int step = Math.max(1, firstReaching(from)); step <= size && slope(step) < worth && reached < to; step++) {
                double next = Math.min(amounts[step], to);
                price += (next - reached) * slope(step);
                reached = Math.max(reached, next);
            }
            return price - worth * reached;
        }

        /** What money buys, with all that costs nothing. */
        double amountFor(double money) {
            int paid = paidWhole(money);
            return paid == size ? amounts[size] : amounts[paid] + Math.max(0, money - prices[paid]) / slope(paid + 1);
        }

        /** The last step that money pays for together with those before it; none costs nothing behind it. */
        private int paidWhole(double money) {
            int low = 0;
            int high = size;
            while (low < high) {
                int middle = (low + high + 1) >>> 1;
                if (prices[middle] <= Math.max(0, money)) {
                    low = middle;
                } else {
                    high = middle - 1;
                }
            }
            return low;
        }

        private double slope(int step) {
            return (prices[step] - prices[step - 1]) / (amounts[step] - amounts[step - 1]);
        }

        /** The first step up to which there is so much. */
        private int firstReaching(double amount) {
            int low = 0;
            int high = size;
            while (low < high) {
                int middle = (low + high) >>> 1;
                if (amounts[middle] < amount) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            return low;
        }
    }
}
