package sledwright.planner.order;

import java.util.HashSet;
import java.util.Set;
import sledwright.domain.MemoryModule;
import sledwright.domain.Requirements;
import sledwright.planner.order.market.Market;
import sledwright.planner.order.relax.Restrictions;

/** What holds of every order that lacks no machine. */
final class WholeOrders {

    private WholeOrders() {
    }

    /** A line whose modules are all of one part number takes none of which there are too few for all its machines. */
    static Restrictions all(Market market) {
        Restrictions all = Restrictions.NONE;
        for (int line = 0; line < market.lines().size(); line++) {
            Requirements require = market.line(line).request().require();
            if (require.populated().onePart()) {
                all = all.withBarred(line, tooFew(market, line, require.memoryGb()));
            }
        }
        return all;
    }

    private static Set<Integer> tooFew(Market market, int line, double usableGb) {
        Set<Integer> few = new HashSet<>();
        for (MemoryModule module : market.catalog().modules()) {
            int part = market.index().get(module.sku());
            // Machines have a module at least, and no more usable memory than their modules hold.
            double least = market.line(line).machines() * Math.max(1, Math.ceil(usableGb / module.capacityGb()));
            if (market.available(part, market.poolOf(line)) < least) {
                few.add(part);
            }
        }
        return few;
    }
}
