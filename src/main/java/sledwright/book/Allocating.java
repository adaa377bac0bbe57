package sledwright.book;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import sledwright.book.Allocated.Drawn;
import sledwright.book.Allocated.Fate;
import sledwright.book.store.Database;
import sledwright.catalog.CatalogReader;
import sledwright.desk.Progress;
import sledwright.desk.Terms;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.explain.Explainer;
import sledwright.explain.conflict.Relaxation;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.time.Deadline;
import sledwright.input.Fault;
import sledwright.input.FaultsException;
import sledwright.planner.allot.AllotmentChange;
import sledwright.planner.allot.AllotmentOutcome;
import sledwright.planner.allot.Allotter;
import sledwright.planner.allot.Filling;
import sledwright.planner.allot.LotName;
import sledwright.planner.allot.Promise;

/** Draws everything that is promised anew from today's stock. Nothing is written; what happens in the book meanwhile is taken in. */
final class Allocating {

    private static final double MILLIS = 1e3;

    private final Database database;
    private final Signature by;
    private final Terms terms;
    private final Catalog shop;
    private final String digest;
    private BookStand stand;

    /** Quotes that are given something here: theirs is not taken off the shelf before. */
    private final Set<QuoteNumber> drawn = new HashSet<>();

    Allocating(Database database, Path folder, Signature by, Terms terms) {
        this.database = database;
        this.by = by;
        this.terms = terms;
        digest = CatalogDigest.of(folder);
        shop = CatalogReader.read(folder).withToday(by.today());
    }

    Allocated make() {
        long start = System.currentTimeMillis();
        Deadline deadline = Deadline.in(terms.time()).or(terms.cancelled());
        List<Promised> all = database.read(sql -> {
            stand = BookStand.read(sql, by.today());
            return Promised.all(sql, by.today());
        });
        List<Promise> promises = new ArrayList<>();
        Map<String, Promised> byName = new LinkedHashMap<>();
        Map<String, List<String>> unreadable = new LinkedHashMap<>();
        for (Promised one : all) {
            drawn.add(one.quote().number());
            byName.put(one.quote().number().toString(), one);
            try {
                promises.add(one.quote().state() == QuoteState.PICKED ? one.pinned(isCounted(one)) : one.promise(shop));
            } catch (FaultsException wrong) {
                unreadable.put(one.quote().number().toString(), wrong.faults().stream().map(Fault::toString).toList());
            }
        }
        Catalog offered = others(stand).less(shop);
        AllotmentOutcome outcome = new Allotter(offered, promises, terms.seed(), this::news,
                words -> terms.listener().accept(new Progress.Doing(words))).run(deadline);
        Catalog left = Allotter.left(outcome, offered);
        List<Drawn> lines = new ArrayList<>();
        outcome.outcomes().forEach(one -> lines.add(drawn(byName.get(one.promise().name()), one, outcome, left, deadline)));
        unreadable.forEach((name, faults) -> lines.add(broken(byName.get(name), faults, List.of())));
        lines.sort(Comparator.comparing(line -> line.quote().number()));
        return new Allocated(lines, strained(), quality(outcome, (System.currentTimeMillis() - start) / MILLIS),
                new Allocated.Basis(stand, digest));
    }

    private boolean isCounted(Promised picked) {
        return stand.kept().lots().stream().anyMatch(kept -> kept.number().equals(picked.quote().number())
                && kept.isCounted(shop.pricedOn()));
    }

    private Reserved others(BookStand some) {
        return new Reserved(some.kept().lots().stream().filter(kept -> !drawn.contains(kept.number())).toList());
    }

    /** What has happened in the book since it was last looked at. */
    private List<AllotmentChange> news() {
        if (database.read(BookStand::entry) == stand.entry()) {
            return List.of();
        }
        BookStand now = database.read(sql -> BookStand.read(sql, by.today()));
        List<AllotmentChange> news = new ArrayList<>();
        stand.promises().forEach((number, state) -> {
            QuoteState then = now.promises().get(number);
            if (drawn.contains(number) && then == null) {
                news.add(new AllotmentChange.Over(number.toString()));
            } else if (drawn.contains(number) && then != state) {
                news.add(new AllotmentChange.Picked(number.toString()));
            }
        });
        Map<LotName, Integer> before = units(others(stand).less(shop));
        units(others(now).less(shop)).forEach((lot, units) -> {
            if (!units.equals(before.get(lot))) {
                news.add(new AllotmentChange.OfLot(lot, units));
            }
        });
        stand = now;
        return news;
    }

    private static Map<LotName, Integer> units(Catalog some) {
        Map<LotName, Integer> units = new TreeMap<>();
        some.parts().forEach(part -> some.lots(part.sku()).forEach(lot -> units.put(new LotName(lot.sku(), lot.lot()), lot.available())));
        return units;
    }

    private Drawn drawn(Promised promised, AllotmentOutcome.Outcome one, AllotmentOutcome outcome, Catalog left, Deadline deadline) {
        if (one.promise().pinned()) {
            return new Drawn(promised.quote(), Fate.PICKED, Optional.empty(), promised.kept(), Map.of(), Map.of(), List.of(), List.of());
        }
        if (one.filling().isEmpty()) {
            return broken(promised, lacks(promised, one.promise(), outcome, left), ways(one.promise(), left, deadline));
        }
        Filling filling = one.filling().get();
        Fate fate = one.changed() ? Fate.CHANGED : one.moved() > 0 ? Fate.MOVED : Fate.SAME;
        return new Drawn(promised.quote(), fate, Optional.of(shop.amount(filling.cost())), filling.units(),
                beyond(filling.units(), promised.kept()), beyond(promised.kept(), filling.units()), List.of(), List.of());
    }

    private static Drawn broken(Promised promised, List<String> lacks, List<String> ways) {
        return new Drawn(promised.quote(), Fate.BROKEN, Optional.empty(), Map.of(), Map.of(), promised.kept(), lacks, ways);
    }

    private static Map<LotName, Integer> beyond(Map<LotName, Integer> some, Map<LotName, Integer> others) {
        Map<LotName, Integer> beyond = new TreeMap<>();
        some.forEach((lot, units) -> {
            if (units > others.getOrDefault(lot, 0)) {
                beyond.put(lot, units - others.getOrDefault(lot, 0));
            }
        });
        return beyond;
    }

    /** Of what the customer was told of, what is not left, and who has it. */
    private List<String> lacks(Promised promised, Promise promise, AllotmentOutcome outcome, Catalog left) {
        List<String> lacks = new ArrayList<>();
        new TreeMap<>(promise.parts()).forEach((sku, units) -> {
            int there = left.lots(sku).stream().mapToInt(Lot::available).sum();
            if (there < units) {
                String others = outcome.outcomes().stream().filter(other -> other.filling().stream().anyMatch(filling ->
                                filling.units().keySet().stream().anyMatch(lot -> lot.sku().equals(sku))))
                        .map(other -> other.promise().name()).collect(Collectors.joining(", "));
                lacks.add("%s: %s wanted, %s left%s".formatted(sku, units, there, others.isEmpty() ? "" : "; promised to " + others));
            }
        });
        if (lacks.isEmpty()) {
            lacks.add("What is left of its parts would come after %s.".formatted(promised.readyOn()));
        }
        return lacks;
    }

    private static List<String> ways(Promise promise, Catalog left, Deadline deadline) {
        Search search = new Search(left);
        Findings findings = search.run(promise.request(), deadline);
        return new Explainer(left, search, deadline).explain(findings, List.of()).relaxations().stream().map(Relaxation::message).toList();
    }

    /** Holds of open quotes are kept from the promises; what their lots do not have any more is said. */
    private List<Gone> strained() {
        Map<LotName, List<Reserved.Kept>> held = others(stand).lots().stream().filter(kept -> kept.isCounted(shop.pricedOn()))
                .collect(Collectors.groupingBy(kept -> new LotName(kept.sku(), kept.lot()), TreeMap::new, Collectors.toList()));
        Map<LotName, Integer> there = units(shop);
        List<Gone> strained = new ArrayList<>();
        held.forEach((lot, some) -> {
            int wanted = some.stream().mapToInt(Reserved.Kept::units).sum();
            if (wanted > there.getOrDefault(lot, 0)) {
                strained.add(new Gone(lot.sku(), lot.lot(), wanted, there.getOrDefault(lot, 0), some.stream().map(Reserved.Kept::number)
                        .sorted().toList()));
            }
        });
        return strained;
    }

    private Allocated.Quality quality(AllotmentOutcome outcome, double seconds) {
        Function<sledwright.planner.allot.Allotment.Figures, Allocated.Figures> words = figures ->
                new Allocated.Figures(figures.broken(), figures.changed(), shop.amount(figures.cost()));
        double bound = outcome.bound().cost();
        Optional<BigDecimal> cost = Double.isNaN(bound) ? Optional.empty()
                : Optional.of(shop.amount(Math.min((long) Math.ceil(bound - 0.01), outcome.found().cost())));
        return new Allocated.Quality(words.apply(outcome.found()), words.apply(outcome.greedy()), outcome.bound().broken(),
                outcome.bound().changed(), cost, shop.currency().getCurrencyCode(), seconds);
    }
}
