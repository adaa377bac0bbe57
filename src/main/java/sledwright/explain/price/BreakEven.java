package sledwright.explain.price;

import java.util.Optional;
import java.util.OptionalLong;
import sledwright.domain.Catalog;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.explain.ask.UnsettledException;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.metrics.Quantity;
import sledwright.rules.Order;

/**
 * The unit price at which a part would be in a best build, if every lot of it sold at that one price.
 *
 * <p>Among all builds with the part the least aim is a minimum of straight lines in that price. From the build that wins at one price
 * follows the price at which it comes level with the best, or leaves the limit of the price; only another build can win beyond that
 * (Dinkelbach's method for ratios).
 *
 * @param best what was found; its best order holds none of the part
 */
public record BreakEven(String sku, Findings best, Catalog catalog, Search search, Deadline deadline) {

    private static final double ROUNDING = 1e-4;

    /**
     * What is known of the price.
     *
     * @param unitPrice the greatest price in minor units at which a build with the part is as good as the best; empty: not even at 0
     * @param order     the best with the part at that price, or for nothing
     */
    public record Found(OptionalLong unitPrice, Order order) {
    }

    /**
     * The price; empty where a build with the part is as good as the best whatever it costs.
     *
     * @throws UnsettledException when time runs out
     */
    public Optional<Found> find() {
        Findings free = at(0).orElseThrow();
        if (!isAsGood(free)) {
            return Optional.of(new Found(OptionalLong.empty(), free.ranked().get(0)));
        }
        return isMoney() ? byLines(free) : byHalves(free);
    }

    private boolean isMoney() {
        return best.request().objective().isMoney();
    }

    private Optional<Found> byLines(Findings free) {
        Findings level = free;
        long price = 0;
        while (true) {
            Order order = level.ranked().get(0);
            int units = bought(order, sku);
            if (units == 0) {
                return Optional.empty();
            }
            price += Math.min((long) Math.floor((best.best() - level.best() + ROUNDING) / units), affordableRise(order, units));
            Optional<Findings> beyond = at(price + 1).filter(this::isAsGood);
            if (beyond.isEmpty()) {
                return Optional.of(new Found(OptionalLong.of(price), at(price).orElseThrow().ranked().get(0)));
            }
            level = beyond.get();
            price++;
        }
    }

    /** By how much each unit may rise before the order leaves the limit of the price. */
    private long affordableRise(Order order, int units) {
        OptionalLong limit = best.request().limit().price();
        return limit.isPresent() ? (limit.getAsLong() - order.price().total()) / units : Long.MAX_VALUE;
    }

    private Optional<Found> byHalves(Findings free) {
        long good = 0;
        Findings had = free;
        // A single unit at more than all money would not be bought.
        long bad = Math.max(best.ranked().get(0).price().total(), best.request().limit().price().orElse(0)) + 1;
        if (at(bad).filter(this::isAsGood).isPresent()) {
            return Optional.empty();
        }
        while (good + 1 < bad) {
            long middle = good + (bad - good) / 2;
            Optional<Findings> found = at(middle).filter(this::isAsGood);
            if (found.isPresent()) {
                good = middle;
                had = found.get();
            } else {
                bad = middle;
            }
        }
        return Optional.of(new Found(OptionalLong.of(good), had.ranked().get(0)));
    }

    /** Units of a part that are paid for. */
    public static int bought(Order order, String sku) {
        return order.picks().stream().filter(pick -> pick.sku().equals(sku) && !pick.lot().onHand()).mapToInt(Pick::quantity).sum();
    }

    private boolean isAsGood(Findings with) {
        if (isMoney()) {
            return with.best() <= best.best() + ROUNDING;
        }
        return with.best() > best.best() && !Quantity.within(with.best(), best.best())
                || Quantity.reaches(with.best(), best.best())
                && with.ranked().get(0).price().total() <= best.ranked().get(0).price().total();
    }

    /** The best with the part at a unit price; empty where a limit bars it. */
    private Optional<Findings> at(long unitPrice) {
        if (deadline.isOver()) {
            throw new UnsettledException();
        }
        Request request = best.request().withAlternatives(1, best.request().step());
        Findings found = search.on(catalog.withPrice(sku, unitPrice)).runHolding(sku, request, deadline);
        if (found.status() == Status.BEST_FOUND) {
            throw new UnsettledException(found.doubts());
        }
        return found.status() == Status.IMPOSSIBLE ? Optional.empty() : Optional.of(found);
    }
}
