package sledwright.planner.order.market;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToLongFunction;
import java.util.stream.Collectors;
import sledwright.domain.Catalog;
import sledwright.domain.Platform;
import sledwright.domain.Request;

/** The ways in which machines of a line can stand: on their own feet, or as sleds in each kind of enclosure that suits. */
public final class Variants {

    private final Catalog catalog;
    private final List<List<Variant>> byLine = new ArrayList<>();

    /**
     * @param bay       null: on their own feet
     * @param platforms that stand so; at least one
     */
    public record Variant(Bay bay, Set<String> platforms) {
    }

    public Variants(Market market) {
        catalog = market.catalog();
        Map<List<Object>, List<Variant>> known = new HashMap<>();
        for (int line = 0; line < market.lines().size(); line++) {
            int asked = line;
            List<Bay> suiting = market.bays().stream().filter(bay -> market.suits(bay, asked)).toList();
            byLine.add(known.computeIfAbsent(List.of(market.line(line).request().platforms(), suiting, market.buysEnclosures(line)),
                    key -> variants(market, asked, suiting)));
        }
    }

    private List<Variant> variants(Market market, int line, List<Bay> suiting) {
        Request request = market.line(line).request();
        Set<String> asked = catalog.platforms().stream().map(Platform::sku)
                .filter(sku -> request.platforms().isEmpty() || request.platforms().contains(sku)).collect(Collectors.toSet());
        List<Variant> variants = new ArrayList<>();
        add(variants, null, asked.stream().filter(sku -> market.standsAlone(line, sku)).collect(Collectors.toSet()));
        suiting.forEach(bay -> add(variants, bay, asked.stream().filter(bay.enclosure().takes()::contains).collect(Collectors.toSet())));
        return List.copyOf(variants);
    }

    private static void add(List<Variant> variants, Bay bay, Set<String> platforms) {
        if (!platforms.isEmpty()) {
            variants.add(new Variant(bay, platforms));
        }
    }

    /** The platforms that a line's machines may be of. */
    public List<Platform> platforms(int line) {
        return byLine.get(line).stream().flatMap(variant -> variant.platforms().stream()).distinct()
                .map(sku -> catalog.platform(sku).orElseThrow()).toList();
    }

    /** Those in a kind of enclosure. */
    public List<Variant> of(int line, Bay bay) {
        return byLine.get(line).stream().filter(variant -> bay.equals(variant.bay())).toList();
    }

    /** Those that no other matches: in which places and watts take less, as many platforms stand and as heavy ones are carried. */
    public List<Variant> worthwhile(int line, ToLongFunction<Bay> place, ToLongFunction<Bay> watt) {
        List<Variant> kept = new ArrayList<>();
        for (Variant variant : byLine.get(line)) {
            if (variant.bay == null) {
                kept.add(variant);
            } else if (kept.stream().noneMatch(other -> matches(other, variant, place, watt))) {
                kept.removeIf(other -> matches(variant, other, place, watt));
                kept.add(variant);
            }
        }
        return kept;
    }

    private static boolean matches(Variant one, Variant other, ToLongFunction<Bay> place, ToLongFunction<Bay> watt) {
        return one.bay != null && other.bay != null && one.platforms.containsAll(other.platforms)
                && one.bay.capacity() >= other.bay.capacity()
                && place.applyAsLong(one.bay) <= place.applyAsLong(other.bay) && watt.applyAsLong(one.bay) <= watt.applyAsLong(other.bay);
    }
}
