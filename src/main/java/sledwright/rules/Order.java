package sledwright.rules;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import sledwright.domain.Build;
import sledwright.domain.Catalog;
import sledwright.domain.FilledEnclosure;
import sledwright.domain.Housed;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.metrics.EnergyCost;
import sledwright.metrics.Figures;
import sledwright.metrics.OrderPrice;
import sledwright.words.Sum;

/**
 * Several machines and the lots that their parts come from.
 *
 * @param price what the order costs as picked
 */
public record Order(List<Build> machines, List<Pick> picks, Request request, Catalog catalog, OrderPrice price) {

    public Order {
        machines = List.copyOf(machines);
        picks = List.copyOf(picks);
    }

    /** Machines whose parts are drawn as picked, priced. */
    public static Order of(List<Build> machines, List<Pick> picks, Request request, Catalog catalog) {
        return new Order(machines, picks, request, catalog,
                OrderPrice.of(machines, picks, catalog.labour(), request.licence()));
    }

    /** One machine of each kind; the same object often stands for many machines, and comparing all its parts takes longer. */
    public List<Build> kinds() {
        Set<Build> seen = Collections.newSetFromMap(new IdentityHashMap<>());
        List<Build> apart = machines.stream().filter(seen::add).toList();
        return apart.size() == 1 ? apart : apart.stream().distinct().toList();
    }

    /** What each machine reaches. */
    public Figures figures() {
        return Figures.ofEach(kinds().stream().map(build -> Figures.of(build, request, catalog.throughputFactors())).toList());
    }

    /** Sku -> units that the machines and their enclosures take together. */
    public SortedMap<String, Integer> needed() {
        SortedMap<String, Integer> needed = new TreeMap<>();
        machines.forEach(build -> build.partCounts().forEach((sku, units) -> needed.merge(sku, units, Integer::sum)));
        housed().ifPresent(housed -> housed.partCounts().forEach((sku, units) -> needed.merge(sku, units, Integer::sum)));
        return needed;
    }

    /** The enclosures that are bought for the machines; empty: none. */
    public Optional<Housed> housed() {
        return machines.stream().findFirst().flatMap(build -> build.fitout().housed());
    }

    /** Each of them with its sleds: as few as may be in each, the heaviest first. */
    public List<Housing> housings() {
        return housed().map(housed -> {
            int each = (machines.size() + housed.count() - 1) / housed.count();
            return IntStream.range(0, housed.count()).mapToObj(one -> machines.subList(Math.min(one * each, machines.size()),
                    Math.min((one + 1) * each, machines.size()))).map(sleds ->
                    new Housing(new FilledEnclosure(housed.enclosure(), housed.supply(), sleds), request)).toList();
        }).orElse(List.of());
    }

    /** What the electricity of all machines costs, each being as heavy as the heaviest; 0 where the request counts none; minor units. */
    public long energy() {
        return request.energy().map(counted -> EnergyCost.of(machines.size(), figures().loadW(), machines.get(0).supply(), request.limit(),
                counted)).orElse(0L);
    }

    /** The price and the electricity, minor units. */
    public long total() {
        return price.total() + energy();
    }

    /** An amount of minor units, with the currency. */
    public Sum words(long minor) {
        return new Sum(catalog.amount(minor), catalog.currency().getCurrencyCode());
    }
}
