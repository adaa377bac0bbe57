package sledwright.oracle;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.SplittableRandom;
import java.util.TreeMap;
import sledwright.domain.Catalog;
import sledwright.domain.DeliverBy;
import sledwright.domain.Limits;
import sledwright.domain.Lot;
import sledwright.domain.OrderLine;
import sledwright.domain.OrderRequest;

/**
 * Lots of random shops that sell in packs: from two, three, four or six up, and so much less for each from some number on that more units
 * can cost less than fewer. Days that lines of an order wait are written as a last day, too.
 */
final class Packs {

    private static final List<Integer> SIZES = List.of(1, 1, 2, 2, 3, 4, 6);

    /** Whether all random shops sell in packs; for longer runs of whatever tests them. */
    private static final boolean ALL = Boolean.getBoolean("sledwright.packs");

    private final SplittableRandom random;

    private Packs(long seed) {
        random = new SplittableRandom(seed * 49_979_687 + 17);
    }

    static RandomCase perhaps(RandomCase that) {
        return ALL ? in(that) : that;
    }

    static RandomCase in(RandomCase that) {
        Packs packs = new Packs(that.seed());
        Catalog catalog = that.catalog();
        return new RandomCase(that.seed(), catalog.withLots(packs.packed(catalog.lots())), that.request());
    }

    static RandomOrder in(RandomOrder that) {
        Packs packs = new Packs(that.seed());
        OrderRequest order = that.order();
        List<OrderLine> lines = order.lines().stream().map(line -> packs.dated(line, that.catalog().pricedOn())).toList();
        return new RandomOrder(that.seed(), that.catalog().withLots(packs.packed(that.catalog().lots())), order.withLines(lines));
    }

    private Map<String, List<Lot>> packed(Map<String, List<Lot>> lots) {
        Map<String, List<Lot>> packed = new LinkedHashMap<>();
        // In the order of their skus: maps of catalogues have none that is always the same.
        new TreeMap<>(lots).forEach((sku, all) -> packed.put(sku, all.stream()
                .map(lot -> lot.onHand() || random.nextInt(2) == 0 ? lot : packed(lot)).toList()));
        return packed;
    }

    private Lot packed(Lot lot) {
        long price = lot.breaks().get(0).unitPrice();
        int from = SIZES.get(random.nextInt(SIZES.size()));
        List<Lot.PriceBreak> breaks = new ArrayList<>();
        int last = from;
        for (int i = random.nextInt(3); i >= 0; i--) {
            breaks.add(new Lot.PriceBreak(from, price, OptionalLong.empty()));
            last = from;
            from += random.nextInt(1, 4);
            // Two at 40 of a hundred each cost less than one.
            price = price * (random.nextInt(6) == 0 ? random.nextInt(100, 140) : random.nextInt(25, 90)) / 100;
        }
        int units = random.nextInt(4) == 0 ? lot.available() : Math.max(lot.available(), last);
        return lot.with(units, breaks);
    }

    private OrderLine dated(OrderLine line, LocalDate today) {
        Limits limit = line.request().limit();
        if (limit.leadDays().isEmpty() || random.nextBoolean()) {
            return line;
        }
        int days = limit.leadDays().getAsInt();
        Limits dated = limit.withLeadDays(random.nextBoolean() ? OptionalInt.empty() : OptionalInt.of(random.nextInt(6)))
                .withBy(Optional.of(new DeliverBy(today.plusDays(days), random.nextInt(12) == 0 ? -1 : days)));
        return new OrderLine(line.name(), line.request().withLimit(dated), line.priority(), line.uniform());
    }
}
