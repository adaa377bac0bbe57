package sledwright.restock;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.SortedMap;
import java.util.function.IntConsumer;
import java.util.function.ToLongFunction;
import java.util.stream.IntStream;
import sledwright.domain.Catalog;
import sledwright.domain.DemandClass;
import sledwright.domain.Request;
import sledwright.domain.Shortlist;
import sledwright.explain.Explainer;
import sledwright.explain.Explanation;
import sledwright.generator.Findings;
import sledwright.generator.Search;
import sledwright.generator.Status;
import sledwright.generator.time.Deadline;
import sledwright.rules.Order;

/** The builds that orders of each class may be filled with, found by the exact search; more are found as parts become scarce. */
final class Choices {

    /** Builds that buy more than is asked for, which may still be the only ones left. */
    private static final int RICHER = 4;
    /** How many parts of a kind may run out one after the other. */
    private static final int FALLBACKS = 4;

    private final Shelves shelves;
    private final List<DemandClass> classes;
    /** A search serves one request at a time, so each worker has its own; a class is always served by the same. */
    private final List<Search> roots;
    private final Deadline deadline;
    private final List<Map<SortedMap<String, Integer>, Choice>> known = new ArrayList<>();
    private final List<OptionalLong> cheapest = new ArrayList<>();
    /** The same by the prices of the catalogue alone, in stock or not. */
    private final List<OptionalLong> listed = new ArrayList<>();
    private final List<Optional<Explanation>> impossible = new ArrayList<>();

    Choices(Shelves shelves, Deadline deadline) {
        this.shelves = shelves;
        this.deadline = deadline;
        classes = shelves.request().classes();
        roots = IntStream.range(0, Workers.COUNT).mapToObj(worker -> new Search(shelves.priced())).toList();
        for (int k = 0; k < classes.size(); k++) {
            known.add(new LinkedHashMap<>());
            cheapest.add(OptionalLong.empty());
            listed.add(OptionalLong.empty());
            impossible.add(Optional.empty());
        }
        forEach(this::seek);
    }

    private Search root(int k) {
        return roots.get(Workers.of(k));
    }

    /** Does something for each class, several at a time. */
    void forEach(IntConsumer work) {
        Workers.share(classes.size(), worker -> work);
    }

    private void seek(int k) {
        Request asked = classes.get(k).request();
        Catalog today = shelves.priced();
        Findings findings = root(k).run(asked.withAlternatives(RICHER, Shortlist.PLAIN.step()), deadline);
        cheapest.set(k, price(findings));
        OptionalLong asListed = findings.ranked().isEmpty() ? OptionalLong.empty()
                : price(root(k).on(shelves.listed()).run(asked.withAlternatives(1, Shortlist.PLAIN.step()), deadline));
        listed.set(k, asListed.isPresent() ? asListed : cheapest.get(k));
        impossible.set(k, findings.status() == Status.IMPOSSIBLE
                ? Optional.of(new Explainer(today, root(k), deadline).explain(findings, List.of())) : Optional.empty());
        findings.ranked().forEach(order -> add(Choice.of(k, order)));
        if (!findings.ranked().isEmpty()) {
            findings.ranked().get(0).needed().keySet().forEach(sku -> seekWithout(k, sku));
        }
    }

    private static OptionalLong price(Findings findings) {
        return findings.ranked().isEmpty() ? OptionalLong.empty() : OptionalLong.of(findings.ranked().get(0).price().total());
    }

    /** What would replace a part that ran out, and then what of its kind would replace that. */
    private void seekWithout(int k, String first) {
        Request asked = classes.get(k).request();
        Set<String> gone = new HashSet<>(asked.forbid());
        gone.add(first);
        for (int i = 0; i < FALLBACKS && !deadline.isOver(); i++) {
            List<Order> ranked = root(k).run(asked.withForbid(gone).withAlternatives(1, Shortlist.PLAIN.step()), deadline).ranked();
            if (ranked.isEmpty()) {
                return;
            }
            add(Choice.of(k, ranked.get(0)));
            ranked.get(0).needed().keySet().stream().filter(sku -> shelves.kind(sku) == shelves.kind(first)).forEach(gone::add);
        }
    }

    private boolean add(Choice choice) {
        return known.get(choice.demandClass()).putIfAbsent(choice.needed(), choice) == null;
    }

    List<Choice> of(int demandClass) {
        return List.copyOf(known.get(demandClass).values());
    }

    int size() {
        return known.stream().mapToInt(Map::size).sum();
    }

    /** Why nothing can be built for a class; empty where something can. */
    Optional<Explanation> impossible(int demandClass) {
        return impossible.get(demandClass);
    }

    /**
     * What an order's customer pays, minor units; empty where nothing can be built. With a margin, that is over the cheapest build at the
     * prices of the catalogue, whatever suppliers offer; where the catalogue has no prices for one, with what they ask.
     */
    OptionalLong revenue(int demandClass) {
        DemandClass asked = classes.get(demandClass);
        if (asked.accepted().isPresent()) {
            return OptionalLong.of(asked.accepted().getAsLong() * asked.machines());
        }
        OptionalLong least = listed.get(demandClass);
        return least.isEmpty() ? least : OptionalLong.of(least.getAsLong() + asked.margin().getAsLong() * asked.machines());
    }

    /** The cheapest order of a class at what units are worth today, minor units; empty where nothing can be built. */
    OptionalLong cheapest(int demandClass) {
        return cheapest.get(demandClass);
    }

    /** What an order brings beside being turned away, minor units. */
    long brings(int demandClass) {
        DemandClass asked = classes.get(demandClass);
        return revenue(demandClass).orElseThrow() + asked.loss() * asked.machines();
    }

    /**
     * Looks for a build of a class that costs less at given unit prices than all that are known, and less than an order brings. The best of
     * these is added to the known ones. A limit of the price cuts the search short where there is none, as there mostly is.
     *
     * @return whether there is one, or may be one since time ran out
     */
    boolean seek(int demandClass, ToLongFunction<String> unitPrice) {
        Request asked = classes.get(demandClass).request();
        long least = brings(demandClass);
        for (Choice choice : known.get(demandClass).values()) {
            least = Math.min(least, choice.labour() + Math.round(choice.parts(unitPrice::applyAsLong)));
        }
        long below = Math.min(least - 1, asked.limit().price().orElse(Long.MAX_VALUE));
        if (below < 0) {
            return false;
        }
        Findings findings = root(demandClass).on(shelves.priced(unitPrice)).run(asked.withAlternatives(1, Shortlist.PLAIN.step())
                .withLimit(asked.limit().withPrice(OptionalLong.of(below))), deadline);
        if (findings.status() == Status.PROVED) {
            add(Choice.of(demandClass, findings.ranked().get(0)));
        }
        return findings.status() != Status.IMPOSSIBLE;
    }
}
