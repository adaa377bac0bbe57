package sledwright.rules.stock;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import sledwright.domain.Lot;
import sledwright.domain.Pick;
import sledwright.rules.Order;
import sledwright.rules.OrderRule;
import sledwright.rules.Violation;
import sledwright.words.Numbers;

/** {@value #ID}: over the whole order no lot gives more units than it has, and every unit comes from a lot. */
public final class InStock extends OrderRule {

    public static final String ID = "in-stock";

    /** The circumstance that lots hold no more units than they do. */
    public static final String STOCK = "stock";

    public InStock() {
        super(ID, "Over the whole order no lot gives more units than it has, and every unit comes from a lot.", STOCK);
    }

    public static boolean allows(Lot lot, int quantity) {
        return lot.sells(quantity);
    }

    @Override
    public boolean isOfAllLines() {
        return true;
    }

    @Override
    public List<Violation> judge(Order order) {
        List<Violation> broken = new ArrayList<>();
        order.picks().stream().collect(Collectors.groupingBy(Pick::lot, Collectors.summingInt(Pick::quantity))).entrySet().stream()
                .filter(taken -> !allows(taken.getKey(), taken.getValue()))
                .map(taken -> overdrawn(taken.getKey(), taken.getValue()))
                .sorted(java.util.Comparator.comparing(Violation::message)).forEach(broken::add);
        Map<String, Integer> drawn = order.picks().stream()
                .collect(Collectors.groupingBy(Pick::sku, TreeMap::new, Collectors.summingInt(Pick::quantity)));
        order.needed().forEach((sku, units) -> {
            int given = drawn.getOrDefault(sku, 0);
            if (given < units) {
                broken.add(broken(sku, "The order needs %s of %s; the lots give %s.", Numbers.counted(units, "unit"), sku, given));
            }
        });
        return broken;
    }

    private Violation overdrawn(Lot lot, int quantity) {
        return broken(lot.sku(), "Lot %s of %s gives %s; it sells %s to %s.", lot.lot(), lot.sku(),
                Numbers.counted(quantity, "unit"), lot.minQuantity(), lot.available());
    }
}
