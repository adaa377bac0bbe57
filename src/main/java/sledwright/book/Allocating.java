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
import sledwright.book.Allocated.LotChange;
import sledwright.book.store.Database;
import sledwright.catalog.CatalogReader;
import sledwright.desk.Progress;
import sledwright.desk.Terms;
import sledwright.domain.Catalog;
import sledwright.domain.Lot;
import sledwright.domain.OrderRequest;
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
import sledwright.rules.Order;

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
    private final Map<QuoteNumber, Subject> subjects = new TreeMap<>();
    /** What houses the sleds of orders, and orders for which that is not there any more. */
    private final Map<LotName, Integer> housing = new TreeMap<>();
    private final Set<QuoteNumber> unhoused = new HashSet<>();
    /** What is left in the lots after all. */
    private final Map<LotName, Integer> free = new TreeMap<>();

    Allocating(Database database, Path folder, Signature by, Terms terms) {
        this.database = database;
        this.by = by;
        this.terms = terms;
        digest = CatalogDigest.of(folder);
        shop = CatalogReader.read(folder).withToday(by.today());
    }

    /**
     * A quote with its promises.
     *
     * @param order  where it is one that is not picked
     * @param faults why its request cannot be read with the shop of today
     */
    private record Subject(Promised promised, List<Promise> promises, Optional<PromisedOrder> order, List<String> faults) {

        private QuoteNumber number() {
            return promised.quote().number();
        }
    }

    Allocated make() {
        long start = System.currentTimeMillis();
        Deadline deadline = Deadline.in(terms.time()).or(terms.cancelled());
        List<Promised> all = database.read(sql -> {
            stand = BookStand.read(sql, by.today());
            return Promised.all(sql, by.today());
        });
        all.forEach(one -> {
            drawn.add(one.quote().number());
            subjects.put(one.quote().number(), subject(one));
        });
        house();
        List<Promise> promises = subjects.values().stream().flatMap(subject -> subject.promises().stream()).toList();
        Catalog offered = offered(stand);
        AllotmentOutcome outcome = new Allotter(offered, promises, terms.seed(), this::news,
                words -> terms.listener().accept(new Progress.Doing(words))).run(deadline);
        Catalog left = Allotter.left(outcome, offered);
        free.putAll(units(left));
        Map<String, AllotmentOutcome.Outcome> byName = outcome.outcomes().stream()
                .collect(Collectors.toMap(one -> one.promise().name(), one -> one));
        List<Drawn> lines = new ArrayList<>();
        for (Subject subject : subjects.values()) {
            if (!subject.faults().isEmpty()) {
                lines.add(broken(subject.promised(), subject.faults(), List.of()));
            } else if (subject.promises().stream().allMatch(promise -> byName.containsKey(promise.name()))) {
                lines.add(subject.order().isPresent() ? drawn(subject, subject.order().get(), byName, outcome, left, deadline)
                        : drawn(subject.promised(), byName.get(subject.promises().get(0).name()), outcome, left, deadline));
            }
        }
        lines.sort(Comparator.comparing(line -> line.quote().number()));
        return new Allocated(lines, strained(), quality(outcome, (System.currentTimeMillis() - start) / MILLIS),
                new Allocated.Basis(stand, digest));
    }

    private Subject subject(Promised one) {
        try {
            if (one.quote().state() == QuoteState.PICKED) {
                return new Subject(one, List.of(one.pinned(isCounted(one))), Optional.empty(), List.of());
            }
            return new Subject(one, one.promises(shop), one.lines(shop), List.of());
        } catch (FaultsException wrong) {
            return new Subject(one, List.of(), Optional.empty(), wrong.faults().stream().map(Fault::toString).toList());
        }
    }

    /** What houses the sleds of an order stays with it where the lots still have it. */
    private void house() {
        Map<LotName, Integer> there = units(others(stand).less(shop));
        for (Subject subject : subjects.values()) {
            Map<LotName, Integer> frames = subject.order().map(PromisedOrder::frames).orElse(new TreeMap<>());
            boolean housed = frames.entrySet().stream().allMatch(lot ->
                    there.getOrDefault(lot.getKey(), 0) - housing.getOrDefault(lot.getKey(), 0) >= lot.getValue());
            if (housed) {
                frames.forEach((lot, units) -> housing.merge(lot, units, Integer::sum));
            } else {
                unhoused.add(subject.number());
            }
        }
    }

    /** What there is for promises: what others hold and what houses the sleds is not in it. */
    private Catalog offered(BookStand some) {
        return others(some).less(shop).withEachLot(lot ->
                lot.with(Math.max(0, lot.available() - housing.getOrDefault(new LotName(lot.sku(), lot.lot()), 0)), lot.breaks()));
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
        if (!now.givesLike(stand)) {
            // Another allocation was applied: this one rests on what its promises kept before, so it stays with that and is not.
            return List.of();
        }
        List<AllotmentChange> news = new ArrayList<>();
        stand.promises().forEach((number, state) -> {
            QuoteState then = now.promises().get(number);
            if (drawn.contains(number) && then != state) {
                subjects.get(number).promises().forEach(promise -> news.add(then == null ? new AllotmentChange.Over(promise.name())
                        : new AllotmentChange.Picked(promise.name())));
            }
        });
        Map<LotName, Integer> before = units(offered(stand));
        units(offered(now)).forEach((lot, units) -> {
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
            return new Drawn(promised.quote(), Fate.PICKED, Optional.empty(), new LotChange(promised.kept(), promised.kept()), List.of(),
                    List.of(), Optional.empty());
        }
        if (one.filling().isEmpty()) {
            return broken(promised, lacks(promised, one.promise(), outcome, left), ways(one.promise(), left, deadline));
        }
        Filling filling = one.filling().get();
        Fate fate = one.changed() ? Fate.CHANGED : one.moved() > 0 ? Fate.MOVED : Fate.SAME;
        return new Drawn(promised.quote(), fate, Optional.of(shop.amount(filling.cost())),
                new LotChange(filling.units(), promised.kept()), List.of(), List.of(), Optional.empty());
    }

    /** An order is kept as far as it can be, line by line. */
    private Drawn drawn(Subject subject, PromisedOrder lines, Map<String, AllotmentOutcome.Outcome> byName, AllotmentOutcome outcome,
                        Catalog left, Deadline deadline) {
        Promised promised = subject.promised();
        Map<String, Order> given = new LinkedHashMap<>();
        List<String> lacks = new ArrayList<>();
        List<String> ways = new ArrayList<>();
        boolean housed = !unhoused.contains(subject.number());
        Map<LotName, Integer> frames = housed ? lines.frames() : new TreeMap<>();
        Map<LotName, Integer> units = new TreeMap<>(frames);
        long beside = 0;
        boolean changed = false;
        boolean moved = false;
        if (!housed) {
            lines.frames().forEach((lot, wanted) -> lacks.add("%s, which houses its sleds: %s wanted".formatted(lot, wanted)));
        }
        for (Promise promise : subject.promises()) {
            AllotmentOutcome.Outcome one = byName.get(promise.name());
            if (one.filling().flatMap(Filling::order).isPresent()) {
                Filling filling = one.filling().get();
                given.put(promise.name(), filling.order().get());
                filling.units().forEach((lot, some) -> units.merge(lot, some, Integer::sum));
                beside += filling.order().get().price().total() - filling.order().get().price().parts();
                changed |= one.changed();
                moved |= one.moved() > 0;
            } else {
                lacks(promised, promise, outcome, left).forEach(lack -> lacks.add("%s: %s".formatted(line(promise, promised), lack)));
                ways(promise, left, deadline).forEach(way -> ways.add("%s: %s".formatted(line(promise, promised), way)));
            }
        }
        if (lacks.isEmpty() && lines.machines().isWhole() && stays(promised.kept(), units, lines.asked())) {
            Optional<BigDecimal> cost = Optional.of(shop.amount(price(promised.kept(), lines.asked()) + beside));
            return new Drawn(promised.quote(), Fate.SAME, cost, new LotChange(promised.kept(), promised.kept()), List.of(), List.of(),
                    Optional.of(lines.machines().now()));
        }
        Fate fate = !lacks.isEmpty() ? Fate.BROKEN : changed ? Fate.CHANGED : moved ? Fate.MOVED : Fate.SAME;
        Optional<BigDecimal> cost = lacks.isEmpty() ? Optional.of(shop.amount(price(units, lines.asked()) + beside)) : Optional.empty();
        return new Drawn(promised.quote(), fate, cost, new LotChange(units, promised.kept()), lacks, ways,
                Optional.of(lines.given(given, housed)));
    }

    /**
     * Whether an order is as well off with what it keeps: its lines are drawn one by one, while a lot's price is that of all units that the
     * order takes from it. Then it has that, and what it was given is left for others.
     */
    private boolean stays(Map<LotName, Integer> kept, Map<LotName, Integer> given, OrderRequest asked) {
        boolean there = kept.entrySet().stream().allMatch(lot ->
                free.getOrDefault(lot.getKey(), 0) + given.getOrDefault(lot.getKey(), 0) >= lot.getValue());
        if (!there || price(kept, asked) > price(given, asked)) {
            return false;
        }
        given.forEach((lot, units) -> free.merge(lot, units, Integer::sum));
        kept.forEach((lot, units) -> free.merge(lot, -units, Integer::sum));
        return true;
    }

    /** What units cost that are drawn together, with what their suppliers charge for delivering. */
    private long price(Map<LotName, Integer> units, OrderRequest asked) {
        long suppliers = units.keySet().stream().flatMap(name -> lot(name).stream()).map(Lot::supplier)
                .filter(supplier -> !shop.suppliers().isOwn(supplier)).map(Lot::supplierKey).distinct().count();
        return suppliers * asked.deliveryCharge() + units.entrySet().stream().mapToLong(some ->
                lot(some.getKey()).map(lot -> some.getValue() * lot.breakFor(some.getValue()).unitPrice()).orElse(0L)).sum();
    }

    private Optional<Lot> lot(LotName name) {
        return shop.lots(name.sku()).stream().filter(lot -> lot.lot().equals(name.lot())).findFirst();
    }

    private static String line(Promise promise, Promised promised) {
        return promise.name().substring(promised.quote().number().toString().length() + 1);
    }

    private static Drawn broken(Promised promised, List<String> lacks, List<String> ways) {
        return new Drawn(promised.quote(), Fate.BROKEN, Optional.empty(), new LotChange(Map.of(), promised.kept()), lacks, ways,
                promised.order().map(machines -> new KeptMachines(List.of(), List.of())));
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
        Catalog offered = left.withEachLot(lot -> promise.offered(lot, lot.available()));
        Search search = new Search(offered);
        Findings findings = search.run(promise.request(), deadline);
        return new Explainer(offered, search, deadline).explain(findings, List.of()).relaxations().stream().map(Relaxation::message)
                .toList();
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
