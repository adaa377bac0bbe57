package sledwright.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import sledwright.domain.Catalog;
import sledwright.domain.Limits;
import sledwright.domain.MemoryWish;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;
import sledwright.domain.Platform;
import sledwright.domain.Request;

/** Draws orders of a given number of machines for a shop: lines that each ask for what some machine on its own feet can be. */
final class DrawnOrder {

    private final Shop shop;
    private final Set<String> standing;

    DrawnOrder(Shop shop) {
        this.shop = shop;
        standing = shop.catalog().platforms().stream().filter(platform -> !shop.catalog().isSled(platform)).map(Platform::sku).collect(Collectors.toSet());
    }

    /**
     * The order of that seed, its machines spread evenly over lines that the stock is enough for. The shop's wish for one part number of
     * modules in a line is left out: each machine in turn could not keep it.
     */
    OrderRequest of(long seed, Catalog stock, int machines, int lines) {
        Greedy greedy = new Greedy(stock);
        List<OrderLine> drawn = new ArrayList<>();
        for (long next = seed * 1000; drawn.size() < lines; next++) {
            int share = machines / lines + (drawn.size() < machines % lines ? 1 : 0);
            Request asked = shop.request(shop.requests().request(next, "cheapest"));
            Set<String> platforms = asked.platforms().stream().filter(standing::contains).collect(Collectors.toSet());
            Limits limit = asked.limit();
            MemoryWish populated = new MemoryWish(asked.require().memory().populated().balanced(), false);
            Request request = asked.withPlatforms(platforms.isEmpty() ? standing : platforms).withRequire(asked.require().withPopulated(populated))
                    .withMachines(share).withOnHand(Map.of())
                    .withLimit(new Limits(OptionalLong.empty(), limit.powerW(), limit.leadDays(), limit.inletC(), limit.altitudeM(), limit.mainsV(), limit.conditions()));
            OrderLine line = new OrderLine("line " + (drawn.size() + 1), request, OrderLine.LEAST_PRIORITY, false);
            if (greedy.fillsWhole(line)) {
                drawn.add(line);
            }
        }
        return new OrderRequest("%d machines, seed %d".formatted(machines, seed), drawn, OptionalInt.empty(), 0, 0, Map.of());
    }
}
