package sledwright.explain.ask;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import java.util.stream.IntStream;
import sledwright.domain.BayGroup;
import sledwright.domain.Board;
import sledwright.domain.Catalog;
import sledwright.domain.Lot.PriceBreak;
import sledwright.domain.Objective;
import sledwright.domain.Platform;
import sledwright.domain.Shortlist;
import sledwright.domain.Supply;
import sledwright.generator.Exact;
import sledwright.generator.Existence;
import sledwright.generator.Findings;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.rules.Order;

/** Answers what is possible on other terms, by the exact search, and remembers it. */
public final class Oracle {

    /** Units of one extra that a request may ask for besides. */
    private static final int MOST_EXTRAS = 1000;

    /** Plenty for this many machines, or this many times as many, and so on. */
    private static final int MACHINES = 32;

    /** What a stock is changed to. */
    private enum Change { PLENTY, ONE_BY_ONE }

    /** Any number of units, for so many machines at least. */
    private record Plenty(Change change, int machines) {
    }

    private final Catalog catalog;
    private final Exact search;
    private final Deadline deadline;
    private final Map<WhatIf, Optional<Order>> known = new HashMap<>();
    private final Map<WhatIf, Optional<Order>> knownSome = new HashMap<>();

    public Oracle(Catalog catalog, Exact search, Deadline deadline) {
        this.catalog = catalog;
        this.search = search;
        this.deadline = deadline;
    }

    public Catalog catalog() {
        return catalog;
    }

    /**
     * The cheapest order on these terms; where fewer machines are enough, that of a number that is possible.
     *
     * @throws UnsettledException when time runs out, or nothing can be proved
     */
    public Optional<Order> cheapest(WhatIf terms) {
        return best(terms, Objective.CHEAPEST);
    }

    /** Whether anything is possible on these terms. */
    public boolean isPossible(WhatIf terms) {
        return some(terms).isPresent();
    }

    /** Some order on these terms, which need not be the cheapest. */
    public Optional<Order> some(WhatIf terms) {
        WhatIf asked = asked(terms, Objective.CHEAPEST);
        Optional<Order> before = known.getOrDefault(asked, knownSome.get(asked));
        if (before == null) {
            before = asked.everyMachine() ? fromUnlimited(asked).orElseGet(() -> isAny(stock(asked), asked))
                    : ofAnyNumber(asked, this::some);
            knownSome.put(asked, before);
        }
        return before;
    }

    private static WhatIf asked(WhatIf terms, Objective objective) {
        return terms.with(terms.request().withObjective(objective).withAlternatives(1, Shortlist.PLAIN.step()));
    }

    /** The best order by an objective on these terms. */
    public Optional<Order> best(WhatIf terms, Objective objective) {
        WhatIf asked = asked(terms, objective);
        Optional<Order> before = known.get(asked);
        if (before == null) {
            before = asked.everyMachine() ? fromUnlimited(asked).orElseGet(() -> run(stock(asked), asked))
                    : ofAnyNumber(asked, one -> best(one, objective));
            known.put(asked, before);
        }
        return before;
    }

    /** What the cheapest order without a limit on the price, where that is known, says of the cheapest within the limit. */
    private Optional<Optional<Order>> fromUnlimited(WhatIf asked) {
        OptionalLong most = asked.request().limit().price();
        if (most.isEmpty() || asked.request().objective() != Objective.CHEAPEST) {
            return Optional.empty();
        }
        WhatIf unlimited = asked.with(asked.request().limit().withPrice(OptionalLong.empty()));
        return Optional.ofNullable(known.get(unlimited)).map(order -> order.filter(found -> found.price().total() <= most.getAsLong()));
    }

    /** One machine is the easiest to have, and all of them come next; stock that is sold in packs can make it another number. */
    private Optional<Order> ofAnyNumber(WhatIf terms, Function<WhatIf, Optional<Order>> search) {
        int all = terms.request().machines();
        Optional<Order> one = search.apply(terms.withMachines(1));
        Optional<Order> found = one.isPresent() || all == 1 ? one : search.apply(terms.withMachines(all));
        if (found.isPresent() || all < 3 || !canBeHadOneByOne(terms.withMachines(1))) {
            return found;
        }
        return IntStream.range(2, all).mapToObj(count -> search.apply(terms.withMachines(count))).flatMap(Optional::stream).findFirst();
    }

    /** Whether the machines were possible if every lot sold units one by one at its lowest price; where not even that, nor can more. */
    public boolean canBeHadOneByOne(WhatIf terms) {
        int machines = terms.request().machines();
        Exact by = terms.stockCounts() ? search.on(Change.ONE_BY_ONE, () -> unpacked(catalog))
                : search.on(new Plenty(Change.ONE_BY_ONE, rounded(machines)), () -> unpacked(plentiful(rounded(machines))));
        return isAny(by, terms).isPresent();
    }

    private Exact stock(WhatIf terms) {
        int most = rounded(terms.request().machines());
        return terms.stockCounts() ? search : search.on(new Plenty(Change.PLENTY, most), () -> plentiful(most));
    }

    private Optional<Order> isAny(Exact by, WhatIf terms) {
        if (terms.held().isEmpty() && terms.hasPlatforms() && !deadline.isOver()) {
            Existence found = by.any(terms.narrowed(), deadline);
            if (found.order().isPresent() || found.settled()) {
                return found.order();
            }
        }
        return run(by, terms);
    }

    private Optional<Order> run(Exact by, WhatIf terms) {
        if (deadline.isOver()) {
            throw new UnsettledException();
        }
        if (!terms.hasPlatforms()) {
            return Optional.empty();
        }
        Findings findings = terms.held().isPresent() ? by.runHolding(terms.held().get(), terms.narrowed(), deadline)
                : by.run(terms.narrowed(), deadline);
        if (findings.status() == Status.BEST_FOUND) {
            throw new UnsettledException(findings.doubts());
        }
        return findings.ranked().stream().findFirst();
    }

    /** A number of machines for which there is plenty where there is for a given one; few numbers, so that each serves many questions. */
    private static int rounded(int machines) {
        int most = MACHINES;
        while (most < machines) {
            most *= MACHINES;
        }
        return most;
    }

    private Catalog plentiful(int machines) {
        int ofMachine = catalog.platforms().stream().mapToInt(Oracle::mostOfAnyPart).max().orElse(1);
        int ofEnclosure = catalog.enclosures().stream().flatMap(enclosure ->
                enclosure.supplies().stream()).mapToInt(Supply::count).max().orElse(1);
        int most = machines * (Math.max(ofMachine, ofEnclosure) + MOST_EXTRAS);
        return catalog.withEachLot(lot -> lot.onHand() ? lot : lot.with(Math.max(most, lot.available()), lot.breaks()));
    }

    private static Catalog unpacked(Catalog offered) {
        return offered.withEachLot(lot -> lot.with(lot.available(), List.of(new PriceBreak(1,
                lot.breaks().stream().mapToLong(PriceBreak::unitPrice).min().orElseThrow(), OptionalLong.empty()))));
    }

    /** No machine on a platform takes more units of one part. */
    private static int mostOfAnyPart(Platform platform) {
        Board board = platform.board();
        int supplies = platform.power().supplies().stream().mapToInt(Supply::count).max().orElse(0);
        int drives = platform.expansion().bays().stream().mapToInt(BayGroup::count).sum();
        int needs = platform.expansion().needs().stream().flatMap(need -> need.parts().values().stream()).mapToInt(Integer::intValue).sum();
        return IntStream.of(supplies, board.sockets() * board.channels() * board.slotsPerChannel(), drives,
                platform.expansion().slots().size() + board.sockets() * needs).max().orElseThrow();
    }
}
