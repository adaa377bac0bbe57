package sledwright.explain.steps;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalLong;
import sledwright.domain.Catalog;
import sledwright.domain.Lot.PriceBreak;
import sledwright.domain.Pick;
import sledwright.domain.Request;
import sledwright.explain.ask.UnsettledException;
import sledwright.explain.price.BreakEven;
import sledwright.explain.steps.Steps.End;
import sledwright.explain.steps.Steps.PriceRange;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.rules.Order;
import sledwright.rules.Rulebook;

/**
 * How far the price of one part may rise or fall, in all its lots alike, before the best build is no best one any more.
 *
 * <p>What an order costs is a straight line in that change, as steep as it buys units. So an order that beats the answer at some
 * change shows up to which change it does not; the search at that change finds the next, until it finds none.
 */
public final class PriceSteps {

    /** Changes by more are not looked at: amounts must stay countable. */
    private static final long MOST_MONEY = 100_000_000_000_000L;

    private final String sku;
    private final Request request;
    private final Order best;
    private final Standing standing;
    private final int units;
    private final Catalog catalog;
    private final Search search;
    private final Deadline deadline;

    /**
     * @param best the proved best order of the request, which buys some of the part
     */
    public PriceSteps(String sku, Request request, Order best, Catalog catalog, Search search, Deadline deadline) {
        this.sku = sku;
        this.request = request.withAlternatives(1, request.step());
        this.best = best;
        this.catalog = catalog;
        this.search = search;
        this.deadline = deadline;
        standing = Standing.of(best, request);
        units = BreakEven.bought(best, sku);
    }

    /** @throws UnsettledException when time runs out */
    public PriceRange find() {
        long most = mostFall();
        long fall = -reach(-most);
        long rise = reach(mostRise());
        boolean unlimited = rise == mostRise() && rise < affordableRise();
        long paid = best.picks().stream().filter(this::isPaid).mapToLong(Pick::total).sum();
        End above = unlimited ? End.NOTHING : rise == affordableRise() ? End.PRICE_LIMIT : End.OTHER_BUILD;
        long now = Math.round((double) paid / units);
        return new PriceRange(sku, units, amount(now), amount(now - fall), unlimited ? Optional.empty() : Optional.of(amount(now + rise)),
                fall == most ? End.FREE : End.OTHER_BUILD, above);
    }

    private boolean isPaid(Pick pick) {
        return pick.sku().equals(sku) && !pick.lot().onHand();
    }

    private BigDecimal amount(long minor) {
        return catalog.amount(minor);
    }

    /** The change at which the first lot that may serve gives a unit for nothing. */
    private long mostFall() {
        return catalog.lots(sku).stream()
                .filter(lot -> !lot.onHand() && lot.available() > 0 && Rulebook.accepts(lot, request.limit()))
                .flatMap(lot -> lot.breaks().stream()).mapToLong(PriceBreak::unitPrice).min().orElseThrow();
    }

    /** A change that outweighs whatever else orders differ in. */
    private long mostRise() {
        return Math.min(affordableRise(), MOST_MONEY / units);
    }

    private long affordableRise() {
        OptionalLong limit = request.limit().price();
        return limit.isPresent() ? (limit.getAsLong() - standing.price()) / units : Long.MAX_VALUE;
    }

    /** As much of a change as leaves no other order before the answer. */
    private long reach(long change) {
        long reached = change;
        while (reached != 0) {
            Standing own = standing.dearer(units, reached);
            Order order = at(reached);
            Standing other = Standing.of(order, request);
            if (!other.precedes(own)) {
                break;
            }
            int bought = BreakEven.bought(order, sku);
            reached = reached > 0 ? Math.max(0, levelRise(other.dearer(bought, -reached), bought))
                    : Math.min(0, -levelFall(other.dearer(bought, -reached), bought));
        }
        return reached;
    }

    /** The greatest rise at which an order that buys fewer units does not come first. */
    private long levelRise(Standing other, int bought) {
        return (long) Math.floor((gap(other) + Standing.ROUNDING) / (units - bought));
    }

    /** The greatest fall at which an order does not come first: it is too dear still, or no better. */
    private long levelFall(Standing other, int bought) {
        long tooDear = -1;
        if (request.limit().price().isPresent() && other.price() > request.limit().price().getAsLong()) {
            tooDear = Math.floorDiv(other.price() - request.limit().price().getAsLong() - 1, bought);
        }
        boolean byMoney = other.isMoney() || !other.beats(standing);
        long noBetter = byMoney && bought > units ? (long) Math.floor((gap(other) + Standing.ROUNDING) / (bought - units)) : -1;
        return Math.max(tooDear, noBetter);
    }

    /** By how much money the other comes behind the answer at today's prices. */
    private double gap(Standing other) {
        return other.isMoney() ? other.aim() - standing.aim() : other.price() - standing.price();
    }

    /** The best order with every lot of the part dearer by so much. */
    private Order at(long dearer) {
        if (deadline.isOver()) {
            throw new UnsettledException();
        }
        Catalog priced = catalog.withEachLot(lot -> lot.onHand() || !lot.sku().equals(sku) ? lot
                : lot.withPrices(price -> Math.max(0, price + dearer)));
        Findings found = search.on(priced).run(request, deadline);
        if (found.status() != Status.PROVED) {
            throw new UnsettledException(found.doubts());
        }
        return found.ranked().get(0);
    }
}
