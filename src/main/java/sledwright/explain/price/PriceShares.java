package sledwright.explain.price;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sledwright.domain.Catalog;
import sledwright.domain.Part;
import sledwright.domain.PartKind;
import sledwright.domain.Pick;
import sledwright.rules.Order;
import sledwright.words.Measure;
import sledwright.words.Sentence;

/** What an order spends on what. */
public final class PriceShares {

    private static final List<String> KINDS =
            List.of("platform", "enclosure", "processors", "cooling", "supply", "memory", "drives", "cards", "extras", "labour", "licence");

    private PriceShares() {
    }

    /** Kind -> minor units, in the order in which a machine is put together; their sum is the order's price. */
    static Map<String, Long> of(Order order) {
        Map<String, Long> shares = new LinkedHashMap<>();
        KINDS.forEach(kind -> shares.put(kind, 0L));
        for (Pick pick : order.picks()) {
            shares.merge(kind(order.catalog(), pick.sku()), pick.total(), Long::sum);
        }
        shares.put("labour", order.price().labour());
        shares.put("licence", order.price().licence());
        return shares;
    }

    /** Kind -> how many minor units more one order spends on it than another; kinds of no difference are left out. */
    public static Map<String, Long> difference(Order one, Order other) {
        Map<String, Long> others = of(other);
        Map<String, Long> more = of(one);
        more.replaceAll((kind, amount) -> amount - others.get(kind));
        more.values().removeIf(amount -> amount == 0);
        return more;
    }

    private static String kind(Catalog catalog, String sku) {
        Part part = catalog.part(sku).orElseThrow();
        return switch (PartKind.of(part)) {
            case PLATFORMS -> "platform";
            case SUPPLIES -> catalog.isOfEnclosuresAlone(sku) ? "enclosure" : "supply";
            case ENCLOSURES -> "enclosure";
            default -> PartKind.of(part).label();
        };
    }

    /** The differences as words: {@code processors +3.00, memory -1.50}. */
    public static Sentence words(Map<String, Long> differences, Catalog catalog) {
        List<Sentence> words = new ArrayList<>();
        differences.forEach((kind, amount) -> words.add(Sentence.of("%s %s%s", kind, amount > 0 ? "+" : "",
                new Measure(catalog.amount(amount)))));
        return Sentence.joined(", ", words);
    }
}
