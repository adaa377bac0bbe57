package sledwright.restock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import sledwright.domain.DemandClass;
import sledwright.domain.RestockRequest;
import sledwright.domain.SupplyOffer;
import sledwright.generator.time.Deadline;
import sledwright.restock.Counter.PartUse;
import sledwright.restock.Counter.Tally;
import sledwright.restock.RestockPlan.Buy;
import sledwright.restock.RestockPlan.ClassOutlook;
import sledwright.restock.RestockPlan.Filled;
import sledwright.restock.RestockPlan.PartOutlook;
import sledwright.restock.RestockPlan.Units;
import sledwright.restock.RestockPlan.Value;
import sledwright.words.Numbers;

/**
 * What a plan is for and what is to be expected of it: its purchases, the orders of each class, each part.
 *
 * @param tried the courses that plans are tried on
 */
record Prospects(RestockRequest request, Shelves shelves, Choices choices, Program program, List<Course> tried, Deadline deadline) {

    /** How many orders a course has on average. */
    private static final double WORTH_TELLING = 0.1;

    List<ClassOutlook> outlook(Tally with, Tally without) {
        List<ClassOutlook> outlook = new ArrayList<>();
        for (int k = 0; k < request.classes().size(); k++) {
            double asked = Math.max(1, with.asked(k));
            double filled = with.served(k) / asked;
            outlook.add(new ClassOutlook(request.classes().get(k).name(), (double) with.asked(k) / tried.size(),
                    new Filled(filled, halfWidth(with, k), without.served(k) / asked), choices.revenue(k), choices.cheapest(k),
                    choices.impossible(k)));
        }
        return outlook;
    }

    /** Of a ratio of two means: the courses are independent, the orders of one are not. */
    private double halfWidth(Tally tally, int k) {
        double ratio = tally.served(k) / Math.max(1.0, tally.asked(k));
        double[] residuals = new double[tried.size()];
        Arrays.setAll(residuals, s -> tally.byCourse()[s].served()[k] - ratio * tally.byCourse()[s].asked()[k]);
        double mean = Math.max(1e-9, (double) tally.asked(k) / tried.size());
        return Restocker.expected(residuals, 0).halfWidth() / mean;
    }

    List<Buy> buys(int[] plan, Tally with) {
        List<Buy> buys = new ArrayList<>();
        for (int o = 0; o < plan.length; o++) {
            if (plan[o] > 0) {
                SupplyOffer offer = program.purchases().get(o).offer();
                buys.add(new Buy(offer, plan[o], why(offer, with)));
            }
        }
        buys.sort(Comparator.comparingLong(Buy::cost).reversed().thenComparing(buy -> buy.offer().sku()));
        return buys;
    }

    private double used(String sku, int[] plan, Tally tally) {
        int standing = shelves.standing(sku);
        return Math.max(0, standing + bought(sku, plan) - tally.part(sku).map(PartUse::leftover).orElse((double) standing));
    }

    private int bought(String sku, int[] plan) {
        return IntStream.range(0, plan.length).filter(o -> program.purchases().get(o).offer().sku().equals(sku)).map(o -> plan[o]).sum();
    }

    private String why(SupplyOffer offer, Tally with) {
        String sku = offer.sku();
        Map<String, Double> orders = new TreeMap<>();
        for (int k = 0; k < request.classes().size(); k++) {
            DemandClass asked = request.classes().get(k);
            with.used().get(k).forEach((choice, count) -> {
                if (choice.needed().containsKey(sku)) {
                    orders.merge(asked.name(), (double) count / tried.size(), Double::sum);
                }
            });
        }
        int standing = shelves.standing(sku);
        double needed = with.part(sku).map(PartUse::needed).orElse(0.0);
        boolean dearer = needed == 0 && shelves.worth(sku).orElse(0) > offer.unitCost();
        return "%s; %s.".formatted(standing == 0 ? "None is there"
                        : dearer ? "The %s there would do, but each is worth more than this costs".formatted(standing)
                        : "The %s there fall short in %s %% of courses".formatted(standing,
                                Math.round(100 * needed)),
                orders.entrySet().stream().filter(entry -> entry.getValue() >= WORTH_TELLING)
                        .sorted(Map.Entry.<String, Double>comparingByValue().reversed().thenComparing(Map.Entry.comparingByKey())).limit(3)
                        .map(entry -> "%s orders of %s".formatted(
                                Numbers.decimal(Math.round(10 * entry.getValue()) / 10.0), entry.getKey()))
                        .reduce((one, other) -> one + ", " + other).map(all -> "goes into " + all)
                        .orElse("goes into hardly any order that is expected"));
    }

    List<PartOutlook> parts(int[] plan, Tally with, double[] rowPrices) {
        Set<String> skus = new LinkedHashSet<>();
        shelves.standing().keySet().forEach(pool -> skus.add(pool.sku()));
        shelves.offers().forEach(offer -> skus.add(offer.sku()));
        Map<String, OptionalLong> most = new Ceilings(shelves, choices, sku -> Math.round(Math.max(shelves.worth(sku).orElse(0),
                oneMore(sku, rowPrices))), deadline).of(List.copyOf(skus));
        List<PartOutlook> parts = new ArrayList<>();
        for (String sku : skus) {
            Units units = new Units(shelves.standing(sku), bought(sku, plan), used(sku, plan, with),
                    with.part(sku).map(PartUse::deviation).orElse(0.0));
            parts.add(new PartOutlook(sku, units, new Value(shelves.worth(sku).orElse(0), oneMore(sku, rowPrices),
                    lost(sku, units.left(), plan), most(sku, most.get(sku), units.used() > 0, rowPrices))));
        }
        return parts;
    }

    /** What units that are left lose: of those that are bought and of those from the shelf; the latter are left first. */
    private double lost(String sku, double left, int[] plan) {
        int standing = shelves.standing(sku);
        double bought = 0;
        double loss = 0;
        for (int o = 0; o < plan.length; o++) {
            if (program.purchases().get(o).offer().sku().equals(sku)) {
                bought += plan[o];
                loss += plan[o] * program.purchases().get(o).loss();
            }
        }
        return Math.min(left, standing) * (shelves.worth(sku).orElse(0) - shelves.leftover(sku))
                + (bought > 0 ? Math.max(0, left - standing) * loss / bought : 0);
    }

    /** What one more unit adds: its worth at the end and its scarcity. */
    private double oneMore(String sku, double[] rowPrices) {
        return shelves.leftover(sku) + program.scarcity(sku, rowPrices);
    }

    /** A price is worth paying, too, that one more unit brings in. */
    private OptionalLong most(String sku, OptionalLong ceiling, boolean isUsed, double[] rowPrices) {
        LongStream.Builder prices = LongStream.builder();
        ceiling.ifPresent(prices);
        if (isUsed) {
            prices.add(Math.round(oneMore(sku, rowPrices)));
        }
        return prices.build().max();
    }
}
