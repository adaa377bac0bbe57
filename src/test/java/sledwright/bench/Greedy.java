package sledwright.bench;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.domain.Lot.PriceBreak;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.metrics.OrderPrice;

/** What a salesman does: each machine in turn the cheapest from what the machines before it have left. */
final class Greedy {

    private final Catalog catalog;
    private final Search search;
    private final Map<Lot, Integer> taken = new HashMap<>();

    Greedy(Catalog catalog) {
        this.catalog = catalog;
        search = new Search(catalog);
    }

    /**
     * A filled order.
     *
     * @param builds  of each line
     * @param missing machines for which nothing was left
     * @param price   with every lot at the price that all its units together reach, minor units
     */
    record Filled(List<List<Build>> builds, int missing, long price) {
    }

    Filled fill(OrderRequest order) {
        List<List<Build>> builds = new ArrayList<>();
        long beside = 0;
        int missing = 0;
        for (OrderLine line : order.lines()) {
            List<Build> some = fill(line);
            missing += line.machines() - some.size();
            beside += OrderPrice.of(some, List.of(), catalog.labour(), line.request().licence()).total();
            builds.add(some);
        }
        return new Filled(builds, missing, beside + taken.entrySet().stream().mapToLong(lot -> new Pick(lot.getKey(), lot.getValue()).total()).sum());
    }

    /** Takes a line's machines from what is left, as many as there are. */
    private List<Build> fill(OrderLine line) {
        Request one = line.request().withMachines(1).withAlternatives(1, 0);
        List<Build> builds = new ArrayList<>();
        while (builds.size() < line.machines()) {
            Map<Lot, Lot> whole = new HashMap<>();
            Findings findings = search.on(catalog.withLots(rest(whole))).run(one, Deadline.never());
            if (findings.ranked().isEmpty()) {
                return builds;
            }
            builds.add(findings.ranked().get(0).machines().get(0));
            findings.ranked().get(0).picks().forEach(pick -> taken.merge(whole.get(pick.lot()), pick.quantity(), Integer::sum));
        }
        return builds;
    }

    /** Takes a line's machines where all can be had, else nothing. */
    boolean fillsWhole(OrderLine line) {
        Map<Lot, Integer> before = new HashMap<>(taken);
        boolean whole = fill(line).size() == line.machines();
        if (!whole) {
            taken.clear();
            taken.putAll(before);
        }
        return whole;
    }

    private Map<String, List<Lot>> rest(Map<Lot, Lot> whole) {
        Map<String, List<Lot>> rest = new HashMap<>();
        catalog.lots().forEach((sku, lots) -> {
            List<Lot> left = new ArrayList<>();
            for (Lot lot : lots) {
                int gone = taken.getOrDefault(lot, 0);
                if (gone < lot.available()) {
                    Lot some = gone == 0 ? lot : lot.with(lot.available() - gone, further(lot, gone));
                    whole.put(some, lot);
                    left.add(some);
                }
            }
            rest.put(sku, left);
        });
        return rest;
    }

    /** The prices that further units bring. */
    private static List<PriceBreak> further(Lot lot, int gone) {
        List<PriceBreak> prices = new ArrayList<>();
        PriceBreak now = lot.breakFor(gone + 1);
        prices.add(new PriceBreak(1, now.unitPrice(), now.unitCost()));
        lot.breaks().stream().filter(step -> step.minQuantity() > gone + 1)
                .forEach(step -> prices.add(new PriceBreak(step.minQuantity() - gone, step.unitPrice(), step.unitCost())));
        return prices;
    }
}
