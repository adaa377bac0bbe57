package sledwright.restock;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToLongFunction;
import sledwright.domain.Catalog;
import sledwright.domain.DemandClass;
import sledwright.domain.Request;
import sledwright.explain.price.HighestPrice;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;

/**
 * The highest price at which a unit of a part is as good as doing without it, over all classes: a machine with it then costs no more than
 * the cheapest without it, nor than it brings. One machine of an order stands for all, since each part has one price.
 *
 * @param prices what a unit of each other part costs, minor units
 */
record Ceilings(Shelves shelves, Choices choices, ToLongFunction<String> prices, Deadline deadline) {

    private static final long NONE = -1;

    /** By part; empty: no class gains from it even at a price of 0. A search serves one part at a time, so each worker has its own. */
    Map<String, OptionalLong> of(List<String> skus) {
        Map<String, OptionalLong> most = new ConcurrentHashMap<>();
        Catalog priced = shelves.priced(prices);
        Relevance relevance = new Relevance(shelves, choices, new Search(priced), deadline);
        Workers.share(skus.size(), worker -> {
            HighestPrice highest = new HighestPrice(priced, new Search(priced), deadline);
            return i -> most.put(skus.get(i), of(skus.get(i), relevance.classesOf(skus.get(i)), highest));
        });
        return most;
    }

    private OptionalLong of(String sku, List<Integer> classes, HighestPrice highest) {
        List<OptionalLong> levels = new ArrayList<>();
        long most = NONE;
        for (int k : classes) {
            OptionalLong level = highest.level(sku, machine(k), brings(k));
            levels.add(level);
            if (level.isPresent()) {
                most = Math.max(most, known(k, sku, level.getAsLong()));
            }
        }
        for (int i = 0; i < levels.size(); i++) {
            if (levels.get(i).isPresent()) {
                most = highest.beyond(most, sku, machine(classes.get(i)), levels.get(i).getAsLong());
            }
        }
        return most == NONE ? OptionalLong.empty() : OptionalLong.of(most);
    }

    private Request machine(int k) {
        return shelves.request().classes().get(k).request().withMachines(1);
    }

    /** What a machine brings beside being turned away. */
    private long brings(int k) {
        DemandClass asked = shelves.request().classes().get(k);
        return choices.revenue(k).orElseThrow() / asked.machines() + asked.loss();
    }

    /** The highest price by the builds that are known: where the search begins. */
    private long known(int k, String sku, long level) {
        if (shelves.request().classes().get(k).machines() > 1) {
            return NONE;
        }
        return choices.of(k).stream().filter(choice -> choice.needed().containsKey(sku)).mapToLong(choice -> {
            double others = choice.labour() + choice.parts(other -> other.equals(sku) ? 0 : prices.applyAsLong(other));
            return (long) Math.floor((level - others) / choice.needed().get(sku));
        }).max().orElse(NONE);
    }
}
