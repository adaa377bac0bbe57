package sledwright.explain.change;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.function.Function;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.domain.Lot.PriceBreak;
import sledwright.domain.Part;
import sledwright.domain.Platform;

/**
 * What moved between two catalogues.
 *
 * @param parts    parts that came, went or are described otherwise, by sku
 * @param offers   price breaks that came, went or moved, by sku, lot and quantity
 * @param settings keys of catalog.yaml that say otherwise, but for the day of the prices
 */
public record CatalogDifference(List<PartMove> parts, List<OfferMove> offers, List<String> settings) {

    /** What happened to a part or an offer. */
    public enum Move {
        ADDED, REMOVED, CHANGED;

        public String label() {
            return name().toLowerCase(Locale.ROOT);
        }

        private static Move between(Object before, Object after) {
            return before == null ? ADDED : after == null ? REMOVED : CHANGED;
        }
    }

    /** A part; {@code description} is the newer one. */
    public record PartMove(Move move, String sku, String description) {
    }

    /** One side of an offer; money in minor units of the catalogue's currency. */
    public record Terms(String supplier, String condition, long unitPrice, OptionalLong unitCost, int available, int leadDays,
                        Optional<LocalDate> validUntil) {
    }

    /** A price break of a lot; a side is empty where the offer was not there. */
    public record OfferMove(Move move, String sku, String lot, int minQuantity, Optional<Terms> before, Optional<Terms> after) {

        /** By how much the price moved, percent of the old one; empty where there is no old or no new one, or the old one is 0. */
        public Optional<Double> pricePercent() {
            if (before.isEmpty() || after.isEmpty() || before.get().unitPrice() == 0) {
                return Optional.empty();
            }
            long old = before.get().unitPrice();
            return Optional.of(100.0 * (after.get().unitPrice() - old) / old);
        }
    }

    private record OfferKey(String sku, String lot, int minQuantity) {
    }

    public CatalogDifference {
        parts = List.copyOf(parts);
        offers = List.copyOf(offers);
        settings = List.copyOf(settings);
    }

    public static CatalogDifference between(Catalog before, Catalog after) {
        return new CatalogDifference(parts(before, after), offers(before, after), settings(before, after));
    }

    private static List<String> settings(Catalog before, Catalog after) {
        Map<String, Function<Catalog, Object>> all = new LinkedHashMap<>();
        all.put("name", Catalog::name);
        all.put("labour", Catalog::labour);
        all.put("throughput_factors", Catalog::throughputFactors);
        all.put("own_suppliers", catalog -> catalog.suppliers().own());
        all.put("supplier_aliases", catalog -> catalog.suppliers().names());
        all.put("house", Catalog::house);
        all.put("workloads", Catalog::workloads);
        all.put("document", Catalog::stationery);
        return all.entrySet().stream().filter(one -> !one.getValue().apply(before).equals(one.getValue().apply(after)))
                .map(Map.Entry::getKey).toList();
    }

    private static List<PartMove> parts(Catalog before, Catalog after) {
        Map<String, Part> all = new TreeMap<>();
        before.parts().forEach(part -> all.put(part.sku(), part));
        after.parts().forEach(part -> all.put(part.sku(), part));
        List<PartMove> moves = new ArrayList<>();
        for (Part part : all.values()) {
            Part old = before.part(part.sku()).orElse(null);
            Part now = after.part(part.sku()).orElse(null);
            if (old == null || now == null || !facts(old).equals(facts(now))) {
                moves.add(new PartMove(Move.between(old, now), part.sku(), part.description()));
            }
        }
        return moves;
    }

    /** What a part is; boards are distinguished by their slots. */
    private static List<Object> facts(Part part) {
        return part instanceof Platform platform
                ? List.of(platform.name(), platform.processors(), platform.memory(), platform.board().slots(),
                platform.cooling(), platform.thermal(), platform.power(), platform.board().fillSide(), platform.expansion())
                : List.of(part);
    }

    private static List<OfferMove> offers(Catalog before, Catalog after) {
        Map<OfferKey, Terms> old = terms(before);
        Map<OfferKey, Terms> now = terms(after);
        Map<OfferKey, Terms> all = new LinkedHashMap<>(old);
        all.putAll(now);
        List<OfferMove> moves = new ArrayList<>();
        for (OfferKey key : all.keySet()) {
            Terms was = old.get(key);
            Terms is = now.get(key);
            if (!Objects.equals(was, is)) {
                moves.add(new OfferMove(Move.between(was, is), key.sku(), key.lot(), key.minQuantity(), Optional.ofNullable(was),
                        Optional.ofNullable(is)));
            }
        }
        moves.sort(Comparator.comparing(OfferMove::sku).thenComparing(OfferMove::lot).thenComparing(OfferMove::minQuantity));
        return moves;
    }

    private static Map<OfferKey, Terms> terms(Catalog catalog) {
        Map<OfferKey, Terms> terms = new LinkedHashMap<>();
        catalog.lots().values().stream().flatMap(List::stream).forEach(lot -> lot.breaks().forEach(each ->
                terms.put(new OfferKey(lot.sku(), lot.lot(), each.minQuantity()), terms(lot, each))));
        return terms;
    }

    private static Terms terms(Lot lot, PriceBreak each) {
        return new Terms(lot.supplier(), lot.condition().label(), each.unitPrice(), each.unitCost(), lot.available(),
                lot.leadDays(), lot.stock().lastDay());
    }
}
