package sledwright.generator.fitout;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import sledwright.domain.Catalog;
import sledwright.domain.Enclosure;
import sledwright.domain.EnclosureFrom;
import sledwright.domain.Housed;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Supply;
import sledwright.generator.draw.Shelf;
import sledwright.generator.draw.Watts;
import sledwright.metrics.CheapestDraw;
import sledwright.rules.enclosure.EnclosureBays;
import sledwright.rules.enclosure.EnclosurePower;

/**
 * The enclosures that are bought with sleds: the cheapest kind and supply for a load, as few of it as house all machines.
 *
 * @param wanted skus of enclosures and of supplies that only they take, all of which must be bought
 */
public record Housings(Catalog catalog, Request request, Shelf shelf, Set<String> wanted) {

    /** @param price all enclosures with their supplies, minor units */
    public record Priced(Housed housed, long price) {
    }

    /** Whether machines of the platform are bought with an enclosure. */
    public boolean needs(Platform platform) {
        return request.equipment().enclosure() == EnclosureFrom.NEW && catalog.isSled(platform);
    }

    /** The loads of a sled, in microwatts, up to which an enclosure houses some number of them; above the greatest none houses any. */
    public Set<Long> edges(Platform platform) {
        Set<Long> edges = new TreeSet<>();
        for (Enclosure enclosure : taking(platform)) {
            for (Supply supply : enclosure.supplies()) {
                double capacityW = EnclosurePower.capacityW(enclosure, supply, request.limit());
                for (int sleds = 1; sleds <= Math.min(enclosure.bays(), request.machines()) && capacityW >= 0; sleds++) {
                    edges.add(Watts.micro(capacityW) / sleds);
                }
            }
        }
        return edges;
    }

    /** Whether enclosures for heavier machines never cost less: they may where units are sold in packs or get cheaper by their number. */
    public boolean rises(Platform platform) {
        long last = 0;
        for (long edge : edges(platform)) {
            long price = cheapest(platform, edge).map(Priced::price).orElse(Long.MAX_VALUE);
            if (price < last) {
                return false;
            }
            last = price;
        }
        return true;
    }

    /** The cheapest enclosures for sleds of a load; empty where none houses them. */
    public Optional<Priced> cheapest(Platform platform, long microwatts) {
        return taking(platform).stream().flatMap(enclosure -> enclosure.supplies().stream()
                        .flatMap(supply -> housed(enclosure, supply, microwatts).stream()))
                .min(Comparator.comparingLong(Priced::price).thenComparingInt(one -> one.housed.parts()));
    }

    /** Enclosures of the kind and supply that feed the most, whatever is in stock; where even those feed no sled, one for each machine. */
    public Optional<Housed> strongest(Platform platform, long microwatts) {
        return taking(platform).stream().flatMap(enclosure -> enclosure.supplies().stream().map(supply ->
                        new Housed(enclosure, supply, count(Math.max(1, sleds(enclosure, supply, microwatts))))))
                .max(Comparator.comparingDouble(one -> EnclosurePower.capacityW(one.enclosure(), one.supply(), request.limit())));
    }

    private List<Enclosure> taking(Platform platform) {
        return catalog.enclosures().stream().filter(enclosure -> EnclosureBays.allows(enclosure, platform)).toList();
    }

    private Optional<Priced> housed(Enclosure enclosure, Supply supply, long microwatts) {
        if (!List.of(enclosure.sku(), supply.sku()).containsAll(wanted)) {
            return Optional.empty();
        }
        int sleds = sleds(enclosure, supply, microwatts);
        if (sleds == 0) {
            return Optional.empty();
        }
        int count = count(sleds);
        long price = shelf.price(enclosure.sku(), count);
        long supplies = shelf.price(supply.sku(), count * supply.count());
        return price >= CheapestDraw.IMPOSSIBLE || supplies >= CheapestDraw.IMPOSSIBLE ? Optional.empty()
                : Optional.of(new Priced(new Housed(enclosure, supply, count), price + supplies));
    }

    /** How many sleds of a load one enclosure houses and feeds. */
    private int sleds(Enclosure enclosure, Supply supply, long microwatts) {
        int sleds = 0;
        while (sleds < Math.min(enclosure.bays(), request.machines())
                && EnclosurePower.allows(enclosure, supply, request.limit(), Watts.of((sleds + 1) * microwatts))) {
            sleds++;
        }
        return sleds;
    }

    private int count(int sleds) {
        return (request.machines() + sleds - 1) / sleds;
    }
}
