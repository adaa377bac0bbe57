package sledwright.explain;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import sledwright.domain.Board;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.domain.Objective;
import sledwright.domain.Platform;
import sledwright.domain.Request;
import sledwright.domain.Supply;
import sledwright.generator.Deadline;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.rules.Order;

/** Answers what could be had on other terms, by the exact search, and remembers it. */
final class Oracle {

    private final Catalog catalog;
    private final Search search;
    private final Deadline deadline;
    private final Map<Terms, Optional<Order>> known = new HashMap<>();
    private Search plenty;

    Oracle(Catalog catalog, Search search, Deadline deadline) {
        this.catalog = catalog;
        this.search = search;
        this.deadline = deadline;
    }

    Catalog catalog() {
        return catalog;
    }

    /**
     * The cheapest order on these terms; where fewer machines will do, that of a number that can be had.
     *
     * @throws UnsettledException when time runs out
     */
    Optional<Order> cheapest(Terms terms) {
        return best(terms, Objective.CHEAPEST);
    }

    /** The best order by an objective on these terms. */
    Optional<Order> best(Terms terms, Objective objective) {
        Terms asked = terms.with(terms.request().withObjective(objective).withAlternatives(1, Request.DEFAULT_STEP));
        Optional<Order> before = known.get(asked);
        if (before == null) {
            before = asked.everyMachine() ? fromUnlimited(asked).orElseGet(() -> search(asked)) : ofAnyNumber(asked);
            known.put(asked, before);
        }
        return before;
    }

    /** What the cheapest order without a limit on the price, where that is known, tells of the cheapest within the limit. */
    private Optional<Optional<Order>> fromUnlimited(Terms asked) {
        OptionalLong most = asked.request().limit().price();
        if (most.isEmpty() || asked.request().objective() != Objective.CHEAPEST) {
            return Optional.empty();
        }
        Terms unlimited = asked.with(Changes.price(asked.request().limit(), OptionalLong.empty()));
        return Optional.ofNullable(known.get(unlimited)).map(order -> order.filter(found -> found.price().total() <= most.getAsLong()));
    }

    /** One machine is the easiest to have, and all of them come next; stock that is sold in packs can make it another number. */
    private Optional<Order> ofAnyNumber(Terms terms) {
        int all = terms.request().machines();
        return IntStream.concat(IntStream.of(1, all), IntStream.range(2, all)).distinct()
                .mapToObj(count -> best(terms.withMachines(count), terms.request().objective())).flatMap(Optional::stream).findFirst();
    }

    private Optional<Order> search(Terms terms) {
        if (deadline.isOver()) {
            throw new UnsettledException();
        }
        Findings findings = (terms.stockCounts() ? search : plenty(terms.request().machines())).run(terms.request(), deadline);
        if (findings.status() == Status.BEST_FOUND) {
            throw new UnsettledException();
        }
        return findings.ranked().stream().findFirst();
    }

    private Search plenty(int machines) {
        if (plenty == null) {
            int most = machines * catalog.platforms().stream().mapToInt(Oracle::mostOfAnyPart).max().orElse(1);
            Map<String, List<Lot>> lots = new HashMap<>();
            catalog.lots().forEach((sku, offers) -> lots.put(sku, offers.stream().map(lot -> lot.onHand() ? lot : new Lot(lot.sku(), lot.lot(), lot.supplier(),
                    lot.condition(), Math.max(most, lot.available()), lot.leadDays(), lot.breaks(), lot.onHand())).toList()));
            plenty = search.on(catalog.withLots(lots));
        }
        return plenty;
    }

    /** No machine on a platform takes more units of one part. */
    private static int mostOfAnyPart(Platform platform) {
        Board board = platform.board();
        int supplies = platform.power().supplies().stream().mapToInt(Supply::count).max().orElse(0);
        return Math.max(supplies, board.sockets() * board.channels() * board.slotsPerChannel());
    }
}
