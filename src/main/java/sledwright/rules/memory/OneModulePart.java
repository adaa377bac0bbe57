package sledwright.rules.memory;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sledwright.domain.MemoryModule;
import sledwright.domain.MemoryWish;
import sledwright.rules.Order;
import sledwright.rules.OrderRule;
import sledwright.rules.Violation;

/** {@value #ID}: all modules of all machines that are sold together are of one part number, where that is asked for. */
public final class OneModulePart extends OrderRule {

    public static final String ID = "one-module-part";
    public static final String KEY = "require.one_module_part";

    public OneModulePart() {
        super(ID, "All memory modules of all machines are of one part number where the request or the shop wants it so.", KEY);
    }

    /** Whether modules of that many part numbers may stand in machines that are sold together. */
    public static boolean allows(MemoryWish wish, int partNumbers) {
        return !wish.onePart() || partNumbers <= 1;
    }

    @Override
    public List<Violation> judge(Order order) {
        Set<String> skus = order.kinds().stream().flatMap(build -> build.modules().values().stream()).map(MemoryModule::sku)
                .collect(Collectors.toCollection(TreeSet::new));
        return allows(order.request().require().populated(), skus.size()) ? List.of()
                : List.of(broken("", "The memory modules are of %s part numbers (%s); all are to be of 1.", skus.size(),
                        String.join(", ", skus)));
    }
}
